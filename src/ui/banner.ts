import { safeText } from '../text/safe-text.ts';
import type { Bench } from '../workbench/bench.ts';
import { type Line, line, paragraph } from './line.ts';
import type { ScreenKind } from './ui-state.ts';

/** What stands above a screen: whole on the first one, a line on the others. */
export function bannerLines(
  { banner }: Pick<Bench, 'banner'>,
  screen: ScreenKind,
  columns: number,
): Line[] {
  if (banner === null) return [];
  const lines = paragraph(safeText(banner), columns, 'alert');
  if (screen === 'preview' || lines.length <= 1) return lines;
  const [first = ''] = banner.split(/[:.]/);
  return [line(first, 'alert')];
}
