import { expect, test } from 'vitest';
import { CATALOGUE } from '../../src/program/catalogue.ts';
import type { Exercise } from '../../src/program/program.ts';
import { firstStrength, firstStrengths } from '../../src/rehearsal/first-strength.ts';
import { kilograms } from '../../src/training/mass.ts';
import { forCuts, shippedPrograms } from '../figures/programs.ts';

/** Where neither the program nor the past tells, a lifter of 80 kg has trained for a few years. Ours. */
const MAXIMA = {
  'back-squat': 1.5,
  deadlift: 1.7,
  'bench-press': 1.1,
  'overhead-press': 0.7,
  'barbell-row': 1,
  'barbell-curl': 0.45,
  // One dumbbell of two is a little under half of the bar.
  'dumbbell-bench-press': 1.1 * 0.42,
  'dumbbell-curl': 0.45 * 0.42,
  'dumbbell-side-raise': 0.2 * 0.42,
  'lat-pulldown': 1.25 * 0.9,
  'leg-extension': 0.8 * 0.9,
  'leg-curl': 0.5 * 0.9,
  'barbell-split-squat': 0.9 / 2,
  'triceps-extension': 0.5,
  'cable-crunch': 0.7 * 0.9,
  'machine-calf-raise': 1.3 * 0.9,
  // What is neither is told least by a bar.
  'belt-squat': 1.5 * 0.6,
  'band-row': 0.6,
} as const;

const [program] = forCuts(shippedPrograms());
const any = program!.days[0]!.exercises[0]!;
const exercise = (key: string, changes: Partial<Exercise> = {}) =>
  ({
    ...any,
    lift: CATALOGUE.get(key)!,
    range: [5, 8],
    reserve: [1, 2],
    start: null,
    ...changes,
  }) as Exercise;
const BODY = kilograms(80);
const inKg = (mass: number): number => mass / kilograms(1);

test.each(Object.entries(MAXIMA))('%s: %d of body weight', (key, share) => {
  expect(firstStrength(exercise(key), BODY) / BODY).toBeCloseTo(share, 9);
});

test('a bar that one leg or arm moves alone holds half of it', () => {
  const lunge = { ...CATALOGUE.get('back-squat')!, perSide: true };
  expect(firstStrength(exercise('back-squat', { lift: lunge }), BODY) / BODY).toBeCloseTo(0.75, 9);
  const dumbbells = { ...CATALOGUE.get('dumbbell-curl')!, perSide: true };
  const both = firstStrength(exercise('dumbbell-curl'), BODY);
  expect(firstStrength(exercise('dumbbell-curl', { lift: dumbbells }), BODY)).toBe(both);
});

test('a load carried for counts is body weight; help as heavy as the body tells no strength', () => {
  const carry = { ...CATALOGUE.get('barbell-row')!, pattern: 'carry' } as const;
  expect(firstStrength(exercise('barbell-row', { lift: carry }), BODY)).toBe(BODY);
  const help = (mass: number) => exercise('pull-up', { start: kilograms(-mass) });
  expect(firstStrength(help(79), BODY)).toBeLessThan(kilograms(2));
  expect([80, 81].map((mass) => firstStrength(help(mass), BODY) / BODY)).toEqual([1.25, 1.25]);
});

test('a start of the program is right for the middle of its range and reserve', () => {
  // 100 kg for 6.5 reps and 1.5 in reserve is 100 × 36 / (37 − 8) once (Brzycki 1993).
  const strength = firstStrength(exercise('back-squat', { start: kilograms(100) }), BODY);
  expect(inKg(strength)).toBeCloseTo((100 * 36) / 29, 6);
});

test('a lift of the body is done with its share of the body, and with what is added', () => {
  const { bodyShare } = CATALOGUE.get('pull-up')!;
  const alone = firstStrength(exercise('pull-up'), BODY);
  expect(inKg(alone)).toBeCloseTo((80 * (bodyShare ?? 0) * 36) / 29, 6);
  const added = firstStrength(exercise('pull-up', { start: kilograms(10) }), BODY);
  expect(inKg(added) - inKg(alone)).toBeCloseTo((10 * 36) / 29, 6);
});

test('a hold lasts a tenth longer than its range asks', () => {
  const plank = [...CATALOGUE.values()].find(({ counts }) => counts === 'seconds')!;
  expect(firstStrength(exercise(plank.key, { range: [20, 40] }), BODY)).toBeCloseTo(44, 9);
});

test('what is known of a lift counts before what the program says, and every lift has some', () => {
  const known = new Map([['back-squat', 123]]);
  const strengths = firstStrengths(program!, BODY, known);
  const lifts = program!.days.flatMap(({ exercises }) => exercises.map(({ lift }) => lift.key));
  expect(strengths.get('back-squat')).toBe(123);
  expect([...strengths.keys()].toSorted()).toEqual([...new Set(lifts)].toSorted());
  for (const strength of strengths.values()) expect(strength).toBeGreaterThan(0);
});
