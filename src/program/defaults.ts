import type { Lift } from '../training/lift.ts';
import type { Range, Rest } from './program.ts';

/** What counts where a program says nothing. Rests and reserves are common practice, or ours. */
export const DEFAULTS = {
  aim: 'cut',
  daysPerWeek: 3,
  /** Percent of body weight a week (Helms 2014, JISSN 11:20). */
  rate: [0.5, 1],
  restBetween: { from: 120, to: 180 },
  clusterRest: { from: 10, to: 15 },
  mostSets: 5,
  /** Share of body weight that a lift of the lifter's own moves. */
  bodyShare: 1,
} as const;

type Style = 'straight' | 'cluster';

/** Between straight sets: 3–5 min for heavy work (ACSM 2009), less for one joint (common practice). */
export const defaultRest = ({ kind }: Lift): Rest =>
  kind === 'compound' ? { from: 180, to: 300 } : { from: 90, to: 120 };

/** Reps in reserve to stop at. Ours. */
export const defaultReserve = ({ kind }: Lift, style: Style): Range =>
  style === 'straight' && kind === 'compound' ? [1, 2] : [0, 1];
