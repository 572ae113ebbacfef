import type { Temporal } from 'temporal-polyfill';
import { type SetSeen, setSeen } from '../strength/set-seen.ts';
import {
  estimateStrengthOver,
  type LiftEstimate,
  levelsOver,
  type SessionSeen,
  type StrengthEstimate,
  sharesOf,
} from '../strength/strength-change.ts';
import { dayNumber } from '../training/day-number.ts';
import { reserveOf } from '../training/effort.ts';
import { systemLoad } from '../training/strength.ts';
import { fitsTrack, foreignSessions } from './bout.ts';
import { LIMITS } from './limits.ts';
import { isFromTable } from './own-table.ts';
import type { Past, Result } from './past.ts';

/** What the results say of one lift. */
export interface LiftStrength extends LiftEstimate {
  /** Sessions that tell, up to the day asked for. */
  readonly sessions: number;
}

/** What the results say of all lifts. */
export interface Strengths extends Omit<StrengthEstimate, 'lifts'> {
  readonly lifts: ReadonlyMap<string, LiftStrength>;
}

/** The same results are asked about many times in one prescription: they are filtered once. */
const KNOWN = new WeakMap<Past['results'], Map<string, Strengths>>();

/**
 * Strength of every lift on the day `on`, and its change since the day `since`, by the lift's key.
 * Results after `on`, and those from more than 28 days before `since`, are not looked at; sessions
 * that do not count are left out (first ones, returns, pain, lighter weeks, foreign ones), and so
 * are body weight lifts before the first weigh-in.
 */
export function strengthOfLifts(
  past: Past,
  since: Temporal.PlainDate,
  on: Temporal.PlainDate,
): Strengths {
  const { results, bodyMassOn } = past;
  const key = `${dayNumber(since)} ${dayNumber(on)} ${results.length} ${bodyMassOn(on)}`;
  const known = KNOWN.get(results) ?? new Map<string, Strengths>();
  KNOWN.set(results, known);
  const found = known.get(key) ?? anewOn(past, since, on);
  known.set(key, found);
  return found;
}

function anewOn(past: Past, since: Temporal.PlainDate, on: Temporal.PlainDate): Strengths {
  const [found] = strengthsOver(past, since, [on], (strengths) => strengths);
  if (!found) throw new Error('One day was asked for.');
  return found;
}

/**
 * {@link strengthOfLifts} on each of these days, in their order, in one pass. Strengths hold while
 * they are read.
 */
export function strengthsOver<Read>(
  past: Past,
  since: Temporal.PlainDate,
  dates: readonly Temporal.PlainDate[],
  read: (strengths: Strengths, date: Temporal.PlainDate) => Read,
): Read[] {
  const base = dayNumber(since);
  const days = dates.map(dayNumber);
  const lifts = sessionsSeen(past, base - LIMITS.strengthDaysBefore, Math.max(...days));
  const byDay = new Map(dates.map((date) => [dayNumber(date), date]));
  return estimateStrengthOver(lifts, base, days, ({ lifts: estimates, ...all }, day) => {
    const counted = (lift: string) =>
      lifts.get(lift)?.filter((session) => session.day <= day).length ?? 0;
    const withSessions = [...estimates].map(
      ([lift, estimate]) => [lift, { ...estimate, sessions: counted(lift) }] as const,
    );
    return read({ ...all, lifts: new Map(withSessions) }, byDay.get(day) ?? since);
  });
}

/** Strength of a lift on a day and the ends of its 90 % interval, as loads in micrograms. */
export interface StrengthOn {
  readonly date: Temporal.PlainDate;
  readonly low: number;
  readonly middle: number;
  readonly high: number;
}

/** So many times is asked, however many years: more would not be seen in a plot. */
const MOST_TIMES = 26;

/** What is known over time of all lifts of the same results, by the day asked up to. */
const COURSES = new WeakMap<Past['results'], Map<string, ReadonlyMap<string, StrengthOn[]>>>();

/**
 * What the results up to each of these days say of one lift, weekly or less often, from its first
 * session up to the day `until`, else to its last session. Days on which nothing is known are left out.
 */
export function strengthOver(past: Past, lift: string, until?: Temporal.PlainDate): StrengthOn[] {
  const known = COURSES.get(past.results) ?? new Map();
  COURSES.set(past.results, known);
  const key = until?.toString() ?? '';
  const courses = known.get(key) ?? coursesOf(past, until);
  known.set(key, courses);
  return courses.get(lift) ?? [];
}

function coursesOf(
  past: Past,
  until: Temporal.PlainDate | undefined,
): ReadonlyMap<string, StrengthOn[]> {
  const trained = new Map<string, { first: Temporal.PlainDate; last: Temporal.PlainDate }>();
  for (const { exercise, sets, date } of past.results)
    if (sets.length > 0)
      trained.set(exercise.lift, { first: trained.get(exercise.lift)?.first ?? date, last: date });
  const asked = [...trained].flatMap(([lift, { first, last }]) =>
    timesBetween(first, until ?? last).map((date) => ({ lift, date })),
  );
  const found = strengthsOn(past, asked);
  const courses = new Map<string, StrengthOn[]>();
  for (const { lift, date } of asked.toReversed()) {
    const strength = found(lift, date);
    if (strength) courses.set(lift, [...(courses.get(lift) ?? []), strength]);
  }
  return courses;
}

/** What the results up to a day say of a lift, of all that is asked for in one pass; null where nothing is known. */
export function strengthsOn(
  past: Past,
  asked: readonly { readonly lift: string; readonly date: Temporal.PlainDate }[],
): (lift: string, date: Temporal.PlainDate) => StrengthOn | null {
  const inOrder = asked
    .map(({ lift, date }) => ({ lift, day: dayNumber(date) }))
    .sort((a, b) => a.day - b.day);
  const lifts = sessionsSeen(
    past,
    Number.NEGATIVE_INFINITY,
    inOrder.at(-1)?.day ?? Number.NEGATIVE_INFINITY,
  );
  const levels = levelsOver(lifts, inOrder);
  const found = new Map(inOrder.map(({ lift, day }, at) => [`${day} ${lift}`, levels[at]]));
  return (lift, date) => {
    const level = found.get(`${dayNumber(date)} ${lift}`);
    if (!level) return null;
    const { share: middle, low, high } = sharesOf(level);
    return { date, low, middle, high };
  };
}

/** The last day and those before it, weekly or less often. */
function timesBetween(first: Temporal.PlainDate, last: Temporal.PlainDate): Temporal.PlainDate[] {
  const days = dayNumber(last) - dayNumber(first);
  const step = 7 * Math.max(1, Math.ceil(days / 7 / MOST_TIMES));
  return Array.from({ length: Math.floor(days / step) + 1 }, (_, at) =>
    last.subtract({ days: at * step }),
  );
}

/**
 * Sessions that tell about strength: not the first ones, not after a layoff, none with pain. In a
 * table of the lifter's own no load was looked for, so all of its sessions tell.
 */
export function tells({ exercise, pain, lighter }: Result): boolean {
  const { move } = exercise;
  return (move !== 'start' || isFromTable(exercise)) && move !== 'return' && !pain && !lighter;
}

/** The sessions that tell, of each lift, from one day to another. */
function sessionsSeen(past: Past, from: number, to: number): Map<string, SessionSeen[]> {
  const foreign = foreignSessions(past);
  const telling = past.results.flatMap((result) => {
    const day = dayNumber(result.date);
    const isIn = day <= to && day >= from && tells(result) && !foreign.has(result.session);
    const sets = isIn ? setsSeen(result, past.bodyMassOn) : [];
    return sets.length === 0 ? [] : [{ result, exercise: result.exercise, day, sets }];
  });
  // Nobody prescribed a table: its sets are of the track that they fit, if any is trained.
  const ranges = new Set(
    telling.flatMap(({ exercise }) => (isFromTable(exercise) ? [] : [exercise.track])),
  );
  const lifts = new Map<string, SessionSeen[]>();
  for (const { result, exercise, day, sets } of telling) {
    const { lift, track } = exercise;
    const own = isFromTable(exercise)
      ? ([...ranges].find((each) => fitsTrack(result, each)) ?? `${lift} by no plan`)
      : track;
    const session = { day, track: own, sets };
    const of = lifts.get(lift);
    if (of) of.push(session);
    else lifts.set(lift, [session]);
  }
  return lifts;
}

/** The sets of one session as the estimate sees them: straight ones, of a cluster the lead. */
function setsSeen(
  { exercise, sets, date }: Result,
  bodyMassOn: Past['bodyMassOn'],
): readonly SetSeen[] {
  const work = exercise.style === 'cluster' ? sets.slice(0, 1) : sets;
  const seen = work.flatMap(({ load, count, reserve: entered, failed = false }, place) => {
    const lifted =
      exercise.loading === 'bodyweight'
        ? systemLoad(load, bodyMassOn(date), exercise.bodyShare ?? 1)
        : load;
    if (lifted === null) return [];
    const timed = exercise.counts === 'seconds';
    const { reserve, assumed } = reserveOf(timed ? 0 : entered, exercise.reserve);
    const reps = timed ? count / LIMITS.secondsPerRep : count;
    const set = setSeen({ lifted, reps, reserve, assumed, failed, place });
    return set ? [set] : [];
  });
  return isFromTable(exercise) ? nearBest(seen) : seen;
}

/** Without the warm-ups and light sets that a table does not tell apart. */
function nearBest(sets: readonly SetSeen[]): readonly SetSeen[] {
  const best = Math.max(...sets.map(({ value }) => value));
  return sets
    .filter(({ value }) => Math.exp(value - best) >= LIMITS.nearBest)
    .map((set, place) => ({ ...set, place }));
}
