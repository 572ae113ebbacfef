import { group } from 'd3-array';
import { Temporal } from 'temporal-polyfill';
import type { Range } from '../program/program.ts';
import { reserveOf } from '../training/effort.ts';
import type { Mass } from '../training/mass.ts';
import { isInOwnPlace } from './in-program.ts';
import { LIMITS } from './limits.ts';
import { isFromTable } from './own-table.ts';
import type { Past, Result, SetResult } from './past.ts';
import { rangeOfTrack } from './track.ts';

/** One past session of a track, read the way the rules judge it. */
export interface Bout {
  readonly result: Result;
  /** The load judged: of the first work set; in a first session of the last one. */
  readonly load: Mass;
  /** Straight sets done at that load; of a cluster the lead set alone. */
  readonly sets: readonly SetResult[];
  readonly minis: readonly SetResult[];
  /** Some sets were done at another load: such a session never earns more load. */
  readonly mixed: boolean;
  /** Holds a set saved as planned that the lifter has not looked at. */
  readonly unseen: boolean;
  /** Pain marked in it, and in sessions since that pain stopped before their first set. */
  readonly pains: number;
}

/** Reads one result; null when no work set was done. */
export function boutOf(result: Result): Bout | null {
  const judged = result.exercise.move === 'start' ? result.sets.at(-1) : result.sets[0];
  if (!judged) return null;
  const load = judged.load;
  const cluster = result.exercise.style === 'cluster';
  return {
    result,
    load,
    sets: cluster ? result.sets.slice(0, 1) : result.sets.filter((set) => set.load === load),
    minis: cluster ? result.sets.slice(1) : [],
    mixed: result.sets.some((set) => set.load !== load),
    unseen: result.sets.some((set) => set.entered === 'as-planned'),
    pains: result.pain ? 1 : 0,
  };
}

/**
 * The sessions that a track is judged by, oldest first: lighter weeks and sessions written by a
 * version that this one does not understand are left out.
 */
export function boutsOf(past: Past, track: string): readonly Bout[] {
  const foreign = foreignSessions(past);
  return resultsOfTrack(past, track)
    .filter(({ lighter, session }) => !lighter && !foreign.has(session))
    .reduce<Bout[]>(withResult, []);
}

/**
 * A session that pain stopped before its first set has no sets to judge, but its pain counts. A
 * session that comes to a track again, in the place of another lift, is one session.
 */
function withResult(bouts: Bout[], result: Result): Bout[] {
  const bout = boutOf(result);
  const last = bouts.at(-1);
  if (bout && last?.result.session === result.session) {
    const judged = isInOwnPlace(last.result.exercise) ? last : bout;
    bouts[bouts.length - 1] = { ...judged, pains: Math.max(last.pains, bout.pains) };
  } else if (bout) bouts.push(bout);
  if (!bout && last && result.pain) bouts[bouts.length - 1] = { ...last, pains: last.pains + 1 };
  return bouts;
}

/** Was it held down by the gear of its day? */
export const isOnLightGear = ({ exercise }: Result): boolean =>
  exercise.why.some(({ rule }) => rule === 'gear-light');

/** Was it no heavier only for others of its lift on that day? */
export const isOnSharedLoad = ({ result: { exercise } }: Bout): boolean =>
  exercise.why.some(({ rule }) => rule === 'one-load-a-day');

/** The latest sessions from `date` on; `bouts` are in order of time. */
export function boutsSince(bouts: readonly Bout[], date: Temporal.PlainDate): readonly Bout[] {
  const before = bouts.findLastIndex(({ result }) => isBefore(result.date, date));
  return bouts.slice(before + 1);
}

/** Of the same results the same groups: years of them are asked for one track after the other. */
const byTrack = ofTheSame((results: Past['results']) =>
  group(
    results.filter(({ exercise }) => !isFromTable(exercise)),
    ({ exercise }) => exercise.track,
  ),
);

const tablesByLift = ofTheSame((results: Past['results']) =>
  group(
    results.filter(({ exercise }) => isFromTable(exercise)),
    ({ exercise }) => exercise.lift,
  ),
);

const byLift = ofTheSame((results: Past['results']) =>
  group(results, ({ exercise }) => exercise.lift),
);

/**
 * Results of a track, oldest first, those without a set too. Those of a table of the lifter's own
 * are among them where they fit it or go on with it, whatever program there was when they came in.
 */
export function resultsOfTrack(
  { results }: Pick<Past, 'results'>,
  track: string,
): readonly Result[] {
  const known = asked(results);
  const found = known.get(track) ?? withTables(results, track);
  known.set(track, found);
  return found;
}

/** What was asked for already, by track. */
const asked = ofTheSame((_: Past['results']) => new Map<string, readonly Result[]>());

function withTables(results: Past['results'], track: string): readonly Result[] {
  const own = byTrack(results).get(track) ?? [];
  const of = rangeOfTrack(track);
  const told = of ? (tablesByLift(results).get(of.lift) ?? []) : [];
  if (!told.some((result) => fitsTrack(result, track))) return own;
  const inOrder = [...own, ...told].sort((one, other) => one.start - other.start);
  let before: Bout | null = null;
  return inOrder.filter((result) => {
    const fits =
      !isFromTable(result.exercise) ||
      fitsTrack(result, track) ||
      (before !== null && of !== null && goesOn(result, before, of.range));
    if (fits) before = boutOf(result) ?? before;
    return fits;
  });
}

/**
 * Does a table go on with a track although its sets left the range? Fewer reps than the low end at
 * about the load of before, or at a lighter one, are a miss; more than the high end at about that
 * load, or at a heavier one, have outgrown it. Else that day was trained for something else. Ours.
 */
function goesOn(result: Result, before: Bout, [low]: Range): boolean {
  const bout = boutOf(result);
  const count = bout?.sets[0]?.count;
  if (!bout || count === undefined) return false;
  const { easeTo, missTo } = LIMITS;
  const [least, most] = count < low ? [missTo, 1 / easeTo] : [easeTo, 1 / missTo];
  const loads = [before.load * least, before.load * most];
  // The setting of a body weight lift may be under 0.
  return Math.min(...loads) <= bout.load && bout.load <= Math.max(...loads);
}

/** Sets of a table fit a track whose range holds the first of them. */
export function fitsTrack(result: Result, track: string): boolean {
  const of = rangeOfTrack(track);
  const count = boutOf(result)?.sets[0]?.count;
  if (!of || count === undefined || of.lift !== result.exercise.lift) return false;
  return of.range[0] <= count && count <= of.range[1];
}

/** Results of a lift in any of its tracks, oldest first. */
export const resultsOfLift = ({ results }: Pick<Past, 'results'>, lift: string) =>
  byLift(results).get(lift) ?? [];

/** The latest results from `date` on; years before are not looked at. */
export const resultsSince = (
  { results }: Pick<Past, 'results'>,
  date: Temporal.PlainDate,
): readonly Result[] =>
  results.slice(results.findLastIndex((each) => isBefore(each.date, date)) + 1);

const foreignOf = ofTheSame(
  (sessions: Past['sessions']): ReadonlySet<string> =>
    new Set(sessions.filter(({ foreign }) => foreign).map(({ session }) => session)),
);

/** Sessions that hold something not understood: they move no load. */
export const foreignSessions = ({ sessions }: Past): ReadonlySet<string> => foreignOf(sessions);

/** Works something out of a list once, until it has grown: a rehearsal adds to its own. */
function ofTheSame<List extends readonly unknown[], Found>(
  work: (list: List) => Found,
): (list: List) => Found {
  const known = new WeakMap<List, { readonly length: number; readonly found: Found }>();
  return (list) => {
    const before = known.get(list);
    if (before?.length === list.length) return before.found;
    const found = work(list);
    known.set(list, { length: list.length, found });
    return found;
  };
}

/** Reps in reserve of a set; where the lifter gave none, the low end of what was asked. */
export const reserveOfSet = (set: SetResult, { result }: Bout): number =>
  reserveOf(set.reserve, result.exercise.reserve).reserve;

const isBefore = (a: Temporal.PlainDate, b: Temporal.PlainDate): boolean =>
  Temporal.PlainDate.compare(a, b) < 0;
