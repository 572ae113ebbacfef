import type { Lift } from '../../training/lift.ts';
import { PACES, type Pace } from './draft-limits.ts';
import type { OptionRow } from './draft-option.ts';
import { draftOptions } from './draft-options.ts';
import { inOrder, type Plan } from './plan.ts';
import { scoreFor } from './score-plan.ts';
import { descend, type Search, shake } from './search-plan.ts';
import type { Wishes } from './wishes.ts';

export interface FoundPlan {
  readonly plan: Plan;
  readonly pace: Pace;
  /** All that could have been taken. */
  readonly rows: readonly OptionRow[];
  readonly score: number;
}

/** What a minute too long costs, from hardly anything to out of the question. */
const OVERTIME = [1, 4, 16, 1000] as const;
/** How much better a tighter pace must do to be taken before a roomier one. */
const TIGHTER = 6;

/**
 * The best plan found for the wishes: at each pace small steps with time to spare, then with less
 * and less of it; at the best pace the search goes on until `most` plans were looked at.
 */
export function findPlan(
  wishes: Wishes,
  lifts: ReadonlyMap<string, Lift>,
  most: number,
  paces: readonly Pace[] = pacesFor(wishes),
): FoundPlan {
  const found = paces.map((pace, at) => {
    const rows = draftOptions(wishes, lifts, pace);
    const search = searchOf(wishes, rows, pace);
    let best = { plan: firstPlan(wishes, rows), score: 0 };
    for (const overtime of OVERTIME) best = descend(best.plan, search(overtime));
    return { ...best, rows, pace, search, rank: best.score + at * TIGHTER };
  });
  const [chosen = found[0]!] = found.toSorted((a, b) => a.rank - b.rank);
  const { rows, pace, search } = chosen;
  return { ...shake(chosen.plan, search(OVERTIME[3]), most), pace, rows };
}

/** A program before keeps its own rest between exercises. */
const pacesFor = ({ from }: Wishes): readonly Pace[] =>
  from ? PACES.map((pace) => ({ ...pace, between: from.program.restBetween })) : PACES;

const searchOf =
  (wishes: Wishes, rows: readonly OptionRow[], pace: Pace) =>
  (overtime: number): Search => {
    const liked = rows.flatMap(([option]) =>
      option && wishes.like.includes(option.exercise.lift.key) ? [option.order] : [],
    );
    return { rows, pace, score: scoreFor(wishes, liked, overtime) };
  };

/** Empty days, or those of the program before as far as they can stay. */
function firstPlan({ days, from }: Wishes, rows: readonly OptionRow[]): Plan {
  return Array.from({ length: days }, (_, at) => {
    const before = from?.program.days[at]?.exercises ?? [];
    const kept = new Map<string, OptionRow[number]>();
    for (const exercise of before) {
      const sets = exercise.style === 'cluster' ? exercise.mostSets : exercise.sets;
      const row = rows.find(([option]) => option?.exercise.lift.key === exercise.lift.key);
      const option = row?.find((one) => one.sets === sets) ?? row?.[0];
      if (option) kept.set(exercise.lift.key, option);
    }
    return inOrder([...kept.values()]);
  });
}
