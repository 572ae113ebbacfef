import { type Line, textOf } from '../line.ts';

/** Signs that a screen reader skips or reads by their own names, and what a person would say. */
const SAID: readonly (readonly [RegExp, string])[] = [
  [/ ?· ?/g, ', '],
  [/(\d) ?× ?(?=\d)/g, '$1 times '],
  [/ × /g, ' times '],
  [/(\d)–(?=\d)/g, '$1 to '],
  [/ \+ /g, ' plus '],
  [/ − /g, ' minus '],
  [/\[x\] ([^,]+)/, '$1 on'],
  [/\[ \] ([^,]+)/, '$1 off'],
];

/** A sentence of the screen in words. */
export const spokenWords = (text: string): string =>
  SAID.reduce((said, [sign, words]) => said.replace(sign, words), text).trim();

const KEYS: Readonly<Record<string, string>> = {
  '↑': 'up arrow',
  '↓': 'down arrow',
  '←': 'left arrow',
  '→': 'right arrow',
  '+': 'plus',
  '-': 'minus',
  '?': 'question mark',
  esc: 'escape',
};

/** The keys of a hint by name: `up arrow or down arrow`. */
export function spokenKeys(keys: string): string {
  if (KEYS[keys]) return KEYS[keys];
  const names = [...keys].map((key) => KEYS[key]);
  return names.every((name) => name !== undefined) ? names.join(' or ') : keys;
}

/** A screen on which a number is typed; block digits are drawn, not said. */
export const typedTexts = (lines: readonly Line[], typed: string): readonly string[] => [
  ...lines.map(textOf).filter((text) => !/[█▀▄]/.test(text)),
  typed === '' ? '' : `Typed: ${typed}.`,
];
