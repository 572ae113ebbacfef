import { MUSCLES, type Muscle } from '../../training/muscles.ts';
import { CHECK_LIMITS } from '../check/check-limits.ts';
import type { Pace } from './draft-limits.ts';
import type { Option } from './draft-option.ts';

/** What a day comes to. */
export interface DayLoad {
  /** Hard sets, in the order of MUSCLES. */
  readonly sets: Float64Array;
  /** Muscles trained directly: bit i for the i-th of MUSCLES. */
  readonly direct: number;
  /** Muscles with a large cluster, in the same bits. */
  readonly clusters: number;
  readonly seconds: number;
}

const PLACE = new Map(MUSCLES.map((muscle, at) => [muscle, at]));

export const bitOf = (muscle: Muscle): number => 1 << (PLACE.get(muscle) ?? 0);

export const placeOf = (muscle: Muscle): number => PLACE.get(muscle) ?? 0;

export function dayLoad(day: readonly Option[], { between }: Pace): DayLoad {
  const sets = new Float64Array(MUSCLES.length);
  let [direct, clusters] = [0, 0];
  let seconds = (Math.max(0, day.length - 1) * (between.from + between.to)) / 2;
  for (const option of day) {
    seconds += (direct & option.direct) === 0 ? option.seconds.first : option.seconds.later;
    for (const [at, hardSets] of option.volume) sets[at] = (sets[at] ?? 0) + hardSets;
    direct |= option.direct;
    const isLarge = option.exercise.style === 'cluster' && option.sets > CHECK_LIMITS.smallCluster;
    if (isLarge) clusters |= option.direct;
  }
  return { sets, direct, clusters, seconds };
}
