import { bindingsOf, labelOf, shownKey } from './keymap.ts';
import { BLANK, type Line, span, widthOf } from './line.ts';
import type { Phase } from './phase.ts';
import type { Model } from './ui-state.ts';

/** A key and what it does. */
export interface Hint {
  readonly keys: string;
  readonly label: string;
}

/** The keys of here that do something now, most useful first, rows of one place together. */
export function footerHints(model: Model, phase: Phase | null): readonly Hint[] {
  const rows = bindingsOf(model.ui.screen.kind)
    .filter(({ footer, when }) => footer !== null && when(model, phase) === true)
    .toSorted((a, b) => (a.footer ?? 0) - (b.footer ?? 0));
  const hints: Hint[] = [];
  let at: string | null = null;
  for (const row of rows) {
    const key = shownKey(row.keys[0] ?? '');
    const pair = row.pair ? `${row.footer} ${row.pair}` : null;
    const before = hints.at(-1);
    if (pair && pair === at && before)
      hints[hints.length - 1] = { ...before, keys: before.keys + key };
    else hints.push({ keys: key, label: row.pair ?? labelOf(row, model, phase) });
    at = pair;
  }
  return hints;
}

/** The footer in exactly `rows` lines. */
export const footerLines = (
  model: Model,
  phase: Phase | null,
  columns: number,
  rows: number,
): readonly Line[] => hintLines(footerHints(model, phase), columns, rows);

/** Hints in exactly `rows` lines; what does not fit is left to the help, whose key always shows. */
export function hintLines(hints: readonly Hint[], columns: number, rows: number): readonly Line[] {
  const help = hints.find(({ label }) => label === 'keys');
  const others = hints.filter((hint) => hint !== help);
  for (let count = others.length; count >= 0; count--) {
    const shown = [...others.slice(0, count), ...(help ? [help] : [])];
    const lines = flowed(shown, columns);
    if (lines.length <= rows) {
      return [...lines, ...Array<Line>(rows - lines.length).fill(BLANK)];
    }
  }
  return Array<Line>(rows).fill(BLANK);
}

function flowed(hints: readonly Hint[], columns: number): readonly Line[] {
  const lines: Line[] = [];
  let current: Line = [];
  for (const { keys, label } of hints) {
    const piece = [span(keys, 'strong'), span(` ${label}`)];
    const longer = current.length === 0 ? piece : [...current, span('   '), ...piece];
    if (widthOf(longer) <= columns) {
      current = longer;
    } else {
      lines.push(current);
      current = piece;
    }
  }
  return current.length === 0 ? lines : [...lines, current];
}
