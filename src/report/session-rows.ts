import { readEvent } from '../journal/read-event.ts';
import type { PrescribedExercise, Prescription } from '../progression/prescription.ts';
import { because } from '../progression/rules/progression-rules.ts';
import type { SessionFact } from '../session/events.ts';
import { Refusal } from '../text/problem.ts';
import { basisOf, LOADINGS, MUSCLES, PATTERNS, type Shares } from '../training/lift.ts';
import type { CsvRecord } from './csv-text.ts';
import { type ImportedSession, NOT_TOLD } from './import-json.ts';

/** A row that stands there twice is one set; two rows of one set that differ are refused. */
function onceEach(rows: readonly CsvRecord[]): readonly CsvRecord[] {
  const bySet = new Map<number, CsvRecord>();
  for (const row of rows) {
    const number = row.whole('set', 1);
    const before = bySet.get(number);
    if (before && before.cells.join('\n') !== row.cells.join('\n')) {
      throw new Refusal({
        what: `Rows ${before.row} and ${row.row} both tell set ${number} of the same exercise, and differ.`,
        fix: 'Take the wrong one out; nothing was imported.',
      });
    }
    bySet.set(number, before ?? row);
  }
  return [...bySet.entries()].sort(([a], [b]) => a - b).map(([, row]) => row);
}

/**
 * The facts of one session, from its rows in a file of sets. What such a file does not hold (rests,
 * warm-ups, reasons, the instant of each set) is left empty.
 */
export function sessionFromRows(session: string, rows: readonly CsvRecord[]): ImportedSession {
  const [first] = rows;
  if (!first) throw new RangeError('A session has at least one row.');
  const exercises = new Map<number, CsvRecord[]>();
  for (const row of rows) {
    const place = row.whole('exercise', 1);
    exercises.set(place, [...(exercises.get(place) ?? []), row]);
  }
  const inOrder = [...exercises.entries()].sort(([a], [b]) => a - b).map(([, of]) => onceEach(of));
  const start = first.instant('start');
  const prescription: Prescription = {
    program: first.text('program'),
    day: first.text('day'),
    date: first.date('date').toString(),
    unit: first.oneOf('unit', ['kg', 'lb']),
    // Where the aim was not kept, nothing is claimed about a cut.
    aim: first.empty('aim_of_program')
      ? 'maintain'
      : first.oneOf('aim_of_program', ['cut', 'maintain', 'build']),
    lighter: first.yes('lighter'),
    restBetween: { from: 0, to: 0 },
    exercises: inOrder.map(prescribed),
    warnings: [],
  };
  const closed = first.empty('closed') || first.yes('closed');
  const zone = zoneOf(start, first);
  const facts: SessionFact[] = [
    { type: 'session-opened', session, device: '', prescription },
    ...inOrder.flatMap((of, exercise) => exerciseFacts(of, exercise)),
    ...notesIn(rows),
    { type: 'session-closed', how: closed ? 'finished' : 'as-it-is' },
  ];
  const end = first.empty('end') ? null : first.instant('end');
  const at = { wall: Math.max(start, end ?? start), up: null, boot: null };
  const lost = facts.find((fact) => readEvent({ id: 'row:0', at, zone, ...fact }) === null);
  if (lost) {
    throw new Refusal({
      what: `The session that begins in row ${first.row} holds a number, an instant or a text that is outside of what is kept (${lost.type}).`,
      fix: 'Look for one that is far too large, too long or too long ago, and mend it; nothing was imported.',
    });
  }
  return {
    session,
    start,
    end,
    zone,
    facts,
  };
}

/** Notes stand one below the other; whose exercise each was is not told. */
const notesIn = (rows: readonly CsvRecord[]): SessionFact[] =>
  rows
    .flatMap((row) => (row.empty('notes') ? [] : row.text('notes').split('\n')))
    .map((text) => ({ type: 'note-written', exercise: null, text }));

function prescribed(rows: readonly CsvRecord[]): PrescribedExercise {
  const [row] = rows;
  if (!row) throw new RangeError('An exercise has at least one row.');
  const loading = row.oneOf('loading', LOADINGS);
  const hands = row.number('hands') === 1 ? 1 : 2;
  const perSide = row.yes('per_side');
  const style = row.oneOf('style', ['straight', 'cluster']);
  const range = [row.whole('range_low', 1), row.whole('range_high', 1)] as const;
  const asked = row.whole('sets_asked', 1);
  const aimOf = (each: CsvRecord | undefined) =>
    each === undefined || each.empty('aim') ? range[0] : each.whole('aim', 0);
  const aims = aimsIn(row);
  const straight = Array.from({ length: style === 'cluster' ? 1 : asked }, (_, at) => ({
    aim: aims[at] ?? aimOf(rows[at]),
    range,
  }));
  return {
    lift: row.text('lift'),
    name: row.text('name'),
    loading,
    kind: row.oneOf('kind', ['compound', 'isolation']),
    pattern: row.oneOf('pattern', PATTERNS),
    trains: sharesOf(row),
    perSide,
    counts: row.oneOf('counts', ['reps', 'seconds']),
    hands,
    bodyShare: row.empty('body_share') ? null : row.number('body_share'),
    track: row.text('track'),
    ...(!row.empty('pair') && { pair: row.text('pair') }),
    style,
    basis: basisOf({ loading, hands, perSide }),
    load: row.mass('load'),
    range,
    reserve: [row.whole('reserve_low', 0), row.whole('reserve_high', 0)],
    sets: straight,
    setsPlanned: row.whole('sets_planned', 1),
    minis: style === 'cluster' ? { mostSets: asked, aim: aimOf(rows[1]) } : null,
    move: row.oneOf('move', ['start', 'up', 'hold', 'ease', 'return']),
    ...NOT_TOLD,
    why:
      !row.empty('set_dropped') && row.yes('set_dropped')
        ? [because('one-set-fewer', { style })]
        : [],
  };
}

/** Of all sets asked for; none in a file of before they were told, whose rows have those of the sets done. */
function aimsIn(row: CsvRecord): readonly number[] {
  if (row.empty('aims')) return [];
  const told = row.text('aims').trim().split(/ +/).map(Number);
  if (told.every((aim) => Number.isInteger(aim) && aim >= 0)) return told;
  throw new Refusal({
    what: `Row ${row.row}, column aims: ${JSON.stringify(row.text('aims').slice(0, 40))} is no list of aims.`,
    fix: 'Expected whole numbers such as 8 8 6; nothing was imported.',
  });
}

function exerciseFacts(rows: readonly CsvRecord[], exercise: number): SessionFact[] {
  const [row] = rows;
  if (!row) return [];
  const cluster = row.oneOf('style', ['straight', 'cluster']) === 'cluster';
  const asked = row.whole('sets_asked', 1);
  const facts: SessionFact[] = [];
  for (const [at, each] of rows.entries()) {
    if (!cluster && at >= asked) facts.push({ type: 'set-added', exercise });
    const role = cluster ? (at === 0 ? 'lead' : 'mini') : 'straight';
    facts.push({
      type: 'set-done',
      exercise,
      role,
      index: role === 'mini' ? at - 1 : at,
      load: each.mass('load'),
      count: each.whole('count', 0),
      reserve: each.empty('reserve') ? null : each.number('reserve'),
      ...(!each.empty('failed') && each.yes('failed') && { failed: true }),
      // A set that the lifter confirmed and one that was typed count alike.
      entered:
        each.oneOf('entered', ['as-planned', 'confirmed', 'typed']) === 'as-planned'
          ? 'as-planned'
          : 'typed',
    });
  }
  if (row.yes('pain')) facts.push({ type: 'pain-marked', exercise });
  const finished = row.yes('finished');
  if (cluster) {
    const whole = rows.length >= asked ? 'most-sets' : 'fewer-reps';
    facts.push({ type: 'cluster-ended', exercise, reason: finished ? whole : 'lifter' });
  } else if (!finished) {
    facts.push({ type: 'exercise-skipped', exercise });
  }
  return facts;
}

function sharesOf(row: CsvRecord): Shares {
  const shares: Partial<Record<(typeof MUSCLES)[number], 1 | 0.5>> = {};
  for (const part of row.empty('trains') ? [] : row.text('trains').split(' ')) {
    const [name, share] = part.split(':');
    const muscle = MUSCLES.find((each) => each === name);
    if (!muscle || (share !== '1' && share !== '0.5')) {
      throw new Refusal({
        what: `Row ${row.row}, column trains: ${JSON.stringify(part.slice(0, 40))} is no muscle with its share.`,
        fix: 'Expected entries such as chest:1 or triceps:0.5; nothing was imported.',
      });
    }
    shares[muscle] = share === '1' ? 1 : 0.5;
  }
  return shares;
}

/** The smallest shift from UTC, in minutes, that puts the instant on the local date. */
function zoneOf(start: number, row: CsvRecord): number {
  const date = row.date('date');
  const midnight = Date.UTC(date.year, date.month - 1, date.day);
  if (start < midnight) return Math.ceil((midnight - start) / 60_000);
  const last = midnight + 86_400_000 - 1;
  return start > last ? -Math.ceil((start - last) / 60_000) : 0;
}
