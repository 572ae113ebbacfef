import type { LifterModel } from './lifter-model.ts';

/** A kind of lifter: what it changes of the model, and how far its growth is known. */
export interface LifterKind {
  readonly does: string;
  readonly changes: Partial<LifterModel>;
  /** Standard deviation of growth between lifters of the kind. Ours. */
  readonly growthSpread: number;
}

/**
 * Growth by kind: ours, within what ACSM 2009 gives for months (about 40 % in the untrained, 16 % in
 * the trained). A lean lifter has less to lose from: ours, after ISSN 2017 (the leaner, the slower).
 */
export const LIFTER_KINDS = {
  novice: { does: 'in the first year', changes: { growth: 0.01 }, growthSpread: 0.003 },
  trained: { does: 'trained for years', changes: {}, growthSpread: 0.0008 },
  lean: {
    does: 'trained and lean',
    changes: { spared: 0.3, deficitCost: 0.004 },
    growthSpread: 0.0008,
  },
} as const satisfies Record<string, LifterKind>;

export type LifterKindName = keyof typeof LIFTER_KINDS;
