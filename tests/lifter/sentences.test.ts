import { expect, test } from 'vitest';
import { RULES, reasonWords } from '../../src/lifter/rules.ts';
import type { Facts } from '../../src/training/rule.ts';

const KG = 1_000_000_000;

/** Facts that are words; every other one is a number. */
const WORDS: Readonly<Record<string, string>> = {
  ...{ lift: 'Bench press', name: 'Bench press', other: 'Back squat', by: 'Dumbbell row' },
  ...{ lifts: 'Bench press and Pull-up', names: 'Bench press and Pull-up', pair: 'a' },
  ...{ muscle: 'side-delts', muscles: 'quads and lats', joint: 'knee', joints: 'knee and hip' },
  ...{
    program: 'Three days',
    day: 'A',
    next: 'B',
    waiting: 'C',
    missing: 'a bench',
    bar: 'short bar',
  },
  ...{ style: 'straight', counts: 'reps', basis: 'total', cause: 'time', kit: 'travel', key: 'x' },
  ...{ matched: 'all', clash: 'both use the bar', instead: 'Leg press', pattern: 'squat' },
};
const DAYS = ['date', 'early', 'judgedFrom', 'rateFrom', 'since', 'until'];
const MASSES = [
  'load',
  'from',
  'goal',
  'next',
  'wish',
  'gained',
  'lost',
  'mass',
  'now',
  'lower',
  'start',
];

/** Facts as they would be where there is `count` of everything countable. */
function factsOf(count: number, loads: boolean, changes: Facts = {}): Facts {
  return new Proxy(changes, {
    get: (said, name) => {
      if (typeof name !== 'string' || name in said) return Reflect.get(said, name);
      if (DAYS.includes(name)) return '2026-11-25';
      if (loads && MASSES.includes(name)) return (100 + 2.5 * count + MASSES.indexOf(name)) * KG;
      if (name === 'sets' || name === 'aims') return count;
      return WORDS[name] ?? count;
    },
  });
}

/** What a sentence turns on, one after the other. */
const VARIANTS: readonly (readonly [string, Facts])[] = [
  ['of one', factsOf(1, true)],
  ['of three', factsOf(3, true)],
  ['of half, in numbers', factsOf(0.5, false)],
  ['of a hold', factsOf(40, true, { counts: 'seconds', basis: 'hand' })],
  ['of a cluster', factsOf(4, true, { style: 'cluster', basis: 'added', sets: [12, 4, 3] })],
  ['of nothing told', {}],
];

test.each([
  ['kg', VARIANTS],
  ['lb', VARIANTS.slice(1, 2)],
] as const)('every rule has its sentence, in %s', async (unit, variants) => {
  const texts = RULES.map((rule) => {
    const told = variants.map(([name, facts]) => {
      try {
        return `  ${name}: ${rule.sentence(facts, unit)}`;
      } catch (error) {
        // A rule that needs a day of the calendar is never given none.
        return `  ${name}: ${(error as Error).name}`;
      }
    });
    return [`${rule.key} (${rule.standing}; ${rule.source})`, ...new Set(told)].join('\n');
  });
  await expect(`${texts.join('\n\n')}\n`).toMatchFileSnapshot(`sentences/${unit}.txt`);
});

test('numbers that a rule used are told by their names, loads in the words of the lift', () => {
  const facts = { load: 100 * KG, from: 97.5 * KG, basis: 'hand', done: [8, 7, 6], days: 1.23456 };
  // A rule of a newer version has no sentence, and no numbers are told of it.
  const newer = reasonWords({ rule: 'of-tomorrow', facts }, 'kg');
  expect(newer.facts).toEqual([]);
  expect(newer.text).toContain('(of-tomorrow)');
  const own = reasonWords({ rule: RULES[0]!.key, facts: { ...facts, goal: null, low: 5 } }, 'kg');
  expect(own.facts).toEqual([
    { name: 'load now', value: '100 kg a hand' },
    { name: 'load before', value: '97.5 kg a hand' },
    { name: 'reps last time', value: '8, 7, 6' },
    { name: 'days away', value: '1.235' },
    { name: 'low end of the range', value: '5' },
  ]);
});
