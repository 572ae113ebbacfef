/** What of the signs this program draws and writes each becomes, one column for one. */
const SIGNS: readonly (readonly [signs: string, plain: string])[] = [
  ['─━═╌┄', '-'],
  ['│┃║▐▌▎▏', '|'],
  ['┌┐└┘├┤┬┴┼╂╋┏┓┗┛╭╮╰╯', '+'],
  ['█▀▄■▪●◆', '#'],
  ['◧▒░', '='],
  ['□○◇', 'o'],
  ['▸▶►›»', '>'],
  ['◀◂‹«', '<'],
  ['▲△↑', '^'],
  ['▼▽↓', 'v'],
  ['→', '>'],
  ['←', '<'],
  ['·•', '.'],
  ['–—−‐‑', '-'],
  ['×', 'x'],
  ['≈', '~'],
  ['≤', '<'],
  ['≥', '>'],
  ['±', '+'],
  ['…', '.'],
  ['“”„', '"'],
  ['‘’‚′', "'"],
  ['\u00a0\u202f\u2009', ' '],
  ['µ', 'u'],
];

const PLAIN: ReadonlyMap<string, string> = new Map(
  SIGNS.flatMap(([signs, plain]) => [...signs].map((sign) => [sign, plain] as const)),
);

/**
 * Text in plain ASCII of the same width, for a locale that has nothing else: letters lose their
 * accents, and what has no likeness is a question mark.
 */
export const plainText = (text: string): string =>
  /^[\u0000-\u007f]*$/.test(text)
    ? text
    : text.replace(/[^\u0000-\u007f]/gu, (sign) => PLAIN.get(sign) ?? letterOf(sign));

function letterOf(sign: string): string {
  const [letter = '?'] = sign.normalize('NFD');
  return letter <= '\u007f' ? letter : '?';
}

/**
 * Does the locale say that there is nothing but ASCII? Where no locale is set at all nobody said so.
 * (POSIX.1-2017, 8.2: the first of the three that is set and not empty counts.)
 */
export function isPlainLocale(env: Readonly<Record<string, string | undefined>>): boolean {
  const locale = env.LC_ALL || env.LC_CTYPE || env.LANG;
  return locale !== undefined && locale !== '' && !/utf-?8/i.test(locale);
}
