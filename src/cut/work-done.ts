import { Temporal } from 'temporal-polyfill';
import type { Past, Result, SessionDone } from '../progression/past.ts';
import { isHardSet, reserveOf } from '../training/effort.ts';
import { MUSCLES, type Muscle } from '../training/lift.ts';
import { type VolumeEntry, weeklyVolume } from '../training/volume.ts';
import { CUT_LIMITS } from './cut-limits.ts';
import { daysBetween } from './cut-start.ts';
import { hardRepsOfClusters, hardSetsOf } from './set-credit.ts';

/** The work of some days. */
export interface WorkDone {
  readonly from: Temporal.PlainDate;
  /** Last day, included. */
  readonly to: Temporal.PlainDate;
  /** Hard sets by fractional counting; only muscles that were trained. */
  readonly hardSets: ReadonlyMap<Muscle, number>;
  /** Days on which the muscle got a hard set or more. */
  readonly days: ReadonlyMap<Muscle, number>;
  /** Reps close to failure inside clusters; never compared with straight sets. */
  readonly clusterReps: number;
  /** Mean reps in reserve of the work sets that were rated; null without one. */
  readonly meanReserve: number | null;
  /** Sessions with at least one work set. */
  readonly sessions: number;
  /** Sessions that the program asked for, as it was then. */
  readonly planned: number;
  /** Some of it was part of a lighter week: it is not judged. */
  readonly lighter: boolean;
}

/** Adds up what was done from one day to another, both included. */
export function workDone(
  past: Pick<Past, 'results' | 'sessions'>,
  from: Temporal.PlainDate,
  to: Temporal.PlainDate,
  daysPerWeek: number,
): WorkDone {
  const inside = (date: Temporal.PlainDate) =>
    Temporal.PlainDate.compare(date, from) >= 0 && Temporal.PlainDate.compare(date, to) <= 0;
  return addUp(
    past.results.filter(({ date }) => inside(date)),
    past.sessions.filter(({ date, setsDone }) => setsDone > 0 && inside(date)).length,
    plannedIn(past, from, to, daysPerWeek),
    from,
    to,
  );
}

/**
 * The last `count` calendar weeks, Monday to Sunday, oldest first; the last of them is the week of
 * `today`, as far as it has come.
 */
export function weeksOfWork(
  past: Pick<Past, 'results' | 'sessions'>,
  today: Temporal.PlainDate,
  count: number,
  daysPerWeek: number,
): WorkDone[] {
  const first = mondayOf(today).subtract({ weeks: count - 1 });
  const isLate = ({ date }: Pick<Result, 'date'>) => Temporal.PlainDate.compare(date, first) >= 0;
  const results = new Map<string, Result[]>();
  for (const result of past.results.filter(isLate))
    pushTo(results, mondayOf(result.date).toString(), result);
  const sessions = new Map<string, number>();
  for (const { date, setsDone } of past.sessions.filter(isLate)) {
    const week = mondayOf(date).toString();
    if (setsDone > 0) sessions.set(week, (sessions.get(week) ?? 0) + 1);
  }
  return Array.from({ length: count }, (_, at) => {
    const from = first.add({ weeks: at });
    const week = from.toString();
    const to = from.add({ days: 6 });
    const planned = plannedIn(past, from, to, daysPerWeek);
    return addUp(results.get(week) ?? [], sessions.get(week) ?? 0, planned, from, to);
  });
}

/**
 * Sessions asked for from one day to another, week by week: by the program as it was at the first
 * session of the week, else at the last one before. A number changed today judges no past week.
 * @param daysPerWeek the program's now, for where no session kept its own
 */
function plannedIn(
  { sessions }: Pick<Past, 'sessions'>,
  from: Temporal.PlainDate,
  to: Temporal.PlainDate,
  daysPerWeek: number,
): number {
  const known = sessions.flatMap((session) =>
    session.daysPerWeek === undefined ? [] : [{ date: session.date, asked: session.daysPerWeek }],
  );
  let planned = 0;
  for (
    let start = from;
    Temporal.PlainDate.compare(start, to) <= 0;
    start = start.add({ days: 7 })
  ) {
    const end = start.add({ days: 6 });
    const isIn = ({ date }: { readonly date: Temporal.PlainDate }) =>
      Temporal.PlainDate.compare(date, start) >= 0 && Temporal.PlainDate.compare(date, end) <= 0;
    const before = known.findLast(({ date }) => Temporal.PlainDate.compare(date, start) < 0);
    planned += (known.find(isIn) ?? before)?.asked ?? daysPerWeek;
  }
  return planned;
}

/** The Monday on or before a date. */
export const mondayOf = (date: Temporal.PlainDate): Temporal.PlainDate =>
  date.subtract({ days: date.dayOfWeek - 1 });

function addUp(
  results: readonly Result[],
  sessions: number,
  planned: number,
  from: Temporal.PlainDate,
  to: Temporal.PlainDate,
): WorkDone {
  const perDay = new Map<string, VolumeEntry[]>();
  const reserves: number[] = [];
  let clusterReps = 0;
  for (const result of results) {
    const entry = { trains: result.exercise.trains, hardSets: hardSetsOf(result) };
    pushTo(perDay, result.date.toString(), entry);
    clusterReps += hardRepsOfClusters(result);
    for (const { reserve } of result.sets) if (reserve !== null) reserves.push(reserve);
  }
  const volumes = [...perDay.values()].map(weeklyVolume);
  const hardSets = new Map<Muscle, number>();
  const days = new Map<Muscle, number>();
  for (const muscle of MUSCLES) {
    const each = volumes.map((volume) => volume.get(muscle) ?? 0);
    const sum = each.reduce((a, b) => a + b, 0);
    if (sum === 0) continue;
    hardSets.set(muscle, sum);
    days.set(muscle, each.filter((sets) => sets >= CUT_LIMITS.setsForDay).length);
  }
  return {
    from,
    to,
    hardSets,
    days,
    clusterReps,
    meanReserve:
      reserves.length === 0 ? null : reserves.reduce((a, b) => a + b, 0) / reserves.length,
    sessions,
    planned,
    lighter: results.some(({ lighter }) => lighter),
  };
}

function pushTo<T>(lists: Map<string, T[]>, key: string, value: T): void {
  const list = lists.get(key);
  if (list) list.push(value);
  else lists.set(key, [value]);
}

/** The work that is judged. */
export interface JudgedWork extends WorkDone {
  /** Null for the last two full weeks; before there are two, the last 14 days, and when there will be. */
  readonly fullOn: Temporal.PlainDate | null;
}

/**
 * The last two full weeks, Monday to Sunday. The present one counts from when all that was planned
 * is done, or on its Sunday, when that can't be any more; the first only where it was begun on its Monday, or all of it was done. An unfinished
 * week is no failed one.
 * @param sessions also those whose results are too old to matter
 */
export function judgedWork(
  past: Pick<Past, 'results' | 'sessions'>,
  sessions: readonly SessionDone[],
  today: Temporal.PlainDate,
  daysPerWeek: number,
): JudgedWork {
  const missing = (monday: Temporal.PlainDate): number => {
    const week = workDone(past, monday, monday.add({ days: 6 }), daysPerWeek);
    return week.planned - week.sessions;
  };
  const isWhole = (monday: Temporal.PlainDate) => missing(monday) <= 0;
  /** One session can still be done on a Sunday, two are not made up. */
  const isPastHelp = (monday: Temporal.PlainDate) => missing(monday) > 1;
  const monday = mondayOf(today);
  const isOver = isWhole(monday) || (today.dayOfWeek === 7 && isPastHelp(monday));
  const last = isOver ? monday : monday.subtract({ weeks: 1 });
  const from = last.subtract({ weeks: 1 });
  const first = sessions.find(({ setsDone }) => setsDone > 0)?.date;
  const begun = first ? mondayOf(first) : monday;
  const full = first && !first.equals(begun) && !isWhole(begun) ? begun.add({ weeks: 1 }) : begun;
  if (first && daysBetween(full, from) >= 0) {
    return { ...workDone(past, from, last.add({ days: 6 }), daysPerWeek), fullOn: null };
  }
  const rolling = today.subtract({ days: CUT_LIMITS.workDays - 1 });
  return {
    ...workDone(past, rolling, today, daysPerWeek),
    fullOn: full.add({ days: CUT_LIMITS.workDays - 1 }),
  };
}

/** Of the sets that were prescribed to a muscle directly, those that do not count. */
interface SetsShort {
  /** Not done: cut short, or left out. */
  readonly left: number;
  /** Done, but too far from failure. */
  readonly light: number;
}

/** Counts the straight sets of some days that a muscle was prescribed directly and that do not count. */
export function setsShort(
  { results }: Pick<Past, 'results'>,
  { from, to }: Pick<WorkDone, 'from' | 'to'>,
  muscle: Muscle,
): SetsShort {
  let [left, light] = [0, 0];
  for (const { exercise, sets, date } of results) {
    if (exercise.trains[muscle] !== 1 || exercise.style === 'cluster') continue;
    if (Temporal.PlainDate.compare(date, from) < 0) continue;
    if (Temporal.PlainDate.compare(date, to) > 0) continue;
    left += Math.max(0, exercise.setsPlanned - sets.length);
    if (exercise.counts === 'seconds') continue;
    light += sets.filter(
      ({ reserve }) => !isHardSet(reserveOf(reserve, exercise.reserve).reserve),
    ).length;
  }
  return { left, light };
}
