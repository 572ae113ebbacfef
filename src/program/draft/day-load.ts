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

export const emptyLoad = (): DayLoad => ({
  sets: new Float64Array(MUSCLES.length),
  direct: 0,
  clusters: 0,
  seconds: 0,
});

/** What the day comes to, written into `load`: a search asks this too often to make a new one. */
export function loadDay(
  load: { -readonly [Key in keyof DayLoad]: DayLoad[Key] },
  day: readonly Option[],
  { between }: Pace,
): DayLoad {
  const { sets } = load;
  sets.fill(0);
  let direct = 0;
  let clusters = 0;
  let seconds = (Math.max(0, day.length - 1) * (between.from + between.to)) / 2;
  for (const option of day) {
    seconds += (direct & option.direct) === 0 ? option.seconds.first : option.seconds.later;
    for (const at of option.trained) sets[at] = (sets[at] ?? 0) + (option.volume[at] ?? 0);
    direct |= option.direct;
    const isLarge = option.exercise.style === 'cluster' && option.sets > CHECK_LIMITS.smallCluster;
    if (isLarge) clusters |= option.direct;
  }
  load.direct = direct;
  load.clusters = clusters;
  load.seconds = seconds;
  return load;
}
