import type { Lift, Pattern } from '../../training/lift.ts';

/**
 * What compounds should cover, the first three by the check (Iversen 2021), the others beside
 * them where there is time: ours.
 */
export const MOVEMENT_GROUPS = [
  { key: 'push', patterns: ['horizontal-push', 'vertical-push'], weight: 250 },
  { key: 'pull', patterns: ['horizontal-pull', 'vertical-pull'], weight: 250 },
  { key: 'legs', patterns: ['squat', 'hinge', 'lunge'], weight: 250 },
  { key: 'squat', patterns: ['squat', 'lunge'], weight: 35 },
  { key: 'hinge', patterns: ['hinge'], weight: 12 },
  { key: 'row', patterns: ['horizontal-pull'], weight: 10 },
  { key: 'pull-up', patterns: ['vertical-pull'], weight: 8 },
  { key: 'bench', patterns: ['horizontal-push'], weight: 10 },
  { key: 'overhead', patterns: ['vertical-push'], weight: 6 },
] as const satisfies readonly {
  readonly key: string;
  readonly patterns: readonly Pattern[];
  readonly weight: number;
}[];

/** The groups that a lift covers, bit i for the i-th. */
export const groupsOf = ({ kind, pattern }: Lift): number =>
  kind === 'compound'
    ? MOVEMENT_GROUPS.reduce(
        (bits, { patterns }, at) =>
          (patterns as readonly Pattern[]).includes(pattern) ? bits | (1 << at) : bits,
        0,
      )
    : 0;
