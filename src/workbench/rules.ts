import { cutRules } from '../cut/cut-rules.ts';
import { CHECK_RULES } from '../program/check/check-rules.ts';
import { DRAFT_RULES } from '../program/draft/draft-rules.ts';
import { progressionRules } from '../progression/rules/progression-rules.ts';
import type { Rule } from '../training/rule.ts';

/** The rules of every room, by key. A test asserts that no two rooms use the same key. */
export const RULES: readonly Rule[] = [
  ...progressionRules,
  ...cutRules,
  ...CHECK_RULES,
  ...DRAFT_RULES,
];

const byKey = new Map(RULES.map((rule) => [rule.key, rule]));

/** The rule of that key; undefined for one that a newer version wrote. */
export const ruleOf = (key: string): Rule | undefined => byKey.get(key);
