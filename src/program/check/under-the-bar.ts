import type { Lift } from '../../training/lift.ts';

/** Can the lifter be caught under the bar in this lift, with nothing to hold it? */
export const isUnderTheBar = ({ loading, pattern }: Pick<Lift, 'loading' | 'pattern'>): boolean =>
  loading === 'barbell' && (pattern === 'squat' || pattern === 'horizontal-push');
