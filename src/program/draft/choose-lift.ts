import { isUnderTheBar, type Lift } from '../../training/lift.ts';
import { loadsFor } from '../../training/loads.ts';
import { missingFor } from '../check/rules/gear.ts';
import { DRAFT_LIMITS } from './draft-limits.ts';
import type { Wishes } from './wishes.ts';

/** Why a lift cannot be in a draft, the one that is easiest to change last. */
export type KeptOutBy = 'gear' | 'safeties' | 'hurts' | 'without';

/** What a lift is kept out by; null where it may come in. */
export function barredBy(lift: Lift, wishes: Wishes): KeptOutBy | null {
  if (wishes.without.includes(lift.key)) return 'without';
  const before = exerciseBefore(lift.key, wishes);
  if (missingFor({ lift, step: before?.step ?? null }, wishes.gear) !== null) return 'gear';
  if (lift.joints.some((joint) => wishes.hurts.includes(joint))) return 'hurts';
  const isAsked = before !== null || wishes.like.includes(lift.key) || hasBest(lift, wishes);
  return isUnderTheBar(lift) && !wishes.gear.safeties && !isAsked ? 'safeties' : null;
}

/** Why none of the lifts can come in; null where one can. A lift left out is a cause where nothing else bars it. */
export function allBarredBy(lifts: readonly Lift[], wishes: Wishes): KeptOutBy | null {
  if (lifts.some((lift) => barredBy(lift, wishes) === null)) return null;
  const bars = lifts.map((lift) => barredBy(lift, { ...wishes, without: [] }) ?? 'without');
  return NEAREST.find((bar) => bars.includes(bar)) ?? 'gear';
}

/** What stands nearest to the lifter's own choice is the true cause. */
const NEAREST: readonly KeptOutBy[] = ['without', 'hurts', 'safeties', 'gear'];

export const exerciseBefore = (key: string, { from }: Wishes) =>
  from?.program.days
    .flatMap(({ exercises }) => exercises)
    .find((exercise) => exercise.lift.key === key) ?? null;

export const hasBest = ({ key }: Lift, { bests }: Wishes): boolean =>
  bests.some(({ lift }) => lift === key);

/** The lists' lifts that may come in, with the lifter's own of the same pattern, the best first. */
export function lineUp(
  lists: readonly (readonly string[])[],
  taken: ReadonlySet<string>,
  wishes: Wishes,
  lifts: ReadonlyMap<string, Lift>,
): readonly Lift[] {
  const listed = lists.flatMap((keys, list) =>
    keys.flatMap((key, place) => {
      const lift = lifts.get(key);
      return lift ? [{ lift, rank: list * LIST + place }] : [];
    }),
  );
  const patterns = new Set(lists.flatMap(([first]) => lifts.get(first ?? '')?.pattern ?? []));
  const own = [...lifts.values()]
    .filter(({ pattern, kind }) => kind === 'compound' && patterns.has(pattern))
    .filter(({ key }) => !listed.some(({ lift }) => lift.key === key))
    .filter((lift) => wishFor(lift, wishes) > 0)
    .map((lift) => ({ lift, rank: lists.length * LIST }));
  return [...listed, ...own]
    .filter(({ lift }) => barredBy(lift, wishes) === null)
    .map(({ lift, rank }) => ({ lift, rank: rank + dislike(lift, taken, wishes) }))
    .sort((a, b) => a.rank - b.rank)
    .map(({ lift }) => lift);
}

const LIST = 20;

/** How much the lifter asked for it. */
function wishFor(lift: Lift, wishes: Wishes): number {
  if (wishes.like.includes(lift.key)) return 300;
  if (exerciseBefore(lift.key, wishes)) return 200;
  return hasBest(lift, wishes) ? 100 : 0;
}

function dislike(lift: Lift, taken: ReadonlySet<string>, wishes: Wishes): number {
  const tooLight = isSoonTooLight(lift, wishes) ? 4.5 : 0;
  // A second lift for the same movement, where the next in line does as well.
  return taken.has(lift.key) ? 1.5 + tooLight : tooLight - wishFor(lift, wishes);
}

function isSoonTooLight({ loading, hands, kind }: Lift, { gear }: Wishes): boolean {
  if (loading !== 'dumbbell' || kind !== 'compound') return false;
  const { heaviest } = loadsFor(gear, { loading, hands, bar: null, step: null });
  return heaviest !== null && heaviest < DRAFT_LIMITS.lightDumbbell;
}
