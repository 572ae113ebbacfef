import { once } from './once.ts';

/** Latin letters, punctuation, arrows, box and block drawing: one column each, no joining. */
const LETTERS = String.raw`\u0020-\u007e\u00a1-\u00ac\u00ae-\u02ff\u2010-\u2027\u2190-\u21ff\u2500-\u25ff`;

const PLAIN = new RegExp(`^[${LETTERS}]*$`);

/** Holds nothing but what takes one column each and does nothing else. */
export const isPlain = (text: string): boolean => PLAIN.test(text);

/** The same, with what styles begin with. */
const STYLED = new RegExp(`^[${LETTERS}\u001b]*$`);

const real = once(() => new Intl.Segmenter('en'));

/**
 * What a reader takes for one character each, as `Intl.Segmenter` tells. That is slow to make and to ask,
 * and nearly all texts here are plain, of which each letter is one.
 */
export const segmenter = {
  segment: (text: string): Iterable<{ readonly segment: string; readonly index: number }> =>
    STYLED.test(text)
      ? Array.from(text, (segment, index) => ({ segment, index }))
      : real().segment(text),
};
