import { Temporal } from 'temporal-polyfill';
import { kilograms, type Mass } from '../training/mass.ts';
import type { Reason } from '../training/rule.ts';
import { oneRepMax, repsToFailureAt, systemLoad } from '../training/strength.ts';
import { type Bout, boutsSince, isOnSharedLoad } from './bout.ts';
import { type Case, exerciseFacts, firstCount } from './case.ts';
import { everyHigh } from './judge-up.ts';
import type { Past } from './past.ts';
import { because } from './rules/progression-rules.ts';
import { countedBouts } from './slipping.ts';

/** What has been lost is told since this many days ago, where the program names no start of the cut. Ours. */
const CUT_DAYS = 112;

/** Less body mass lost than this proves nothing. Ours. */
export const TELLING_LOSS = kilograms(1);

/** Sessions at one load without a rep more after which a building lifter is told. Ours. */
const STALLED_AFTER = 4;

/** What holding means, by the program's aim: success in a cut, the plan in maintenance, a stall in a build. */
export function whatHoldingMeans(
  each: Case,
  bouts: readonly Bout[],
  past: Past,
  cutFrom: string | null,
): readonly Reason[] {
  if (each.aim === 'maintain') return [because('holding-maintains')];
  if (each.aim === 'build') {
    const mayAddReps = each.gate.target > each.range[1] || !everyHigh(each);
    const sessions = mayAddReps ? sessionsWithoutGain(each) : 0;
    return sessions >= STALLED_AFTER ? [because('holding-builds', { sessions })] : [];
  }
  const last = each.last.result.date;
  const since = cutFrom ? Temporal.PlainDate.from(cutFrom) : last.subtract({ days: CUT_DAYS });
  return holdingInCut(each, boutsSince(bouts, since), past.bodyMassOn);
}

/** Said of outside loads in any case; of the body's where it went down and the reps hide it. */
function holdingInCut(
  each: Case,
  bouts: readonly Bout[],
  bodyMassOn: Past['bodyMassOn'],
): readonly Reason[] {
  if (each.exercise.lift.loading !== 'bodyweight') return [because('holding-wins')];
  const first = countedBouts(bouts)[0] ?? bouts[0];
  const then = first ? bodyMassOn(first.result.date) : null;
  const now = bodyMassOn(each.last.result.date);
  if (!first || then === null || now === null || then - now < TELLING_LOSS) return [];
  const reason = bodyWeightReason(each, first, then, now);
  return reason ? [reason] : [];
}

/** For a body weight lift the same reps at a lower body weight are less work: says how many would be full strength. */
function bodyWeightReason(each: Case, first: Bout, then: Mass, now: Mass): Reason | null {
  const { exercise, reserve, load, last } = each;
  const [set] = first.sets;
  const share = exercise.lift.bodyShare;
  if (!set || share === null || first.load !== load) return null;
  const [before, present] = [systemLoad(load, then, share), systemLoad(load, now, share)];
  if (before === null || present === null || before <= 0 || present <= 0) return null;
  const left = set.reserve ?? reserve[0];
  const reps = Math.round(repsToFailureAt(present, oneRepMax(before, set.count + left)) - left);
  if (reps <= firstCount(last)) return null;
  const facts = { lost: then - now, share: 1 - present / before, reps };
  return because('holding-body-weight', exerciseFacts(exercise, facts));
}

function sessionsWithoutGain({ story, last }: Case): number {
  // At the load of others of its day a lift has nothing to gain.
  const since = story.run.findLastIndex(isOnSharedLoad) + 1;
  const alike = story.run.slice(since).filter(({ sets }) => sets.length === last.sets.length);
  const counts = alike.map(repsOf);
  const best = Math.max(...counts.slice(0, -1), 0);
  if (repsOf(last) > best) return 0;
  return counts.length - counts.findIndex((count) => count >= repsOf(last));
}

const repsOf = ({ sets }: Bout): number => sets.reduce((sum, { count }) => sum + count, 0);
