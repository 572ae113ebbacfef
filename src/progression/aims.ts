import type { Range } from '../program/program.ts';
import type { Mass } from '../training/mass.ts';
import { type Bout, reserveOfSet } from './bout.ts';
import { middle, repsAt } from './estimate.ts';
import { LIMITS } from './limits.ts';
import type { Rack } from './rack.ts';

/** What aims are made from. Of a cluster there is one set, the lead. */
export interface AimQuestion {
  readonly last: Bout;
  /** How many sets to aim for. */
  readonly sets: number;
  readonly range: Range;
  /** What set 1 may rise to before the load does. */
  readonly target: number;
  readonly reserve: Range;
  readonly timed: boolean;
}

export interface Aims {
  readonly counts: readonly number[];
  /** The set that is to have one rep more than last time, from 0. */
  readonly more: number | null;
  /** The first set that ended with less in reserve than wanted, from 0. */
  readonly tooHard: number | null;
}

/**
 * The same as last time, within the range. A set that ended with less in reserve than wanted aims
 * at the reps that leave it.
 */
export function matchAims(question: AimQuestion): readonly number[] {
  return Array.from({ length: question.sets }, (_, at) =>
    Math.max(question.range[0], matched(question, at) - shortfall(question, at)),
  );
}

/**
 * The same as last time, plus one rep (five seconds) on the first set still below its top, if that
 * set ended with the wanted reps in reserve.
 */
export function buildingAims(question: AimQuestion): Aims {
  const { last, sets, timed } = question;
  const counts = [...matchAims(question)];
  const below = last.sets.slice(0, sets).findIndex((set, at) => set.count < topOf(question, at));
  const hard = last.sets.slice(0, sets).findIndex((_, at) => shortfall(question, at) > 0);
  const more = below >= 0 && shortfall(question, below) <= 0 ? below : null;
  if (more !== null) {
    const worth = timed ? LIMITS.secondsPerRep : 1;
    counts[more] = Math.min(topOf(question, more), matched(question, more) + worth);
  }
  return { counts, more, tooHard: hard < 0 ? null : hard };
}

/** Each set's reps at another load, predicted from its own last reps and reserve, within the range. */
export function predictedAims(question: AimQuestion, rack: Rack, load: Mass): readonly number[] {
  const { last, range, reserve, sets, timed } = question;
  return Array.from({ length: sets }, (_, at) => {
    const set = last.sets[at] ?? last.sets.at(-1);
    if (!set || timed) return range[0];
    const evidence = { load: set.load, reps: set.count, reserve: reserveOfSet(set, last) };
    const expected = repsAt(rack, load, middle(reserve), evidence);
    return expected === null ? range[0] : within(range, Math.floor(expected));
  });
}

export const within = ([low, high]: Range, count: number): number =>
  Math.max(low, Math.min(high, count));

function topOf({ range, target }: AimQuestion, at: number): number {
  return at === 0 ? Math.max(range[1], target) : range[1];
}

function matched(question: AimQuestion, at: number): number {
  const set = question.last.sets[at] ?? question.last.sets.at(-1);
  return within([question.range[0], topOf(question, at)], set?.count ?? question.range[0]);
}

/** How many reps short of the wanted reserve a set ended; 0 where the lifter gave none. */
function shortfall({ last, reserve, timed }: AimQuestion, at: number): number {
  const rated = last.sets[at]?.reserve ?? null;
  return timed || rated === null ? 0 : Math.max(0, reserve[0] - rated);
}
