import type { Bench } from '../workbench/bench.ts';
import { bannerLines } from './banner.ts';
import { choicesOf } from './choices-of.ts';
import { footerLines } from './footer.ts';
import { indented, type Line, line } from './line.ts';
import { footRows, longPage } from './long-page.ts';
import { messageLines } from './message-lines.ts';
import { type Phase, phaseOf } from './phase.ts';
import { helpLines, listLines } from './screens/lists.ts';
import { loadLines } from './screens/load.ts';
import { titled } from './screens/pages.ts';
import { correctLines, resultsLines, searchLines } from './screens/past.ts';
import { previewLines } from './screens/preview.ts';
import { addLiftLines, sheetLines } from './screens/program.ts';
import { runnerLines } from './screens/runner.ts';
import { weighLines } from './screens/weigh.ts';
import { marginOf, targetLines, targetsOf } from './taps.ts';
import { isTooSmall, tooSmallLines } from './too-small.ts';
import type { Model } from './ui-state.ts';
import { windowOf } from './window.ts';

/** A whole screen: exactly as many lines as the terminal has, none wider than it. */
export interface Frame {
  readonly lines: readonly Line[];
  /** Row at which a text field is laid over, counted from 0; null without one. */
  readonly field: number | null;
}

export function frameOf(model: Model, bench: Bench): Frame {
  const { size, session, now, ui } = model;
  if (isTooSmall(size)) return { lines: tooSmallLines(size), field: null };
  const phase = session ? phaseOf(session, now) : null;
  const margin = marginOf(size.columns);
  const columns = size.columns - 2 * margin;
  const foot = footLines(model, phase, columns);
  const head = bannerLines(bench, ui.screen.kind, columns);
  const rows = size.rows - foot.length - head.length;
  const body = ui.help
    ? windowOf(helpLines(model, phase, columns), rows, ui.help.scroll)
    : bodyLines(model, phase, bench, columns, rows);
  const lines = [...head, ...body, ...foot].map((one) => indented(one, margin));
  const hasField = ui.screen.kind === 'note' && !ui.help;
  return { lines, field: hasField ? head.length + NOTE_ROW : null };
}

/** Targets for taps, or the keys. */
function footLines(model: Model, phase: Phase | null, columns: number): readonly Line[] {
  if (model.ui.help) return [line('any key goes back')];
  return model.choices.taps
    ? targetLines(targetsOf(model, phase), columns)
    : footerLines(model, phase, columns, footRows(model));
}

const NOTE_ROW = 2;

function bodyLines(
  model: Model,
  phase: Phase | null,
  bench: Bench,
  columns: number,
  rows: number,
): readonly Line[] {
  const { screen, message } = model.ui;
  if (screen.kind === 'runner') return runnerLines(model, phase, bench, columns, rows);
  const said = message ? messageLines(message, columns) : [];
  return [...pageLines(model, bench, columns, rows - said.length), ...said];
}

function pageLines(model: Model, bench: Bench, columns: number, rows: number): readonly Line[] {
  const { screen } = model.ui;
  const long = longPage(model, bench, columns);
  if (long && 'scroll' in screen) return windowOf(long, rows, screen.scroll);
  switch (screen.kind) {
    case 'preview':
      return previewLines(model, screen, bench, columns, rows);
    case 'load':
      return windowOf(loadLines(model, screen, bench, columns), rows, 0);
    case 'weigh':
      return windowOf(weighLines(model, screen, columns), rows, 0);
    case 'results':
      return resultsLines(model, screen, bench, columns, rows);
    case 'correct':
      return windowOf(correctLines(screen, columns), rows, 0);
    case 'search':
      return windowOf(searchLines(screen.typed, columns), rows, 0);
    case 'program':
      return sheetLines(screen, columns, rows);
    case 'add-lift':
      return addLiftLines(screen, columns, rows);
    case 'note':
      return windowOf(titled('Note', null, columns), rows, 0);
    default: {
      const list = choicesOf(model, bench);
      return list && 'chosen' in screen ? listLines(list, screen.chosen, columns, rows) : [];
    }
  }
}
