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
    source: rule.source,
    facts: Object.entries(facts)
      .filter(([name, value]) => name !== 'basis' && name !== 'counts' && value !== null)
      .map(([name, value]) => ({ name: words(name), value: valueWords(value, basis, unit) })),
  };
}

const words = (name: string): string =>
  name.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);

function valueWords(value: Reason['facts'][string], basis: Basis, unit: Unit): string {
  if (Array.isArray(value)) return value.map((each) => valueWords(each, basis, unit)).join(', ');
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value !== 'number') return String(value);
  if (Math.abs(value) >= SMALLEST_MASS) return loadWords(value as Mass, basis, unit);
  return String(Math.round(value * 1000) / 1000);
}
