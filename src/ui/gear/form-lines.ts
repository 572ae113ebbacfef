import { hintLines } from '../hints.ts';
import { BLANK, indented, type Line, line, paragraph, span, widthOf } from '../line.ts';
import type { Size } from '../model.ts';
import { shownKey } from '../screen.ts';
import { isTooSmall, tooSmallLines } from '../too-small.ts';
import { marginOf, scrollTo, windowOf } from '../window.ts';
import { FORM_KEYS, type FormKey } from './form-keys.ts';
import { type FormRow, type ListPart, rowsOf } from './form-rows.ts';
import { type FormState, isChanged } from './form-state.ts';

const EXAMPLES: Readonly<Record<ListPart, string>> = {
  bars: 'short bar=15kg',
  plates: '20kg=4, 1.25kg=2',
  dumbbells: '12kg=2, 14kg=2',
  handles: '2kg=2',
  stacks: 'pulldown=5kg..100kg by 5kg',
  bands: 'light=10kg',
};

/** The whole screen of the form: exactly as many lines as the terminal has. */
export function formLines(state: FormState, size: Size): readonly Line[] {
  if (isTooSmall(size)) return tooSmallLines(size);
  const margin = marginOf(size.columns);
  const columns = size.columns - 2 * margin;
  const foot = [...saidLines(state, columns), ...footLines(state, columns, size.rows)];
  const rows = size.rows - foot.length;
  const body = state.help ? windowOf(helpLines(columns), rows, 0) : bodyLines(state, columns, rows);
  return [...body, ...foot].map((one) => indented(one, margin));
}

/** The form for a screen reader: only what the last key changed. */
export function spokenFormLines(state: FormState): readonly string[] {
  const row = rowsOf(state.gear)[state.row];
  const fields = (row?.fields ?? []).map(({ name, shown }, at) => {
    const value = at === state.field && state.typed !== null ? `typing ${state.typed}` : shown;
    return `${name} ${value}`.trim();
  });
  return [
    `Your gear${isChanged(state) ? ', not saved' : ''}. ${row?.label ?? ''}: ${fields.join(', ')}.`,
    ...addingTexts(state),
    ...(state.message ? [state.message] : []),
    ...(state.help ? FORM_KEYS.map(({ keys, label }) => `${keys.join(' or ')}: ${label}`) : []),
    state.adding ? 'enter adds, escape goes back' : 'question mark tells the keys',
  ];
}

/** The things that are owned, in `rows` lines, the chosen one in sight. */
export function bodyLines(state: FormState, columns: number, rows: number): Line[] {
  const things = rowsOf(state.gear);
  const label = Math.min(columns / 2, Math.max(...things.map((row) => row.label.length)));
  const head = [[span('Your gear', 'strong'), span(isChanged(state) ? '   not saved' : '')], BLANK];
  const blocks = things.map((row, at) => {
    const apart = at > 0 && things[at - 1]?.part !== row.part && row.part !== null;
    const isFirstAlone = row.part === null && things[at - 1]?.part !== null;
    const lines = rowLines(row, at === state.row ? state : null, Math.floor(label), columns);
    return apart || isFirstAlone ? [BLANK, ...lines] : lines;
  });
  const start = blocks.slice(0, state.row).reduce((sum, one) => sum + one.length, head.length);
  const end = start + (blocks[state.row]?.length ?? 0);
  return windowOf([...head, ...blocks.flat()], rows, scrollTo(start, end, rows));
}

/** A thing and its values; what does not fit beside its name goes on below. */
function rowLines(
  { label, fields }: FormRow,
  chosen: FormState | null,
  width: number,
  columns: number,
): Line[] {
  const mark = span(chosen ? '▸ ' : '  ', 'drawn');
  const pieces = fields.map(({ name, shown }, at): Line => {
    const isHere = chosen !== null && at === chosen.field;
    const value = isHere && chosen.typed !== null ? `${chosen.typed}_` : shown;
    const before = name === '' ? '' : `${name} `;
    // The brackets say which one is chosen where reversed colours are not to be seen.
    return isHere
      ? [span(`  ${before}`), span(`[${value}]`, 'chosen')]
      : [span(`  ${before} ${value} `)];
  });
  const lines: Line[] = [];
  let current: Line = [mark, span(label.padEnd(width), chosen ? 'strong' : 'plain')];
  for (const piece of pieces) {
    if (widthOf(current) + widthOf(piece) <= columns) {
      current = [...current, ...piece];
      continue;
    }
    lines.push(current);
    current = indented(piece, 2);
  }
  return [...lines, current];
}

/** What is being added, and what the last key led to. */
export function saidLines(state: FormState, columns: number): Line[] {
  return [
    ...addingTexts(state).flatMap((text, at) =>
      paragraph(text, columns, at === 0 ? 'strong' : 'plain', 2),
    ),
    ...(state.message ? paragraph(state.message, columns, 'alert').slice(0, 3) : []),
  ];
}

function addingTexts({ adding }: FormState): string[] {
  if (!adding) return [];
  return [`Add ${adding.part}: ${adding.text}_`, `For example ${EXAMPLES[adding.part]}`];
}

function footLines(state: FormState, columns: number, rows: number): readonly Line[] {
  if (state.help) return [line('any key goes back')];
  const shown = rows >= 24 ? 2 : 1;
  if (state.adding) {
    const hints = [
      { keys: 'enter', label: 'add' },
      { keys: 'esc', label: 'back' },
    ];
    return hintLines(hints, columns, shown);
  }
  const hints = byLabel(FORM_KEYS.filter(({ footer }) => footer)).map(({ label, rows: same }) => ({
    keys: same.map(({ keys: [first = ''] }) => shownKey(first)).join(''),
    label,
  }));
  return hintLines(hints, columns, shown);
}

/** Keys that do the same the one way and the other stand together. */
const byLabel = (rows: readonly FormKey[]) =>
  [...new Set(rows.map(({ label }) => label))].map((label) => ({
    label,
    rows: rows.filter((row) => row.label === label),
  }));

const KEYS_WIDTH = 17;

const helpLines = (columns: number): Line[] => [
  line('The keys of here', 'strong'),
  ...byLabel(FORM_KEYS).flatMap(({ label, rows }) => {
    const keys = rows.flatMap((row) => row.keys);
    const names = keys.length > 6 ? `${keys[0]}–${keys[9]} . ,` : keys.map(shownKey).join(' ');
    const [first = BLANK, ...more] = paragraph(label, columns - KEYS_WIDTH);
    const head = span(names.padEnd(KEYS_WIDTH), 'strong');
    return [[head, ...first], ...more.map((one) => indented(one, KEYS_WIDTH))];
  }),
];
