import type { Ports } from '../lifter/ports.ts';
import type { TextSize } from '../report/review-text.ts';

const USUAL = 80;
const MOST = 120;

/** How wide text may be here, and what a plot may be drawn with. */
export function textSize({ stdout, env, platform }: Ports): TextSize {
  const locale = env.LC_ALL || env.LC_CTYPE || env.LANG || '';
  const hasUnicode = platform === 'win32' || platform === 'darwin' || /utf-?8/i.test(locale);
  return {
    width: Math.min(MOST, Math.max(30, stdout.columns || USUAL)),
    glyphs: hasUnicode && env.TERM !== 'dumb' ? 'braille' : 'ascii',
  };
}
