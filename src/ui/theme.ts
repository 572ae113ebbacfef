import type { TextProps } from 'ink';

/** What a piece of text is for; how it looks is the theme's. */
export type Role =
  /** Essential text: the terminal's own foreground, the only colour sure to be readable. */
  | 'plain'
  | 'strong'
  /** What may be missed: never more than a repetition or a hint. */
  | 'quiet'
  /** The word for what goes on now. */
  | 'state'
  /** The choice or field that keys act on. */
  | 'chosen'
  /** Drawn marks and lines that text repeats. */
  | 'done'
  | 'drawn'
  /** The mark before a sentence that must not be missed. */
  | 'sign'
  | 'alert';

export type Theme = Readonly<
  Record<Role, Pick<TextProps, 'color' | 'bold' | 'inverse' | 'dimColor'>>
>;

/**
 * Two colours, on marks and lines only; text says everything too. Blue-green and orange keep
 * apart in every common form of colour blindness.
 */
const COLOUR: Theme = {
  plain: {},
  strong: { bold: true },
  quiet: { dimColor: true },
  state: { bold: true, inverse: true },
  chosen: { bold: true, inverse: true },
  done: { color: 'cyan' },
  drawn: { color: 'cyan' },
  sign: { bold: true, color: 'yellow' },
  // No colour: yellow cannot be read on a light background.
  alert: { bold: true },
};

const PLAIN: Theme = {
  ...COLOUR,
  done: {},
  drawn: {},
  sign: { bold: true },
};

export const THEMES: Readonly<Record<'colour' | 'plain', Theme>> = { colour: COLOUR, plain: PLAIN };
