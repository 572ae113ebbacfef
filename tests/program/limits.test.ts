import { expect, test } from 'vitest';
import { readProgram } from '../../src/program/read-program.ts';
import { check, plan } from './check-report.ts';

/**
 * Where the rules of the check begin and end: a program whose one number goes up, and the rules that
 * speak at each. Kept as text, so that no limit moves unseen.
 */
const upTo = (least: number, most: number, by = 1): readonly number[] =>
  Array.from({ length: Math.floor((most - least) / by) + 1 }, (_, at) => least + at * by);
const days = (count: number, ...exercises: readonly string[]) =>
  Object.fromEntries(
    Array.from({ length: count }, (_, at) => [String.fromCharCode(65 + at), exercises]),
  );

const SQUATS = ['back-squat', 'front-squat', 'goblet-squat', 'leg-press'];
const MANY = [
  ...['back-squat', 'bench-press', 'barbell-row', 'romanian-deadlift', 'overhead-press'],
  ...['pull-up', 'leg-extension', 'leg-curl', 'barbell-curl', 'triceps-extension', 'crunch'],
];

const FAMILIES: Readonly<Record<string, readonly (readonly [string, string])[]>> = {
  'sets of squats': upTo(1, 12).map((sets) => [
    `${sets}`,
    plan({ A: [`lift: back-squat, sets: ${sets}, reps: 5-8`] }),
  ]),
  'sets of curls on two days': upTo(1, 12).map((sets) => [
    `${sets}`,
    plan(days(2, `lift: barbell-curl, sets: ${sets}, reps: 8-12`)),
  ]),
  'reps of squats': upTo(1, 30).map((reps) => [
    `${reps}`,
    plan({ A: [`lift: back-squat, sets: 3, reps: ${reps}-${reps + 2}`] }),
  ]),
  'reps of curls': upTo(1, 40).map((reps) => [
    `${reps}`,
    plan({ A: [`lift: barbell-curl, sets: 3, reps: ${reps}-${reps + 4}`] }),
  ]),
  'reps of push-ups': upTo(1, 40).map((reps) => [
    `${reps}`,
    plan({ A: [`lift: push-up, sets: 3, reps: ${reps}-${reps + 4}`] }),
  ]),
  'width of a range': upTo(0, 10).map((width) => [
    `${width}`,
    plan({ A: [`lift: bench-press, sets: 3, reps: 5-${5 + width}`] }),
  ]),
  'rest of squats, in s': upTo(30, 420, 15).map((rest) => [
    `${rest}`,
    plan({ A: [`lift: back-squat, sets: 3, reps: 5-8, rest: ${rest} s`] }),
  ]),
  'rest of curls, in s': upTo(15, 300, 15).map((rest) => [
    `${rest}`,
    plan({ A: [`lift: barbell-curl, sets: 3, reps: 8-12, rest: ${rest} s`] }),
  ]),
  'reps in reserve': upTo(0, 6).map((reserve) => [
    `${reserve}`,
    plan({ A: [`lift: bench-press, sets: 3, reps: 5-8, reserve: ${reserve}`] }),
  ]),
  'sets of a cluster': upTo(2, 10).map((most) => [
    `${most}`,
    plan({ A: [`lift: dumbbell-side-raise, cluster: { lead: 12-15, most_sets: ${most} }`] }),
  ]),
  'lead of a cluster': upTo(3, 30).map((lead) => [
    `${lead}`,
    plan({ A: [`lift: dumbbell-side-raise, cluster: { lead: ${lead}-${lead + 3} }`] }),
  ]),
  'rest in a cluster, in s': upTo(5, 45, 5).map((rest) => [
    `${rest}`,
    plan({ A: [`lift: dumbbell-side-raise, cluster: { lead: 12-15, rest: ${rest} s }`] }),
  ]),
  'days of one cluster': upTo(1, 6).map((count) => [
    `${count}`,
    plan(days(count, 'lift: dumbbell-side-raise, cluster: { lead: 12-15 }')),
  ]),
  'days of one lift': upTo(1, 6).map((count) => [
    `${count}`,
    plan(days(count, 'lift: bench-press, sets: 3, reps: 5-8')),
  ]),
  'lifts of one movement on a day': upTo(1, 4).map((count) => [
    `${count}`,
    plan({ A: SQUATS.slice(0, count).map((lift) => `lift: ${lift}, sets: 2, reps: 6-10`) }),
  ]),
  'lifts on a day': upTo(1, MANY.length).map((count) => [
    `${count}`,
    plan({ A: MANY.slice(0, count).map((lift) => `lift: ${lift}, sets: 4, reps: 6-10`) }),
  ]),
  'seconds of a hold': upTo(5, 185, 15).map((seconds) => [
    `${seconds}`,
    plan({ A: [`lift: plank, sets: 2, seconds: ${seconds}-${seconds + 30}`] }),
  ]),
};

function toldOf(text: string): string {
  const read = readProgram(text, 'plan.yaml');
  if (!read.ok) return `cannot be read: ${read.problems.map(({ what }) => what).join(' ')}`;
  const found = check(text).map(({ rule, severity }) => (severity === 'error' ? `${rule}!` : rule));
  return [...new Set(found)].toSorted().join(' ');
}

test.each(Object.entries(FAMILIES))('%s', async (name, plans) => {
  const lines = plans.map(([value, text]) => `${value}: ${toldOf(text)}`);
  await expect(`${lines.join('\n')}\n`).toMatchFileSnapshot(
    `limits/${name.replaceAll(/[ ,]+/g, '-')}.txt`,
  );
});
