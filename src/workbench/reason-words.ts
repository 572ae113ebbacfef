import { loadWords } from '../progression/load-words.ts';
import type { Basis } from '../training/lift.ts';
import type { Mass, Unit } from '../training/mass.ts';
import type { Reason } from '../training/rule.ts';
import type { ReasonWords } from './bench.ts';
import { ruleOf } from './rules.ts';

/** A mass in micrograms is never this small, and no count of anything is this large. */
const SMALLEST_MASS = 1_000_000;

/** A reason in words: its sentence, where it comes from, and the numbers it used. */
export function reasonWords({ rule: key, facts }: Reason, unit: Unit): ReasonWords {
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
      return name && value !== null ? [{ name, value: valueWords(value, basis, unit) }] : [];
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

function valueWords(value: Reason['facts'][string], basis: Basis, unit: Unit): string {
  if (Array.isArray(value)) return value.map((each) => valueWords(each, basis, unit)).join(', ');
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value !== 'number') return String(value);
  if (Math.abs(value) >= SMALLEST_MASS) return loadWords(value as Mass, basis, unit);
  return String(Math.round(value * 1000) / 1000);
}
