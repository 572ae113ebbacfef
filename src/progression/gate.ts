import type { Range } from '../program/program.ts';
import { countedReserve, EFFORT } from '../training/effort.ts';
import { nextBelow } from '../training/loads.ts';
import { kilograms, type Mass } from '../training/mass.ts';
import { middle, repsAt, type SetEvidence } from './estimate.ts';
import { LIMITS } from './limits.ts';
import { type Rack, stepAbove } from './rack.ts';
import { spareAfter } from './story.ts';

/** What the gate is asked about: one track at its present load. */
export interface GateQuestion {
  readonly rack: Rack;
  readonly range: Range;
  readonly reserve: Range;
  readonly timed: boolean;
  readonly isolation: boolean;
  /** The first set at the present load. */
  readonly first: SetEvidence;
  /** The sets after it, at the same load; none of a cluster. */
  readonly later: readonly SetEvidence[];
  /** A jump is at most this share, or one step where the step is larger; 0: one step. */
  readonly jump: number;
  /** Two steps may come to this share, where that is more; 0: no such thing. */
  readonly twoSteps: number;
  /** The odds that each set reaches the low end with a load; null where results are too few to say. */
  readonly odds: (load: Mass) => readonly number[] | null;
  /** How often the next load was tried and given up: each asks for more reps first. */
  readonly failedTries: number;
  /** The sets of the session before, where it was at the same load. */
  readonly before: Pick<GateQuestion, 'first' | 'later'> | null;
}

/** May the load go up, and if not, what is missing? */
export type Gate = { readonly target: number } & (
  | {
      readonly kind: 'open';
      /** The next load. */
      readonly step: Mass;
      /** Where to go: the next load, or further where that would be too light. */
      readonly to: Mass;
      /** The step is too large for the range: fewer than the low end are expected. */
      readonly far: boolean;
    }
  /** Set 1 is to reach `target` first; or the step is out of reach even there. */
  | {
      readonly kind: 'closed';
      readonly step: Mass;
      readonly inReach: boolean;
      /** The first set that is not likely to reach the low end there, from 0; null where none keeps it closed. */
      readonly unlikely: number | null;
      /** Where set 1 may not aim past the range: the reserve that it is to leave at the high end; null elsewhere. */
      readonly leave: number | null;
    }
  /** Open after one session, but the next load was given up too often for one to be believed. */
  | { readonly kind: 'once'; readonly step: Mass }
  /** The most reps are reached, and the next load is still out of reach. */
  | { readonly kind: 'far'; readonly step: Mass; readonly expected: number }
  /** There is no heavier load. */
  | { readonly kind: 'top' }
);

/**
 * The first set that is not likely to reach the low end at the next load, from 0; null where all are.
 * Where results are too few for odds: a later set that left less than the wanted reserve, and by what
 * it told would not reach it. Ours.
 */
function unlikelySet(question: GateQuestion, step: Mass): number | null {
  const { first, later, timed, rack, range, reserve, odds } = question;
  if (timed) return null;
  const isSpent = (set: SetEvidence): boolean =>
    set !== first &&
    set.reserve < reserve[0] &&
    (repsAt(rack, step, reserve[0], set) ?? range[0]) < range[0];
  const known = odds(step);
  const at = known
    ? known.findIndex((each) => each < LIMITS.upOdds)
    : [first, ...later].findIndex(isSpent);
  return at < 0 ? null : at;
}

/**
 * The set that keeps the next load back. None does where each, by its own reps, gives the whole range
 * there: that is likely, whatever failed before. Ours.
 */
function setAgainst(question: GateQuestion, step: Mass): number | null {
  const { rack, range, reserve, first, later } = question;
  const giveWhole = [first, ...later].every(
    (set) => (repsAt(rack, step, reserve[0], set) ?? 0) >= range[1],
  );
  return giveWhole ? null : unlikelySet(question, step);
}

/**
 * The next load is the first loadable one at least 1 % above. The gate to it opens when the
 * estimate from set 1 gives the low end of the range there at the middle of the wanted reserve, and
 * every set is likely to reach it; after two tries given up, when two sessions in a row open it: the
 * best of many days is luck. (Size of the step: ACSM 2009; the gate: ours.)
 */
export function gateOf(question: GateQuestion): Gate {
  const gate = gateAfter(question);
  const { before, failedTries } = question;
  if (gate.kind !== 'open' || failedTries < LIMITS.triesToBelieve) return gate;
  const again = before !== null && gateAfter({ ...question, ...before }).kind === 'open';
  return again ? gate : { kind: 'once', step: gate.step, target: gate.target };
}

/** What one session says of the gate. */
function gateAfter(question: GateQuestion): Gate {
  const { rack, range, reserve, timed, first, failedTries } = question;
  const most = mostOf(question);
  const step = stepAbove(rack, first.load);
  if (step === null) return { kind: 'top', target: most };
  if (isHeavy(question)) return gateByReserve(question, step);
  const spare = Math.min(most - range[1], spareAfter(failedTries, timed));
  const opens = (reps: number, inReserve: number): boolean =>
    reps - spare >= range[1] &&
    opensAt(question, step, { ...first, reps: reps - spare, reserve: inReserve });

  let target = Math.min(most, range[1] + spare);
  while (target < most && !opens(target, reserve[0])) target += 1;

  const isOpen = opens(first.reps, first.reserve);
  const unlikely = isOpen ? setAgainst(question, step) : null;
  const closed = { kind: 'closed', step, target, leave: null } as const;
  if (unlikely !== null) return { ...closed, inReach: true, unlikely };
  if (isOpen) return opened(question, step, target);
  const lands = (set: SetEvidence): boolean =>
    (repsAt(rack, step, middle(reserve), set) ?? 0) >= range[0] * LIMITS.landingShare + spare;
  if (first.reps < most) {
    const atTarget = { ...first, reps: target, reserve: reserve[0] };
    const inReach = opens(target, reserve[0]) || lands(atTarget);
    return { ...closed, inReach, unlikely: null };
  }
  if (lands(first)) return { kind: 'open', step, to: step, far: true, target };
  const expected = repsAt(rack, step, middle(reserve), first) ?? 0;
  return { kind: 'far', step, expected, target };
}

function opened(question: GateQuestion, step: Mass, target: number): Gate {
  const to = question.failedTries > 0 ? step : furthest(question, step);
  return { kind: 'open', step, to, far: false, target };
}

const isHeavy = ({ range, timed }: GateQuestion): boolean => !timed && range[1] <= LIMITS.heavyReps;

/**
 * Of singles to triples no more reps are asked: what opens the gate is how many more there were. After
 * tries given up as many more are to be left as other ranges ask for. Ours.
 */
function gateByReserve(question: GateQuestion, step: Mass): Gate {
  const { range, reserve, first, failedTries } = question;
  const [, target] = range;
  const spare = spareAfter(failedTries, false);
  const opens = (reps: number, left: number): boolean => {
    const sure = countedReserve(left) - spare;
    return reps + sure >= 1 && opensAt(question, step, { ...first, reps, reserve: sure });
  };
  const closed = { kind: 'closed', step, target } as const;
  if (first.reps >= target && opens(first.reps, first.reserve)) {
    const unlikely = setAgainst(question, step);
    if (unlikely === null) return opened(question, step, target);
    return { ...closed, inReach: true, unlikely, leave: null };
  }
  let leave = Math.ceil(reserve[0]);
  while (leave < EFFORT.trustedReserve && !opens(target, leave)) leave += 1;
  const inReach = opens(target, leave);
  return { ...closed, inReach, unlikely: null, leave: inReach ? leave : null };
}

function mostOf({ range, timed, isolation }: GateQuestion): number {
  if (timed) return Math.max(range[1], LIMITS.mostSeconds);
  if (range[1] <= LIMITS.heavyReps) return range[1];
  return Math.max(range[1], isolation ? LIMITS.mostRepsIsolation : LIMITS.mostReps);
}

function opensAt(
  { rack, range, reserve, timed }: GateQuestion,
  step: Mass,
  set: SetEvidence,
): boolean {
  if (timed) return true;
  // Where no rep or few can be lost, the middle would ask for more than was planned to be left.
  const isNarrow = range[0] === range[1] || range[1] <= LIMITS.heavyReps;
  const expected = repsAt(rack, step, isNarrow ? reserve[0] : middle(reserve), set);
  if (expected !== null) return expected >= range[0];
  return step - set.load <= kilograms(LIMITS.blindStepKg);
}

/**
 * Where the estimate still gives the whole range at the next load: the heaviest loadable load
 * within the largest jump that gives at least the middle of the range in set 1, and is likely to give the
 * low end in every set.
 */
function furthest(question: GateQuestion, step: Mass): Mass {
  const { rack, range, reserve, first, later, timed } = question;
  const expectedAt = (load: Mass): number => repsAt(rack, load, middle(reserve), first) ?? 0;
  const reachesLow = (load: Mass): boolean =>
    later.every((set) => (repsAt(rack, load, reserve[0], set) ?? 0) >= range[0]) &&
    unlikelySet(question, load) === null;
  const lifted = rack.system(first.load);
  if (timed || lifted === null || expectedAt(step) < range[1]) return step;
  const within = (share: number): Mass => rack.setting(lifted * (1 + share));
  const second = stepAbove(rack, step);
  let load = rack.loads.atOrBelow(within(question.jump));
  if (second !== null && second <= within(question.twoSteps) && second > (load ?? step)) {
    load = second;
  }
  while (load !== null && load > step && (expectedAt(load) < middle(range) || !reachesLow(load))) {
    load = nextBelow(rack.loads, load);
  }
  return load !== null && load > step ? load : step;
}
