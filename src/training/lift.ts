import type { Station } from './gear.ts';

export const LOADINGS = ['barbell', 'dumbbell', 'stack', 'bodyweight', 'band', 'free'] as const;
export type Loading = (typeof LOADINGS)[number];

export const PATTERNS = [
  'squat',
  'hinge',
  'lunge',
  'horizontal-push',
  'vertical-push',
  'horizontal-pull',
  'vertical-pull',
  'knee-flexion',
  'knee-extension',
  'elbow-flexion',
  'elbow-extension',
  'shoulder-raise',
  'trunk',
  'calf-raise',
  'carry',
] as const;
export type Pattern = (typeof PATTERNS)[number];

/** Joints that a lifter may want to spare. */
export const JOINTS = ['shoulder', 'elbow', 'wrist', 'back', 'hip', 'knee'] as const;
export type Joint = (typeof JOINTS)[number];

/** A movement, from the catalogue or from the program's own list. */
export interface Lift {
  /** kebab-case, what programs call it: `back-squat`. */
  readonly key: string;
  readonly name: string;
  readonly loading: Loading;
  readonly kind: 'compound' | 'isolation';
  readonly pattern: Pattern;
  readonly trains: Shares;
  /** Done one side at a time: reps are per side, the weaker side first. */
  readonly perSide: boolean;
  readonly counts: 'reps' | 'seconds';
  /** Dumbbells held at once; the load is that of one. Only read for `dumbbell` loading. */
  readonly hands: 1 | 2;
  /** Share of body weight that is lifted; only for `bodyweight` loading. */
  readonly bodyShare: number | null;
  /** Joints that it loads hard, so that many leave it out while one of them hurts. Common practice. */
  readonly joints: readonly Joint[];
  /** What it is done on or under, beside what is lifted. */
  readonly needs: readonly Station[];
  /** One sentence on how to do it. */
  readonly form: string | null;
  /** One sentence where the lift can hurt. */
  readonly caution: string | null;
}

/** What a lift's load means to the lifter who reads it. */
export type Basis = 'total' | 'hand' | 'stack' | 'added' | 'load';

const BASIS: Readonly<Record<Loading, Basis>> = {
  barbell: 'total',
  dumbbell: 'hand',
  stack: 'stack',
  bodyweight: 'added',
  band: 'load',
  free: 'load',
};

/** What the load of a lift means; one dumbbell that both hands (or the feet) hold is no load a hand. */
export const basisOf = ({
  loading,
  hands,
  perSide,
}: Pick<Lift, 'loading' | 'hands' | 'perSide'>): Basis =>
  loading === 'dumbbell' && hands === 1 && !perSide ? 'load' : BASIS[loading];

/** Muscles whose weekly work is counted, by their anatomical or trade names. */
export const MUSCLES = [
  'chest',
  'front-delts',
  'side-delts',
  'rear-delts',
  'triceps',
  'biceps',
  'forearms',
  'lats',
  'upper-back',
  'lower-back',
  'abs',
  'glutes',
  'quads',
  'hamstrings',
  'adductors',
  'calves',
] as const;

export type Muscle = (typeof MUSCLES)[number];

/** How much one set of a lift counts for a muscle: 1 direct, 0.5 indirect (Pelland 2024). */
export type Shares = Readonly<Partial<Record<Muscle, 1 | 0.5>>>;

/** The muscles that a lift trains directly. */
export function directMuscles(shares: Shares): Muscle[] {
  return MUSCLES.filter((muscle) => shares[muscle] === 1);
}

/** Can the lifter be caught under the bar in this lift, with nothing to hold it? */
export const isUnderTheBar = ({ loading, pattern }: Pick<Lift, 'loading' | 'pattern'>): boolean =>
  loading === 'barbell' && (pattern === 'squat' || pattern === 'horizontal-push');
