import { group } from 'd3-array';
import { andText } from '../../text/words.ts';
import { isUnderTheBar, type Lift, type Muscle, type Pattern } from '../../training/lift.ts';
import type { Facts, Reason } from '../../training/rule.ts';
import { allBarredBy, barredBy } from './choose-lift.ts';
import type { Pace } from './draft-limits.ts';
import { draftReason } from './draft-rules.ts';
import {
  type DayPlans,
  obstacle,
  setsByMuscle,
  wantedMuscles,
  wantedSets,
} from './room-in-week.ts';
import { BY_COMPOUNDS, DIRECT, FOCUS_ONLY, MOVEMENTS } from './skeleton.ts';
import { startFrom } from './start-load.ts';
import type { Wishes } from './wishes.ts';

/** What a draft should have and has not, with its cause. */
export interface Lost {
  readonly what: 'movement' | 'direct' | 'sets';
  readonly facts: Facts & { readonly cause: string };
}

/** Movements of a week, and the lists that a draft takes them from. */
const WANTED: readonly {
  readonly movement: string;
  readonly patterns: readonly Pattern[];
  readonly keys: readonly string[];
}[] = [
  {
    movement: 'squat or lunge',
    patterns: ['squat', 'lunge'],
    keys: [...MOVEMENTS.squat, ...MOVEMENTS.lunge],
  },
  { movement: 'hinge', patterns: ['hinge'], keys: MOVEMENTS.hinge },
  {
    movement: 'press in front of you',
    patterns: ['horizontal-push'],
    keys: MOVEMENTS['horizontal push'],
  },
  {
    movement: 'press over the head',
    patterns: ['vertical-push'],
    keys: MOVEMENTS['vertical push'],
  },
  { movement: 'row', patterns: ['horizontal-pull'], keys: MOVEMENTS['horizontal pull'] },
  { movement: 'pull from above', patterns: ['vertical-pull'], keys: MOVEMENTS['vertical pull'] },
];

export function givenUp(
  plan: DayPlans,
  wishes: Wishes,
  lifts: ReadonlyMap<string, Lift>,
  pace: Pace,
): readonly Lost[] {
  const there = plan.flat().map(({ lift }) => lift);
  const causeOf = (keys: readonly string[]) => {
    const listed = keys.flatMap((key) => lifts.get(key) ?? []);
    const able = listed.filter((lift) => barredBy(lift, wishes) === null);
    return allBarredBy(listed, wishes) ?? obstacle(plan, able, wishes, pace);
  };
  const movements = WANTED.filter(
    ({ patterns }) =>
      !there.some(({ kind, pattern }) => kind === 'compound' && patterns.includes(pattern)),
  ).map(({ movement, keys }): Lost => {
    const cause = causeOf(keys);
    return { what: 'movement', facts: { movement, cause } };
  });
  const sets = setsByMuscle(plan);
  const muscles = wantedMuscles(wishes).flatMap((muscle): Lost[] => {
    const count = sets.get(muscle) ?? 0;
    const wanted = wantedSets(muscle, wishes);
    const isDirect = there.some(({ trains }) => trains[muscle] === 1);
    if (count >= wanted && isDirect) return [];
    const cause = causeOf(directKeys(muscle));
    const facts = { muscle, sets: Math.round(count * 10) / 10, low: wanted, cause };
    return [{ what: isDirect ? 'sets' : 'direct', facts }];
  });
  return [...movements, ...muscles];
}

/** Every listed lift that trains the muscle directly. */
const directKeys = (muscle: Muscle): readonly string[] => [
  ...(DIRECT[muscle] ?? FOCUS_ONLY[muscle] ?? []),
  ...(BY_COMPOUNDS[muscle] ?? []).flatMap((movement) => MOVEMENTS[movement]),
];

/** The same in sentences, muscles of one cause together, and what of the lifter's wishes is not in. */
export function givenUpReasons(
  lost: readonly Lost[],
  plan: DayPlans,
  wishes: Wishes,
  lifts: ReadonlyMap<string, Lift>,
  pace: Pace,
): readonly Reason[] {
  const of = (what: Lost['what']) => lost.filter((one) => one.what === what);
  // Muscles to bring up have a limit of their own.
  const together = (what: Lost['what'], rule: string) =>
    [...group(of(what), ({ facts }) => `${facts.cause} ${facts.low}`).values()].map((found) => {
      const cause = found[0]?.facts.cause ?? null;
      const muscles = found
        .map(({ facts }) => (what === 'sets' ? `${facts.muscle} ${facts.sets}` : facts.muscle))
        .join(', ');
      return draftReason(rule, { muscles, cause, low: found[0]?.facts.low ?? null });
    });
  return [
    ...of('movement').map(({ facts }) => draftReason('draft-movement-out', facts)),
    ...together('direct', 'draft-muscle-out'),
    ...together('sets', 'draft-muscle-low'),
    ...wishReasons(plan, wishes, lifts, pace),
  ];
}

function wishReasons(
  plan: DayPlans,
  wishes: Wishes,
  lifts: ReadonlyMap<string, Lift>,
  pace: Pace,
): readonly Reason[] {
  const exercises = plan.flat();
  const there = new Set(exercises.map(({ lift }) => lift.key));
  const causeOf = (lift: Lift) => barredBy(lift, wishes) ?? obstacle(plan, [lift], wishes, pace);
  const liked = wishes.like.flatMap((key): Reason[] => {
    const lift = lifts.get(key);
    if (!lift) return [draftReason('draft-liked-out', { lift: key, cause: 'unknown' })];
    if (!there.has(key)) {
      return [draftReason('draft-liked-out', { lift: lift.name, cause: causeOf(lift) })];
    }
    const isPinned = isUnderTheBar(lift) && !wishes.gear.safeties;
    return isPinned ? [draftReason('draft-pinned', { lift: lift.name })] : [];
  });
  const before = wishes.from?.program.days.flatMap((day) => day.exercises) ?? [];
  const gone = [...new Map(before.map(({ lift }) => [lift.key, lift])).values()].filter(
    ({ key }) => !there.has(key) && !wishes.like.includes(key),
  );
  const left = [...group(gone, causeOf)].map(([cause, lost]) =>
    draftReason('draft-left-out', { lifts: andText(lost.map(({ name }) => name)), cause }),
  );
  const used = new Set(exercises.map((exercise) => startFrom(exercise, wishes)?.best.lift));
  const unused = wishes.bests
    .filter(({ lift }) => !used.has(lift))
    .map(({ lift }) =>
      draftReason('draft-best-unused', {
        lift: lifts.get(lift)?.name ?? lift,
        isIn: there.has(lift),
      }),
    );
  return [...liked, ...left, ...unused];
}
