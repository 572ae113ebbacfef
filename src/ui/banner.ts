import { columnsOf } from '../text/columns.ts';
import { safeText } from '../text/safe-text.ts';
import type { Bench } from '../workbench/bench.ts';
import { type Line, line } from './line.ts';
import type { ScreenKind } from './ui-state.ts';

/** What stands above a screen, in one line: whole on the first one where it fits. */
export function bannerLines(
  { banner }: Pick<Bench, 'banner'>,
  screen: ScreenKind,
  columns: number,
): Line[] {
  if (banner === null) return [];
  const whole = safeText(banner.whole);
  const isShown = screen === 'preview' && columnsOf(whole) <= columns;
  const short = screen === 'preview' ? banner.short : banner.name;
  return [line(isShown ? whole : short, 'alert')];
}
