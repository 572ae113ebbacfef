import type { CheckRule } from './check-rule.ts';
import { EXERCISE_RULES } from './rules/exercises.ts';
import { GEAR_RULES } from './rules/gear.ts';
import { PAIR_RULES } from './rules/pairs.ts';
import { VOLUME_RULES } from './rules/volume.ts';
import { WHOLE_PROGRAM_RULES } from './rules/whole-program.ts';

const RULES = [
  ...WHOLE_PROGRAM_RULES,
  ...VOLUME_RULES,
  ...EXERCISE_RULES,
  ...PAIR_RULES,
  ...GEAR_RULES,
] as const;

/** Names a rule of the check. */
export type CheckRuleKey = (typeof RULES)[number]['key'];

/** Every rule that a program is checked by. */
export const CHECK_RULES: readonly CheckRule<CheckRuleKey>[] = RULES;
