import { dayWords } from '../../text/day-words.ts';
import type { Basis } from '../../training/lift.ts';
import { loadWords } from '../../training/load-words.ts';
import { type Mass, massText, type Unit } from '../../training/mass.ts';
import type { Facts, Rule, Standing } from '../../training/rule.ts';
import { LIMITS } from '../limits.ts';

/** The facts of one reason, read as the sentences need them. */
export interface Told {
  readonly number: (name: string) => number;
  readonly text: (name: string) => string;
  /** A day of the calendar: `Wed 25 Nov 2026`. */
  readonly day: (name: string) => string;
  /** A load in the words of the lift's loading. */
  readonly load: (name: string) => string;
  readonly mass: (name: string, digits?: number) => string;
  readonly percent: (name: string) => string;
  readonly numbers: (name: string) => readonly number[];
  /** `8 reps`, `1 rep`, `45 s`. */
  readonly count: (name: string) => string;
  readonly has: (name: string) => boolean;
}

function tell(facts: Facts, unit: Unit): Told {
  const number = (name: string): number => Number(facts[name] ?? 0);
  const basis = (facts.basis ?? 'total') as Basis;
  return {
    number,
    text: (name) => String(facts[name] ?? ''),
    day: (name) => dayWords(String(facts[name])),
    load: (name) => loadWords(number(name) as Mass, basis, unit),
    mass: (name, digits = 1) => massText(number(name) as Mass, unit, digits),
    percent: (name) => `${Math.round(Math.abs(number(name)) * 100)} %`,
    numbers: (name) => {
      const found = facts[name];
      return Array.isArray(found) ? (found as readonly number[]) : [];
    },
    count: (name) =>
      facts.counts === 'seconds'
        ? `${number(name)} s`
        : `${number(name)} ${number(name) === 1 ? 'rep' : 'reps'}`,
    has: (name) => facts[name] !== undefined && facts[name] !== null && facts[name] !== false,
  };
}

/** One rule as data. `say` makes its sentence from the facts that it saw. */
export function rule<const Key extends string>(
  key: Key,
  standing: Standing,
  source: string,
  say: (told: Told) => string,
): Rule<Key> {
  return { key, standing, source, sentence: (facts, unit) => capital(say(tell(facts, unit))) };
}

/** A sentence may begin with a load in words: `body weight …`. */
const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

const ODDS = [
  { from: 0.99, words: 'almost surely' },
  { from: 0.95, words: 'very likely (19 in 20)' },
  { from: 0, words: 'likely (9 in 10)' },
] as const;

/** `likely (9 in 10) more than 2 % of strength were lost in eight weeks, about 4 %`. */
export function lossWords({ number, percent }: Told): string {
  const words = ODDS.find(({ from }) => number('odds') >= from)?.words ?? '';
  return `${words} more than ${Math.round(LIMITS.slip * 100)} % of strength were lost in eight weeks, about ${percent('by')}`;
}
