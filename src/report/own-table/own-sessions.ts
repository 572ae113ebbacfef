import { groups, rollup } from 'd3-array';
import { crc32 } from '../../journal/disk/crc32.ts';
import type { History } from '../../journal/history.ts';
import type { JournalEvent } from '../../journal/records.ts';
import type { Range } from '../../program/program.ts';
import { ANY_RESERVE } from '../../progression/own-table.ts';
import type { PrescribedExercise, Prescription } from '../../progression/prescription.ts';
import type { SessionFact } from '../../session/events.ts';
import { basisOf } from '../../training/lift.ts';
import type { Unit } from '../../training/mass.ts';
import { type ImportedSession, NOT_TOLD } from '../import-json.ts';
import type { OwnSet } from './read-own-table.ts';

/** What the sets of a table are laid beside. */
export interface OwnPast {
  /** Sets that are there, those of tables as they came in: what was corrected since is no new set. */
  readonly known: readonly KnownSet[];
  /** What the table is called in the history. */
  readonly label: string;
  readonly unit: Unit;
  /** Minutes that local time is ahead of UTC at an instant. */
  readonly zone: (wall: number) => number;
}

export interface KnownSet {
  /** `2026-11-25`. */
  readonly date: string;
  /** Key of the lift. */
  readonly lift: string;
  readonly load: number;
  readonly count: number;
}

export interface OwnSessions {
  readonly sessions: readonly ImportedSession[];
  /** Sets that were there already on their day, of the same lift, load and reps. */
  readonly known: number;
  readonly fresh: number;
}

/**
 * A session for each day of a table, at noon, with the sets that the history does not hold yet: the
 * same table once more adds nothing, and one that has grown only what is new.
 */
export function ownSessions(sets: readonly OwnSet[], past: OwnPast): OwnSessions {
  const days = groups(sets, ({ date }) => date.toString()).sort(([a], [b]) => (a < b ? -1 : 1));
  const there = rollup(
    past.known,
    (of) => of.length,
    ({ date, lift, load, count }) => `${date} ${keyOf(lift, load, count)}`,
  );
  const fresh = days.map(([date, of]) => [date, freshOf(date, of, there)] as const);
  const sessions = fresh
    .filter(([, of]) => of.length > 0)
    .map(([date, of]) => sessionOf(date, of, past));
  const count = fresh.reduce((sum, [, of]) => sum + of.length, 0);
  return { sessions, known: sets.length - count, fresh: count };
}

const keyOf = (lift: string, load: number, count: number): string => `${lift} ${load} ${count}`;

function freshOf(date: string, sets: readonly OwnSet[], there: Map<string, number>) {
  return sets.filter(({ lift, load, count }) => {
    const key = `${date} ${keyOf(lift.key, load, count)}`;
    const left = there.get(key) ?? 0;
    there.set(key, left - 1);
    return left <= 0;
  });
}

/** Ids of sessions that came out of a table begin so. */
export const TABLE = 'table-';

const NOON = 12;

function sessionOf(date: string, sets: readonly OwnSet[], past: OwnPast): ImportedSession {
  const byLift = groups(sets, ({ lift }) => lift.key).map(([, of]) => of);
  const text = sets.map(({ lift, load, count }) => keyOf(lift.key, load, count)).join('\n');
  const hash = crc32(new TextEncoder().encode(text)).toString(16).padStart(8, '0');
  const session = `${TABLE}${date}-${hash}`;
  const utc = Date.parse(`${date}T${NOON}:00:00Z`);
  const zone = past.zone(utc);
  const prescription: Prescription = {
    program: past.label,
    day: date,
    date,
    unit: past.unit,
    // A table tells nothing of a cut.
    aim: 'maintain',
    lighter: false,
    restBetween: { from: 0, to: 0 },
    exercises: byLift.map((of) => exerciseOf(of)),
    warnings: [],
  };
  const facts: SessionFact[] = [
    { type: 'session-opened', session, device: '', prescription },
    ...byLift.flatMap((of, exercise) =>
      of.map(
        ({ load, count, reserve }, index): SessionFact => ({
          type: 'set-done',
          exercise,
          role: 'straight',
          index,
          load,
          count,
          reserve,
          entered: 'typed',
        }),
      ),
    ),
    { type: 'session-closed', how: 'finished' },
  ];
  return { session, start: utc - zone * 60_000, end: null, zone, facts };
}

function exerciseOf(sets: readonly OwnSet[]): PrescribedExercise {
  const { lift, load } = sets[0]!;
  const range = rangeDone(sets);
  const { key, joints: _joints, needs: _needs, ...shown } = lift;
  return {
    ...shown,
    lift: key,
    track: `${key} straight ${range[0]}-${range[1]}`,
    style: 'straight',
    basis: basisOf(lift),
    load,
    range,
    reserve: ANY_RESERVE,
    sets: sets.map(({ count }) => ({ aim: count, range })),
    setsPlanned: sets.length,
    minis: null,
    move: 'start',
    ...NOT_TOLD,
  };
}

function rangeDone(sets: readonly OwnSet[]): Range {
  const counts = sets.map(({ count }) => count);
  return [Math.min(...counts), Math.max(...counts)];
}

/**
 * Sets that the history holds: of tables as they came in, whatever was corrected or deleted since;
 * those whose import was taken back apart, with the id that brings them back.
 */
export function setsThere(history: History) {
  const opened = new Map<string, Extract<JournalEvent, { type: 'session-opened' }>>();
  const fileOf = ({ id }: JournalEvent) => id.slice(0, id.lastIndexOf(':'));
  const events = history.events();
  for (const event of events) {
    const isOpening = event.type === 'session-opened' && event.session.startsWith(TABLE);
    if (isOpening) opened.set(fileOf(event), event);
  }
  const deleted = new Set(history.deletions.map(({ of }) => of));
  const [standing, takenBack]: [KnownSet[], KnownSet[]] = [[], []];
  for (const event of events) {
    const opening = event.type === 'set-done' ? opened.get(fileOf(event)) : undefined;
    if (event.type !== 'set-done' || !opening) continue;
    const { date, exercises } = opening.prescription;
    const lift = exercises[event.exercise]?.lift ?? '';
    const known = { date, lift, load: event.load, count: event.count };
    (deleted.has(opening.session) ? takenBack : standing).push(known);
  }
  const others = history.results.filter(({ session }) => !session.startsWith(TABLE));
  standing.push(
    ...others.flatMap(({ date, exercise: { lift }, sets }) =>
      sets.map(({ load, count }) => ({ date: date.toString(), lift, load, count })),
    ),
  );
  const by = events.find(
    (event): event is Extract<JournalEvent, { type: 'imported' }> =>
      event.type === 'imported' && event.of.some((of) => deleted.has(of)),
  );
  return { standing, takenBack, by: by?.id ?? 'ID' };
}
