import type { Coach } from '../lifter/coach.ts';
import { safeText } from '../text/safe-text.ts';
import { type Line, line, paragraph } from './line.ts';
import type { ScreenKind } from './ui-state.ts';

/** Below this width the session needs the rows. */
const NARROW = 60;

/** What stands above a screen: whole on the first one where there is room, else in one line. */
export function bannerLines(
  { banner }: Pick<Coach, 'banner'>,
  screen: ScreenKind,
  columns: number,
): Line[] {
  if (banner === null) return [];
  if (screen !== 'preview') return [line(banner.name, 'alert')];
  return columns < NARROW
    ? [line(banner.short, 'alert')]
    : paragraph(safeText(banner.whole), columns, 'alert');
}
