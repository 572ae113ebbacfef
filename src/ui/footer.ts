import { type Hint, hintLines } from './hints.ts';
import { BLANK, indented, type Line, line, paragraph, span } from './line.ts';
import type { Seen } from './outcome.ts';
import { type KeyRow, labelOf, mayNow, shownKey } from './screen.ts';
import { keysOf } from './screens.ts';

/** The keys of here that do something now, most useful first, rows of one place together. */
export function footerHints(seen: Seen): readonly Hint[] {
  const rows = keysOf(seen.screen)
    .filter((row) => row.footer !== undefined && mayNow(row, seen) === true)
    .map((row) => ({ row, at: placeOf(row, seen) }))
    .toSorted((a, b) => a.at - b.at);
  const hints: Hint[] = [];
  let at: string | null = null;
  for (const { row, at: place } of rows) {
    const key = shownKey(row.keys[0] ?? '');
    const pair = row.pair ? `${place} ${row.pair}` : null;
    const before = hints.at(-1);
    if (pair && pair === at && before)
      hints[hints.length - 1] = { ...before, keys: before.keys + key };
    else hints.push({ keys: key, label: row.pair ?? labelOf(row, seen) });
    at = pair;
  }
  return hints;
}

const placeOf = ({ footer = 0 }: KeyRow, seen: Seen): number =>
  typeof footer === 'number' ? footer : footer(seen);

/** The footer in exactly `rows` lines. */
export const footerLines = (seen: Seen, columns: number, rows: number): readonly Line[] =>
  hintLines(footerHints(seen), columns, rows);

/** A key of here: what it does, and why it does nothing now where it does not. */
export interface HelpRow {
  readonly keys: readonly string[];
  readonly label: string;
  readonly reason: string | null;
}

/** Every key of here; many that do the same stand for each other. */
export const helpRows = (seen: Seen): readonly HelpRow[] =>
  keysOf(seen.screen).map((row) => {
    const may = mayNow(row, seen);
    const { keys } = row;
    const shown = keys.length > 4 ? [`${keys[0]}–${keys[9]}`] : keys.map(shownKey);
    return { keys: shown, label: labelOf(row, seen), reason: may === true ? null : may };
  });

/** The keys of here, those that do nothing now below. */
export function helpLines(seen: Seen, columns: number): Line[] {
  const rows = helpRows(seen).map((row) => ({ ...row, keys: row.keys.join(' ') }));
  const width = Math.min(18, Math.max(...rows.map(({ keys }) => keys.length)) + 2);
  const shown = (keys: string, label: string, works: boolean): Line[] => {
    const [first = BLANK, ...more] = paragraph(label, columns - width);
    const key = span(keys.padEnd(width), works ? 'strong' : 'plain');
    return [[key, ...first], ...more.map((one) => indented(one, width))];
  };
  const works = rows.filter(({ reason }) => reason === null);
  const waits = rows.filter(({ reason }) => reason !== null);
  return [
    line('The keys of here', 'strong'),
    BLANK,
    ...works.flatMap(({ keys, label }) => shown(keys, label, true)),
    ...(waits.length > 0 ? [BLANK, line('Not now', 'strong'), BLANK] : []),
    ...waits.flatMap(({ keys, label, reason }) => shown(keys, `${label}: ${reason}`, false)),
  ];
}
