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
