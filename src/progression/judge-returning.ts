import { EFFORT } from '../training/effort.ts';
import { nextBelow } from '../training/loads.ts';
import type { Mass } from '../training/mass.ts';
import { kilograms } from '../training/mass.ts';
import { matchAims, predictedAims } from './aims.ts';
import type { Bout } from './bout.ts';
import { aimInRange, aimQuestion, type Case, exerciseFacts, type Ruling } from './case.ts';
import { firstSetEvidence, middle, repsAt } from './estimate.ts';
import type { Layoff } from './layoff.ts';
import type { LeftRange } from './left-range.ts';
import { LIMITS } from './limits.ts';
import { madeLoadable, shareBelow, stepAbove, stepShare } from './rack.ts';
import { because } from './rules/progression-rules.ts';

/** After pain: an easier load, or the one that was easier already, and the question first. */
export function afterPain(each: Case): Ruling {
  const { load, layoff, left, range, painTwice } = each;
  const isEased = !painTwice && layoff === null && left === null && wasEased(each.last);
  const to = isEased ? load : easierFor(each);
  const rule = isEased ? 'pain-eased' : painTwice ? 'pain-twice' : 'pain-asked';
  return {
    move: to < load ? 'ease' : 'hold',
    load: to,
    aims: matchAims(aimInRange(each)),
    top: range[1],
    why: [because(rule, exerciseFacts(each.exercise, { load: to, from: load }))],
    askPain: true,
    gentle: layoff?.gentle ?? false,
  };
}

function easierFor({ rack, load, layoff, left }: Case): Mass {
  const share = Math.min(LIMITS.painTo, layoff?.share ?? 1);
  const from = left?.load ?? load;
  return shareBelow(rack, from, share) ?? nextBelow(rack.loads, from) ?? from;
}

/** It was marked before a lighter load was taken, and with that every set was done. */
const wasEased = ({ result: { exercise, finished }, mixed }: Bout): boolean =>
  finished && !mixed && exercise.why.some(({ rule }) => rule === 'pain-lighter');

/** The lifter asks for an easier load because of pain. */
export function painLighter(each: Case): Ruling {
  const load = easierFor(each);
  const facts = exerciseFacts(each.exercise, { load, from: each.load });
  return {
    ...afterPain(each),
    move: 'ease',
    load,
    why: [because('pain-lighter', facts)],
    askPain: false,
  };
}

/** A range that was left: begins anew where what the lift showed since points to. */
export function beginAgain(each: Case, { load: able, shown, date }: LeftRange): Ruling {
  const { rack, load: from, layoff, range, exercise, sets } = each;
  const away = layoff ? shareBelow(rack, able, layoff.share) : able;
  const load = away ?? rack.loads.lightest;
  const aim = Math.floor(middle(exercise.range));
  return {
    move: 'start',
    load,
    aims: Array.from({ length: sets }, () => aim),
    top: range[1],
    why: [
      because(
        'start-range-again',
        exerciseFacts(exercise, {
          ...{ load, from, date: date.toString(), done: shown.reps, next: shown.load },
          days: layoff ? each.daysAway : null,
        }),
      ),
    ],
    low: exercise.range[0],
    gentle: layoff?.gentle ?? false,
  };
}

/** Back after a time away: lighter, and from four weeks on with half the sets. */
export function comeBack(each: Case, layoff: Layoff): Ruling {
  const { rack, load, range, daysAway } = each;
  const lower = shareBelow(rack, load, layoff.share);
  const down = lower === null ? null : stepShare(rack, load, lower);
  const tooFar = down !== null && down < -LIMITS.largestJump && layoff.rule === 'return-short';
  // A load that the gear no longer makes is no load to stay at.
  const made = madeLoadable(rack, load);
  const near = made < load ? made : null;
  const to = tooFar ? near : (lower ?? nextBelow(rack.loads, load));
  const matched = matchAims(aimInRange(each));
  const same = to === null;
  return {
    move: layoff.rule === 'start-again' ? 'start' : 'return',
    load: to ?? load,
    aims: same ? matched.map((count) => Math.max(1, count - 2)) : matched,
    top: range[1],
    why: [
      because(
        same ? 'return-short-same' : layoff.rule,
        exerciseFacts(each.exercise, { load: to ?? load, from: load, days: daysAway, lower }),
      ),
    ],
    low: each.exercise.range[0],
    gentle: layoff.gentle,
  };
}

/** On the way back after a layoff: the load that is earned, or null where none is. */
export function wayBack(each: Case): Mass | null {
  const { last, story, rack, load, range, reserve, timed } = each;
  const { goal } = story;
  if (goal === null || last.mixed || last.unseen) return null;
  if (last.sets.some(({ count }) => count < range[0])) return null;
  const step = stepAbove(rack, load);
  if (step === null || step > goal) return null;
  const lifted = rack.system(load);
  if (lifted === null) return step - load <= kilograms(LIMITS.blindStepKg) ? step : null;
  const most = rack.loads.atOrBelow(rack.setting(lifted * (1 + LIMITS.largestJump)));
  let to: Mass | null = rack.loads.atOrBelow(most !== null && most < goal ? most : goal);
  const evidence = firstSetEvidence(last);
  const opens = (wish: Mass): boolean =>
    timed ||
    reachedUnrated(last) ||
    isTooLightToTell(each) ||
    (repsAt(rack, wish, middle(reserve), evidence) ?? 0) >= range[0];
  if (most === null || most < step) to = step;
  while (to !== null && to > step && !opens(to)) to = nextBelow(rack.loads, to);
  return to !== null && to > load && opens(to) ? to : null;
}

/**
 * Every set reached its aim, and the lifter told no effort but the planned one. Taken at its word
 * that would hold a strong lifter back for weeks, and the old load is known to be possible.
 */
function reachedUnrated({ sets, result: { exercise } }: Bout): boolean {
  return sets.every(({ count, reserve, entered }, at) => {
    const isPlanned = reserve === null || reserve === exercise.reserve[0] || entered !== 'typed';
    return isPlanned && count >= (exercise.sets[at]?.aim ?? 0);
  });
}

/**
 * Every set reached the high end with more in reserve than can be told: the estimate says too
 * little, and the old load is known to be possible.
 */
function isTooLightToTell({ last, range }: Case): boolean {
  return last.sets.every(
    ({ count, reserve }) => count >= range[1] && (reserve ?? 0) >= EFFORT.trustedReserve,
  );
}

export function upAfterReturn(each: Case, to: Mass): Ruling {
  const { load, range, rack, story } = each;
  return {
    move: 'up',
    load: to,
    aims: predictedAims(aimQuestion(each), rack, to),
    top: range[1],
    why: [
      because(
        'up-after-return',
        exerciseFacts(each.exercise, { load: to, from: load, goal: story.goal }),
      ),
    ],
  };
}
