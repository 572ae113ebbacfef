import { nextBelow } from '../training/loads.ts';
import { type Mass, micrograms } from '../training/mass.ts';
import { matchAims, predictedAims } from './aims.ts';
import type { Bout } from './bout.ts';
import {
  aimInRange,
  aimQuestion,
  type Case,
  exerciseFacts,
  firstCount,
  type Ruling,
} from './case.ts';
import { firstSetEvidence, laterSetsEvidence, loadFor, middle } from './estimate.ts';
import { type Gate, gateOf } from './gate.ts';
import { LIMITS } from './limits.ts';
import { shareBelow, stepShare } from './rack.ts';
import { because } from './rules/progression-rules.ts';
import { hasDrop } from './set-drop.ts';

/** Set 1 stopped at half the low end or less. */
export const isFarOff = ({ last, range }: Case): boolean => firstCount(last) <= range[0] / 2;

/**
 * Set 1 stopped under the low end in the last two sessions, both at this load; in the last four, where
 * the way down is a long one.
 */
export const isMissedAgain = (each: Case): boolean =>
  missesRunning(each, missLine(each)) >= 2 ||
  missesRunning(each, each.range[0]) >= LIMITS.missesHeld;

/** Sessions running at this load, up to the last, in which set 1 stopped under so many reps, without pain. */
const missesRunning = ({ story }: Case, low: number): number =>
  running(story.run, (bout) => bout.pains === 0 && firstCount(bout) < low);

/** How many of the latest ones are so, without one between them that is not. */
function running(bouts: readonly Bout[], isSo: (bout: Bout) => boolean): number {
  const other = bouts.findLastIndex((bout) => !isSo(bout));
  return bouts.length - 1 - other;
}

/** Where the way down is a long one, only a first set under 70 % of the low end counts. */
function missLine({ rack, load, range }: Case): number {
  const lower = shareBelow(rack, load, LIMITS.easeTo);
  const down = lower === null ? null : stepShare(rack, load, lower);
  const coarse = lower === null || (down !== null && down < -LIMITS.largestJump);
  return coarse ? Math.ceil(range[0] * LIMITS.coarseMissLine) : range[0];
}

/** In a cut the load stays and a set goes, once at each load, before the load does; not one that was tried in vain. */
export function keepsLoad(each: Case): boolean {
  return (
    each.aim === 'cut' &&
    cameBackFrom(each) === null &&
    !isFarOff(each) &&
    each.spare &&
    each.drop.kind === 'none' &&
    !each.story.run.some((bout) => hasDrop(bout, bout.result.exercise.setsPlanned))
  );
}

export function dropSet(each: Case): Ruling {
  return { ...missed(each), dropSet: true };
}

/** The load before this one, where this one was never reached. */
const cameBackFrom = ({ story }: Case): Mass | null => (story.reached ? null : story.cameFrom);

export function ease(each: Case): Ruling {
  const { rack, load, range, exercise, last } = each;
  const back = cameBackFrom(each);
  const to = back === null ? lighter(each) : rack.loads.atOrBelow(back);
  if (to === null || to >= load) return nothingLighter(each);
  const gate = back === null ? null : gateAfterBack(each, to);
  const top = gate?.target ?? range[1];
  const facts = exerciseFacts(each.exercise, {
    load: to,
    from: load,
    low: range[0],
    done: firstCount(last),
    target: top,
    leave: gate?.kind === 'closed' ? gate.leave : null,
    times: missesRunning(each, range[0]),
  });
  const rule = back !== null ? 'ease-back' : isFarOff(each) ? 'ease-far-off' : 'ease-missed-twice';
  const floor = each.aim === 'cut' && each.atFloor && exercise.style === 'straight';
  return {
    move: 'ease',
    load: to,
    aims: predictedAims(aimQuestion(each), rack, to),
    top,
    why: [because(rule, facts), ...(floor ? [because('volume-at-floor')] : [])],
    low: exercise.range[0],
  };
}

/** What set 1 has to show at the load gone back to before this one is tried again. */
function gateAfterBack({ rack, exercise, reserve, timed, story }: Case, to: Mass): Gate {
  return gateOf({
    rack,
    range: exercise.range,
    reserve,
    timed,
    isolation: exercise.lift.kind === 'isolation',
    first: { load: to, reps: 0, reserve: reserve[0] },
    later: [],
    jump: 0,
    twoSteps: 0,
    odds: () => null,
    failedTries: story.triesAfterBack,
    before: null,
  });
}

/** Of a set far off its aim, what it tells of strength; else 5 % less. */
function lighter(each: Case): Mass | null {
  const { rack, load } = each;
  const usual = shareBelow(rack, load, LIMITS.easeTo) ?? nextBelow(rack.loads, load);
  const able = isFarOff(each) ? ableAfterMiss(each) : null;
  return usual !== null && able !== null && able < usual ? able : usual;
}

/** The load that gives the middle of the range by the best set, within 20 %: one bad day is not everything. */
function ableAfterMiss({ rack, load, last, range, reserve, timed }: Case): Mass | null {
  const wishes = [firstSetEvidence(last), ...laterSetsEvidence(last)].flatMap((set) => {
    const wish = timed ? null : loadFor(rack, middle(range), middle(reserve), set);
    return wish === null ? [] : [wish];
  });
  const lifted = rack.system(load);
  if (wishes.length === 0 || lifted === null) return null;
  const least = rack.setting(lifted * LIMITS.missTo);
  return rack.loads.atOrBelow(micrograms(Math.max(least, ...wishes)));
}

/** Keeps the load, and aims at what was done. */
function nothingLighter(each: Case): Ruling {
  const { load, last, range } = each;
  const done = last.sets.map(({ count }) => Math.max(1, count));
  return {
    move: 'hold',
    load,
    aims: Array.from({ length: each.sets }, (_, at) => done[at] ?? done.at(-1) ?? range[0]),
    top: range[1],
    why: [because('hold-nothing-lighter', exerciseFacts(each.exercise, { load }))],
  };
}

/** Same load; the sets that missed aim at the low end, the others match. */
export function missed(each: Case): Ruling {
  const { last, load, range, exercise } = each;
  const sets = last.sets.flatMap(({ count }, at) => (count < range[0] ? [at + 1] : []));
  const why = [because('hold-missed', exerciseFacts(each.exercise, { load, low: range[0], sets }))];
  if (exercise.style === 'straight' && lateMisses(each) >= 3) {
    why.push(because('hold-short-often', exerciseFacts(each.exercise, { low: range[0] })));
  }
  return {
    move: 'hold',
    load,
    aims: matchAims(aimInRange(each)),
    top: range[1],
    why,
  };
}

/** Sessions running at this load in which a set after the first stopped under the low end. */
const lateMisses = ({ story, range }: Case): number =>
  running(story.run, ({ sets }) => sets.slice(1).some(({ count }) => count < range[0]));
