import { directMuscles, type Loading, type Shares } from './lift.ts';
import { type Loads, nextBelow } from './loads.ts';
import { type Mass, NO_MASS, share } from './mass.ts';

/** What decides the warm-up of an exercise. */
export interface WarmUpNeed {
  /** Load of the first work set; the setting of a body weight lift. */
  readonly work: Mass;
  /** Low end of the rep range. */
  readonly lo: number;
  readonly loads: Loads;
  readonly style: 'straight' | 'cluster';
  readonly kind: 'compound' | 'isolation';
  readonly loading: Loading;
  readonly counts: 'reps' | 'seconds';
  /** Have the muscles that the lift trains directly been trained today? */
  readonly warmth: 'first-for-muscles' | 'muscles-warm';
  /** Plates handled to go from one load (null: nothing on) to another; without it every way is as easy. */
  readonly handled?: (from: Mass | null, to: Mass) => number;
}

export interface WarmUpStep {
  readonly load: Mass;
  readonly reps: number;
}

type Ramp = readonly (readonly [ofWork: number, reps: number])[];

/** Share of the first work load, and reps. Common practice. */
const RAMPS = {
  full: [
    [0.4, 8],
    [0.6, 5],
    [0.8, 2],
  ],
  single: [[0.9, 1]],
  warm: [[0.6, 4]],
  light: [[0.5, 8]],
  none: [],
} as const satisfies Record<string, Ramp>;

/** The single at 90 % is for ranges that begin here or lower. */
const HEAVY_LOW = 4;

/** A step nearer to the next than this share of it is left out. */
const NEAR = 0.1;

/** A step may be lighter by this share of the work load where that saves handling plates. Ours. */
const EASIER_BY = 0.05;

/** Loads tried in place of a step. */
const MOST_TRIED = 5;

/**
 * Warm-up sets, each loadable and under the work load (common practice). For the first straight
 * sets of its muscles today 40 % × 8, 60 % × 5, 80 % × 2, and 90 % × 1 where the range begins at 4
 * or lower; for muscles already warm 60 % × 4; for clusters and isolation 50 % × 8 if first. Loads
 * are rounded down, never under the lightest. A body weight lift with added load has one set of
 * three without it; timed holds have none.
 */
export function warmUpSets(need: WarmUpNeed): readonly WarmUpStep[] {
  const { loading, work, counts } = need;
  if (counts === 'seconds') return [];
  if (loading === 'bodyweight') return work > 0 ? [{ load: NO_MASS, reps: 3 }] : [];
  return easiest(spaced(stepsOf(need), work), need);
}

/**
 * Are the muscles of a lift warm: was at least half of those that it trains directly trained
 * directly before on that day? Ours.
 */
export function isWarm(trains: Shares, before: readonly { readonly trains: Shares }[]): boolean {
  const trained = new Set(before.flatMap((each) => directMuscles(each.trains)));
  const muscles = directMuscles(trains);
  return (
    muscles.length > 0 && muscles.filter((each) => trained.has(each)).length * 2 >= muscles.length
  );
}

/** Warm-up sets of the usual ramp, where the load is not known: those of a session can be fewer. */
export function usualWarmUps(need: Omit<WarmUpNeed, 'work' | 'loads' | 'handled'>): number {
  if (need.counts === 'seconds' || need.loading === 'bodyweight') return 0;
  return rampOf(need).length;
}

function rampOf({ style, kind, warmth, lo }: Omit<WarmUpNeed, 'work' | 'loads'>): Ramp {
  const isLight = style === 'cluster' || kind === 'isolation';
  if (warmth === 'muscles-warm') return isLight ? RAMPS.none : RAMPS.warm;
  if (isLight) return RAMPS.light;
  return lo <= HEAVY_LOW ? [...RAMPS.full, ...RAMPS.single] : RAMPS.full;
}

function stepsOf(need: WarmUpNeed): readonly WarmUpStep[] {
  const { loads, work } = need;
  return rampOf(need).map(([ofWork, reps]) => ({
    load: loads.atOrBelow(share(work, ofWork)) ?? loads.lightest,
    reps,
  }));
}

/** Without steps that repeat a load or come too near to the next one. */
function spaced(steps: readonly WarmUpStep[], work: Mass): readonly WarmUpStep[] {
  const distinct = steps.filter(
    ({ load }, at) => steps.findIndex((other) => other.load === load) === at,
  );
  const kept: WarmUpStep[] = [];
  for (const step of distinct.reverse()) {
    if (isApart(step.load, kept[0]?.load ?? work)) kept.unshift(step);
  }
  return kept;
}

const isApart = (load: Mass, next: Mass): boolean => load <= share(next, 1 - NEAR);

interface Path {
  readonly steps: readonly WarmUpStep[];
  readonly handled: number;
}

/** The same steps at loads a little lighter where that means handling fewer plates in all. */
function easiest(steps: readonly WarmUpStep[], need: WarmUpNeed): readonly WarmUpStep[] {
  const { handled, work } = need;
  if (!handled || steps.length === 0) return steps;
  const start: Path = { steps: [], handled: 0 };
  const onto = (paths: readonly Path[], step: WarmUpStep): Path | null => {
    let best: Path | null = null;
    for (const path of paths) {
      const last = path.steps.at(-1)?.load ?? null;
      if (last !== null && !isApart(last, step.load)) continue;
      const all = path.handled + handled(last, step.load);
      if (!best || all < best.handled) best = { steps: [...path.steps, step], handled: all };
    }
    return best;
  };
  let paths: readonly Path[] = [start];
  for (const step of steps) {
    paths = triedFor(step, need).flatMap((tried) => onto(paths, tried) ?? []);
  }
  return onto(paths, { load: work, reps: 0 })?.steps.slice(0, -1) ?? steps;
}

/** The step itself, then lighter ones. */
function triedFor({ load, reps }: WarmUpStep, { loads, work }: WarmUpNeed): WarmUpStep[] {
  const least = load - share(work, EASIER_BY);
  const tried: WarmUpStep[] = [];
  let next: Mass | null = load;
  while (next !== null && next >= least && tried.length < MOST_TRIED) {
    tried.push({ load: next, reps });
    next = nextBelow(loads, next);
  }
  return tried;
}
