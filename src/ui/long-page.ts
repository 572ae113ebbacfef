import type { Bench } from '../workbench/bench.ts';
import { bannerLines } from './banner.ts';
import type { Line } from './line.ts';
import { cautionLines, whyLines } from './screens/pages.ts';
import { changeLines, findingLines } from './screens/program.ts';
import { adviceChangeLines, reviewLines, weightQuestionLines } from './screens/review.ts';
import { summaryLines } from './screens/summary.ts';
import { marginOf, TARGET_ROWS } from './taps.ts';
import type { Model } from './ui-state.ts';

/** All lines of a screen that is read by scrolling; null for the other screens. */
export function longPage(model: Model, bench: Bench, columns: number): readonly Line[] | null {
  const { screen } = model.ui;
  switch (screen.kind) {
    case 'cautions':
      return cautionLines(columns);
    case 'why':
      return whyLines(screen, bench, columns);
    case 'summary':
      return summaryLines(model, bench, columns);
    case 'weight-question':
      return weightQuestionLines(columns);
    case 'review':
      return reviewLines(screen.page, screen.chosen, columns);
    case 'advice':
      return adviceChangeLines(screen.advice, screen.edit, columns);
    case 'changes':
      return changeLines(screen, columns);
    case 'findings':
      return findingLines(screen, columns);
    default:
      return null;
  }
}

/** How far the present page can be scrolled before its last line is in sight. */
export function mostScroll(model: Model, bench: Bench): number {
  const { columns, rows } = model.size;
  const inner = columns - 2 * marginOf(columns);
  const lines = longPage(model, bench, inner);
  const taken = footRows(model) + bannerLines(bench, model.ui.screen.kind, inner).length;
  return Math.max(0, (lines?.length ?? 0) - (rows - taken));
}

/** Rows at the foot of the screen: targets for taps, or keys. */
export function footRows({ choices, size, ui }: Model): number {
  if (choices.taps) return TARGET_ROWS;
  // Only the runner is short of rows.
  return size.rows >= 24 || ui.screen.kind !== 'runner' ? 2 : 1;
}
