import type { Coach } from '../lifter/coach.ts';
import { isPlain } from '../text/graphemes.ts';
import { safeText } from '../text/safe-text.ts';
import { footerLines, helpLines } from './footer.ts';
import { indented, type Line, line } from './line.ts';
import type { Model } from './model.ts';
import type { Seen } from './outcome.ts';
import { bannerLines, footRows, messageLines } from './page.ts';
import { seenOf } from './screen.ts';
import { moduleOf } from './screens.ts';
import { targetLines, targetsOf } from './taps.ts';
import { isTooSmall, tooSmallLines } from './too-small.ts';
import { marginOf, windowOf } from './window.ts';

/** A whole screen: exactly as many lines as the terminal has, none wider than it. */
export interface Frame {
  readonly lines: readonly Line[];
  /** The row at which a text field is laid over, counted from 0, and how many it may take; null without one. */
  readonly field: { readonly row: number; readonly rows: number } | null;
}

export function frameOf(model: Model, coach: Coach): Frame {
  const { size, ui } = model;
  if (isTooSmall(size)) return { lines: tooSmallLines(size), field: null };
  const seen = seenOf(model, coach);
  const margin = marginOf(size.columns);
  const columns = size.columns - 2 * margin;
  const foot = footLines(seen, columns);
  const head = bannerLines(coach, moduleOf(ui.screen), columns);
  const rows = size.rows - foot.length - head.length;
  const said = ui.help ? [] : saidLines(seen, columns);
  const room = rows - said.length;
  const module = moduleOf(seen.screen);
  const body = ui.help
    ? windowOf(helpLines(seen, columns), rows, ui.help.scroll)
    : module.lines(seen, columns, room);
  const lines = [...head, ...body, ...said, ...foot].map((one) => indented(safeLine(one), margin));
  const { field } = module;
  if (field === undefined || ui.help) return { lines, field: null };
  return { lines, field: { row: head.length + field, rows: Math.max(1, room - field) } };
}

/** Names and notes may hold what a terminal acts on. */
const safeLine = (one: Line): Line =>
  one.every(({ text }) => isPlain(text))
    ? one
    : one.map((part) => ({ ...part, text: isPlain(part.text) ? part.text : safeText(part.text) }));

/** Boxes for taps, or the keys. */
function footLines(seen: Seen, columns: number): readonly Line[] {
  const { ui, choices } = seen.model;
  if (ui.help) return [line('any key goes back')];
  return choices.taps
    ? targetLines(targetsOf(seen), columns)
    : footerLines(seen, columns, footRows(seen.model, moduleOf(seen.screen)));
}

function saidLines(seen: Seen, columns: number): readonly Line[] {
  const { message } = seen.model.ui;
  return message && !moduleOf(seen.screen).tellsItself ? messageLines(message, columns) : [];
}
