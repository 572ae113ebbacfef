import { predictedAims } from './aims.ts';
import { aimQuestion, type Case, exerciseFacts, firstCount, type Ruling } from './case.ts';
import { firstSetEvidence, middle, repsAt } from './estimate.ts';
import { LIMITS } from './limits.ts';
import { stepShare } from './rack.ts';
import { because } from './rules/progression-rules.ts';
import { landingLow } from './story.ts';

/** Every set at the high end and the gate open; of a cluster the lead, with enough mini-sets after it. */
export const isEarned = (each: Case): boolean =>
  each.gate.kind === 'open' && everyHigh(each) && minisMissing(each) === 0;

export const everyHigh = ({ last, range }: Case): boolean =>
  last.sets.every(({ count }) => count >= range[1]);

/** How many mini-sets a cluster must still add before more load; 0 for straight sets. */
export function minisMissing(each: Case): number {
  return Math.max(0, minisWanted(each) - each.last.minis.length);
}

export const minisWanted = ({ exercise }: Case): number =>
  exercise.style === 'cluster' ? Math.min(LIMITS.minisForUp, exercise.mostSets - 1) : 0;

export function goUp(each: Case): Ruling {
  const { gate, last, load, rack, range, exercise, reserve } = each;
  if (gate.kind !== 'open') throw new Error('Going up needs an open gate.');
  const low = gate.far ? landingLow(exercise.range[0]) : exercise.range[0];
  const share = stepShare(rack, load, gate.to);
  const expected = repsAt(rack, gate.to, middle(reserve), firstSetEvidence(last));
  const facts = exerciseFacts(each.exercise, {
    load: gate.to,
    from: load,
    high: range[1],
    done: firstCount(last),
    minis: last.minis.length,
    share,
    expected: expected === null ? null : Math.max(1, Math.floor(expected)),
    low,
    sessions: LIMITS.landingSessions,
  });
  const rule = gate.far
    ? 'up-big-step'
    : gate.to > gate.step
      ? 'up-by-more'
      : exercise.style === 'cluster'
        ? 'up-cluster'
        : 'up-in-range';
  const question = { ...aimQuestion(each), range: [low, range[1]] as const };
  return {
    move: 'up',
    load: gate.to,
    aims: predictedAims(question, rack, gate.to),
    top: range[1],
    why: [because(rule, facts)],
    low,
  };
}
