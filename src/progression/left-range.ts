import type { Temporal } from 'temporal-polyfill';
import type { Exercise, Range } from '../program/program.ts';
import type { Mass } from '../training/mass.ts';
import {
  type Bout,
  boutOf,
  foreignSessions,
  isOnLightGear,
  reserveOfSet,
  resultsOfLift,
} from './bout.ts';
import { bestOf, loadFor, middle, type SetEvidence } from './estimate.ts';
import { LIMITS } from './limits.ts';
import type { Past } from './past.ts';
import { madeLoadable, type Rack } from './rack.ts';
import { countedBouts } from './slipping.ts';

/** A range that was left for another, in which less was shown since than its old load asks for. */
export interface LeftRange {
  /** Where it begins again. */
  readonly load: Mass;
  /** The set that points there. */
  readonly shown: SetEvidence;
  /** When it was trained last. */
  readonly date: Temporal.PlainDate;
}

/** What a track that was left is asked about. */
interface LeftQuestion {
  readonly exercise: Exercise;
  readonly past: Past;
  readonly rack: Rack;
  readonly reserve: Range;
  /** The session that the track would go on from. */
  readonly last: Bout;
}

/**
 * A load is no more than the lift showed lately: the best set of its latest sessions since the track
 * was trained last, in whatever range. Null where those still give the low end at the old load, or
 * 5 % under it, where there is none, and where nothing can be told from reps. Ours.
 */
export function leftRangeOf({
  exercise,
  past,
  rack,
  reserve,
  last,
}: LeftQuestion): LeftRange | null {
  if (exercise.lift.counts === 'seconds') return null;
  const shown = bestOf(rack, sinceThen(past, last).flatMap(setsEvidence));
  const old = rack.system(last.load);
  if (shown === null || old === null) return null;
  const able = systemFor(rack, exercise.range[0], reserve[0], shown);
  const wish = systemFor(rack, middle(exercise.range), middle(reserve), shown);
  if (able === null || wish === null || able >= old * LIMITS.easeTo) return null;
  const load = madeLoadable(rack, rack.setting(wish * LIMITS.newRangeTo));
  return load < last.load ? { load, shown, date: last.result.date } : null;
}

function systemFor(rack: Rack, reps: number, left: number, shown: SetEvidence): number | null {
  const load = loadFor(rack, reps, left, shown);
  return load === null ? null : rack.system(load);
}

/** The latest sessions of the lift after one, those that tell of strength where there are any. */
function sinceThen(past: Past, { result: { exercise, start } }: Bout): readonly Bout[] {
  const foreign = foreignSessions(past);
  const bouts = resultsOfLift(past, exercise.lift)
    .filter((each) => each.start > start && !each.lighter && !foreign.has(each.session))
    .filter((each) => !isOnLightGear(each))
    .map(boutOf)
    .filter((bout) => bout !== null);
  const counted = countedBouts(bouts);
  return (counted.length > 0 ? counted : bouts).slice(-LIMITS.latestSessions);
}

/** Every set tells: a table begins with its warm-ups. */
const setsEvidence = (bout: Bout): SetEvidence[] =>
  bout.result.sets.map((set) => ({
    load: set.load,
    reps: set.count,
    reserve: reserveOfSet(set, bout),
  }));
