import type { Facts, Reason, Rule } from '../../training/rule.ts';
import { DAY_RULES } from './days.ts';
import { DOING_LESS_RULES } from './doing-less.ts';
import { HOLDING_RULES } from './holding.ts';
import { MOVING_RULES } from './moving.ts';

const RULES = [...MOVING_RULES, ...HOLDING_RULES, ...DOING_LESS_RULES, ...DAY_RULES] as const;

/** Names a rule of progression. */
export type ProgressionRule = (typeof RULES)[number]['key'];

/** Every rule of progression: its key, the sentence for the lifter, its source and how well founded it is. */
export const progressionRules: readonly Rule<ProgressionRule>[] = RULES;

/** Says that a rule of this room was used, and what it saw. */
export const because = (rule: ProgressionRule, facts: Facts = {}): Reason<ProgressionRule> => ({
  rule,
  facts,
});
