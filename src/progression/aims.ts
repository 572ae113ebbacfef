import type { Range } from '../program/program.ts';
import { countedReserve, miniAim } from '../training/effort.ts';
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
  /** Falling from set to set. */
  readonly counts: readonly number[];
  /** The set of today that is to have one rep more than last time, from 0. */
  readonly more: number | null;
  /** The first set of last time that ended with less in reserve than wanted, from 0. */
  readonly tooHard: number | null;
  /** The first set of last time that ended with more in reserve than wanted and has reps to add, from 0. */
  readonly tooEasy: number | null;
}

/**
 * The same as last time, within the range, the most first: what can be done falls from set to set. A
 * set that ended with less in reserve than wanted aims at the reps that leave it.
 */
export const matchAims = (question: AimQuestion): readonly number[] =>
  falling(matchingOf(inOrder(question)));

const matchingOf = (question: AimQuestion): readonly number[] =>
  Array.from({ length: question.sets }, (_, at) =>
    Math.max(question.range[0], matched(question, at) + Math.min(0, surplus(question, at))),
  );

/** Last time's sets as if the one with the most reps had been the first. */
const inOrder = (question: AimQuestion): AimQuestion => ({
  ...question,
  last: {
    ...question.last,
    sets: question.last.sets.toSorted((one, other) => other.count - one.count),
  },
});

const falling = (counts: readonly number[]): number[] => counts.toSorted((a, b) => b - a);

/**
 * The same as last time, plus one rep (five seconds) on the first set still below the high end that did
 * as it was asked, and on set 1 up to its target once all are there; only if that set ended with the
 * wanted reps in reserve. A set that ended with more than those aims at the reps that leave them.
 */
export function buildingAims(asDone: AimQuestion): Aims {
  const question = inOrder(asDone);
  const { sets } = question;
  const matching = matchingOf(question);
  const counts = matching.map((aim, at) => Math.max(aim, filled(question, at)));
  /** The first of last time's sets, as they were done, whose place in order is one of these. */
  const firstDone = (isOne: (at: number) => boolean): number | null => {
    const found = question.last.sets.slice(0, sets).filter((_, at) => isOne(at));
    const places = found.map((set) => asDone.last.sets.indexOf(set));
    return places.length === 0 ? null : Math.min(...places);
  };
  const tooHard = firstDone((at) => surplus(question, at) < 0);
  const tooEasy = firstDone((at) => (counts[at] ?? 0) > (matching[at] ?? 0));
  const next = nextToGrow(question, counts);
  const more = next !== null && surplus(question, next) >= 0 ? next : null;
  if (more !== null) counts[more] = Math.max(counts[more] ?? 0, grown(question, more));
  const asked = falling(counts);
  return {
    counts: asked,
    more: more === null ? null : asked.lastIndexOf(counts[more] ?? 0),
    tooHard,
    tooEasy,
  };
}

/**
 * The first set below the high end. One that did less than it was asked waits while another of them may
 * grow, or the same set would be asked for the same rep for ever; one that would come to more than the
 * set before it never grows. With none below, set 1 while it is below its target.
 */
function nextToGrow(question: AimQuestion, aims: readonly number[]): number | null {
  const { last, sets, range, target } = question;
  const below = last.sets.slice(0, sets).flatMap(({ count }, at) => (count < range[1] ? [at] : []));
  if (below.length === 0) return (last.sets[0]?.count ?? target) < target ? 0 : null;
  const asked = aimsOf(last);
  const fellShort = (at: number) => (last.sets[at]?.count ?? 0) < (asked[at] ?? 0);
  const mayGrow = below.filter((at) => at === 0 || grown(question, at) <= (aims[at - 1] ?? 0));
  return mayGrow.find((at) => !fellShort(at)) ?? mayGrow[0] ?? null;
}

/** A set's reps with one more, or its seconds with five. */
const grown = (question: AimQuestion, at: number): number =>
  Math.min(
    topOf(question, at),
    matched(question, at) + (question.timed ? LIMITS.secondsPerRep : 1),
  );

/** What a session was asked at the load that it is judged by, the most first; nothing of another load. */
const aimsOf = ({ result: { exercise }, load }: Bout): readonly number[] =>
  exercise.load === load ? falling(exercise.sets.map(({ aim }) => aim)) : [];

/**
 * Each set's reps at another load, predicted from its own last reps and reserve, within the range, the
 * most first.
 */
export function predictedAims(question: AimQuestion, rack: Rack, load: Mass): readonly number[] {
  const { last, range, reserve, sets, timed } = question;
  const predicted = Array.from({ length: sets }, (_, at) => {
    const set = last.sets[at] ?? last.sets.at(-1);
    if (!set || timed) return range[0];
    const evidence = { load: set.load, reps: set.count, reserve: reserveOfSet(set, last) };
    const expected = repsAt(rack, load, middle(reserve), evidence);
    return expected === null ? range[0] : within(range, Math.floor(expected));
  });
  return falling(predicted);
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

/** The reps that would have left the wanted reserve, up to the high end. */
function filled(question: AimQuestion, at: number): number {
  const count = question.last.sets[at]?.count ?? 0;
  const left = surplus(question, at);
  return left > 0 ? Math.min(question.range[1], count + left) : 0;
}

/** How many reps beyond the wanted reserve a set still had; negative: how many too few. 0 where the lifter gave none. */
function surplus({ last, reserve, timed }: AimQuestion, at: number): number {
  const rated = last.sets[at]?.reserve ?? null;
  if (timed || rated === null) return 0;
  const trusted = countedReserve(rated);
  return trusted < reserve[0] ? trusted - reserve[0] : Math.max(0, trusted - reserve[1]);
}

/** Reps to aim at in the first mini-set of a cluster: those of last time, else a third of the lead's. */
export const firstMiniAim = (lead: number, last: Bout | null): number =>
  miniAim([], last?.minis[0]?.count ?? lead / 3);
