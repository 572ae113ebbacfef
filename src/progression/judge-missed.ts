import { nextBelow } from '../training/loads.ts';
import { type Mass, micrograms } from '../training/mass.ts';
import type { Reason } from '../training/rule.ts';
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
import { because, type ProgressionRule } from './rules/progression-rules.ts';
import { hasDrop } from './set-drop.ts';

/** Set 1 stopped at half the low end or less. */
export const isFarOff = ({ last, range }: Case): boolean => firstCount(last) <= range[0] / 2;

/**
 * Set 1 stopped under the low end in the last two sessions, both at this load, or many sets did in the
 * last three (see {@link areManyMissed}); in the last four, where the way down is a long one.
 */
export const isMissedAgain = (each: Case): boolean =>
  isFirstMissedAgain(each) ||
  manyMissesRunning(each) >= (isLongWayDown(each) ? LIMITS.missesHeld : LIMITS.manyMissesHeld);

const isFirstMissedAgain = (each: Case): boolean =>
  missesRunning(each, missLine(each)) >= 2 ||
  missesRunning(each, each.range[0]) >= LIMITS.missesHeld;

/** Sessions running at this load, up to the last, in which many sets missed, without pain. */
const manyMissesRunning = (each: Case): number =>
  running(each.story.run, (bout) => bout.pains === 0 && areManyMissed(each, bout));

/**
 * Half the sets stopped at half the low end or less; outside a cut, which keeps its loads, also most
 * under the low end.
 */
function areManyMissed({ range: [low], aim }: Case, { sets }: Bout): boolean {
  const under = sets.filter(({ count }) => count < low).length;
  return areFarOff(sets, low) || (aim !== 'cut' && 2 * under > sets.length);
}

const areFarOff = (sets: Bout['sets'], low: number): boolean =>
  2 * sets.filter(({ count }) => count <= low / 2).length >= sets.length;

/** Sessions running at this load, up to the last, in which set 1 stopped under so many reps, without pain. */
const missesRunning = ({ story }: Case, low: number): number =>
  running(story.run, (bout) => bout.pains === 0 && firstCount(bout) < low);

/**
 * Twice running set 1 left less than wanted, and the range holds no fewer reps that would leave more;
 * four times, where the way down is a long one.
 */
export const isSpentAgain = (each: Case): boolean =>
  spentRunning(each) >= (isLongWayDown(each) ? LIMITS.missesHeld : 2);

const spentRunning = ({ story, range, reserve, timed }: Case): number =>
  running(story.run, ({ pains, sets: [first] }) => {
    const isSpent = (first?.reserve ?? reserve[0]) < reserve[0] && first?.count === range[0];
    return !timed && pains === 0 && isSpent;
  });

/** How many of the latest ones are so, without one between them that is not. */
function running(bouts: readonly Bout[], isSo: (bout: Bout) => boolean): number {
  const other = bouts.findLastIndex((bout) => !isSo(bout));
  return bouts.length - 1 - other;
}

/** Where the way down is a long one, only a first set under 70 % of the low end counts. */
const missLine = (each: Case): number =>
  isLongWayDown(each) ? Math.ceil(each.range[0] * LIMITS.coarseMissLine) : each.range[0];

export function isLongWayDown({ rack, load }: Case): boolean {
  const lower = shareBelow(rack, load, LIMITS.easeTo);
  const down = lower === null ? null : stepShare(rack, load, lower);
  return lower === null || (down !== null && down < -LIMITS.largestJump);
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
  return { ...missed(each), why: [stoppedUnder(each)], dropSet: true };
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
    wanted: each.reserve[0],
    spent: spentRunning(each),
    leave: gate?.kind === 'closed' ? gate.leave : null,
    times: isFirstMissedAgain(each) ? missesRunning(each, range[0]) : manyMissesRunning(each),
  });
  const rule = back !== null ? 'ease-back' : ruleOfMisses(each);
  const isMissed = rule !== 'ease-spent';
  const floor = isMissed && each.aim === 'cut' && each.atFloor && exercise.style === 'straight';
  return {
    move: 'ease',
    load: to,
    aims: predictedAims(aimQuestion(each), rack, to),
    top,
    why: [because(rule, facts), ...(floor ? [because('volume-at-floor')] : [])],
    low: exercise.range[0],
  };
}

function ruleOfMisses(each: Case): ProgressionRule {
  if (isFarOff(each)) return 'ease-far-off';
  if (isFirstMissedAgain(each)) return 'ease-missed-twice';
  return isMissedAgain(each) ? 'ease-many-sets' : 'ease-spent';
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

/** Of sets far off their aim, what they tell of strength; else 5 % less. */
function lighter(each: Case): Mass | null {
  const { rack, load } = each;
  const usual = shareBelow(rack, load, LIMITS.easeTo) ?? nextBelow(rack.loads, load);
  const able =
    isFarOff(each) || areFarOff(each.last.sets, each.range[0]) ? ableAfterMiss(each) : null;
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
  const { load, range, exercise } = each;
  const why = [stoppedUnder(each)];
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

function stoppedUnder({ last, load, range, exercise }: Case): Reason {
  const sets = last.sets.flatMap(({ count }, at) => (count < range[0] ? [at + 1] : []));
  return because('hold-missed', exerciseFacts(exercise, { load, low: range[0], sets }));
}

/** Sessions running at this load in which a set after the first stopped under the low end. */
const lateMisses = ({ story, range }: Case): number =>
  running(story.run, ({ sets }) => sets.slice(1).some(({ count }) => count < range[0]));
