import { cutRules } from '../cut/cut-rules.ts';
import { checkProgram, type Finding } from '../program/check/check-program.ts';
import { CHECK_RULES } from '../program/check/check-rules.ts';
import { DRAFT_RULES } from '../program/draft/draft-rules.ts';
import type { Program } from '../program/program.ts';
import { progressionRules } from '../progression/rules/progression-rules.ts';
import type { Gear } from '../training/gear.ts';
import type { Basis } from '../training/lift.ts';
import { loadWords } from '../training/load-words.ts';
import type { Mass, Unit } from '../training/mass.ts';
import type { Reason, Rule } from '../training/rule.ts';

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

/** A reason in words: its sentence, where it comes from, and the numbers it used. */
export function reasonWords({ rule: key, facts }: Reason, unit: Unit): ReasonShown {
  const rule = ruleOf(key);
  if (!rule) {
    return {
      text: `This was decided by a rule that this version does not know (${key}).`,
      source: 'a newer version of holdfast',
      facts: [],
    };
  }
  const basis = (facts.basis ?? 'total') as Basis;
  return {
    text: rule.sentence(facts, unit),
    source: rule.source.replace(/\bours\b/g, 'our own choice'),
    facts: Object.entries(facts).flatMap(([fact, value]) => {
      const name = FACT_WORDS[fact];
      return name && value !== null ? [{ name, value: valueWords(fact, value, basis, unit) }] : [];
    }),
  };
}

/** What a fact is called for the lifter; one without a name here only serves the sentence. */
const FACT_WORDS: Readonly<Record<string, string>> = {
  load: 'load now',
  from: 'load before',
  goal: 'load before the break',
  low: 'low end of the range',
  high: 'high end of the range',
  done: 'reps last time',
  expected: 'reps expected at the new load',
  target: 'reps that make the step',
  days: 'days away',
  lower: 'next load below',
};

/** Facts in micrograms. */
const LOADS: ReadonlySet<string> = new Set(['load', 'from', 'goal', 'lower']);

function valueWords(
  fact: string,
  value: Reason['facts'][string],
  basis: Basis,
  unit: Unit,
): string {
  if (Array.isArray(value)) {
    return value.map((each) => valueWords(fact, each, basis, unit)).join(', ');
  }
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value !== 'number') return String(value);
  if (LOADS.has(fact)) return loadWords(value as Mass, basis, unit);
  return String(Math.round(value * 1000) / 1000);
}

/** A finding of the check, ready to read. */
export interface FindingWords extends Finding {
  readonly text: string;
  /** Citation, or `common practice`, or `ours`. */
  readonly source: string;
}

/** What the check says of a program, in the order of the file. */
export function findingsOf(program: Program, gear: Gear): readonly FindingWords[] {
  return checkProgram(program, gear).map((finding) => {
    const { text, source } = reasonWords(finding, program.unit);
    return { ...finding, text, source };
  });
}

/** A sentence for the lifter, and how well founded it is. */
export interface ReasonShown {
  readonly text: string;
  /** Citation, or `common practice`, or `ours`. */
  readonly source: string;
  /** Numbers that the rule used, ready to read: `last time` → `6, 5, 5 reps`. */
  readonly facts: readonly { readonly name: string; readonly value: string }[];
}
