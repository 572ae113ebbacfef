import { describe, expect, test } from 'vitest';
import { fileProblemText } from '../../src/program/file-problem.ts';
import type { Exercise, Program } from '../../src/program/program.ts';
import { readProgram } from '../../src/program/read-program.ts';
import { trackOf } from '../../src/progression/track.ts';
import { kilograms, pounds } from '../../src/training/mass.ts';
import { PLAIN, withChange } from './program-text.ts';

function read(text: string): Program {
  const found = readProgram(text, 'plan.yaml');
  if (!found.ok) throw new Error(found.problems.map(fileProblemText).join('\n'));
  return found.program;
}

/** The first exercise of day A after a change to it. */
function squat(old: string, by: string): Exercise {
  const exercise = read(withChange(old, by)).days[0]?.exercises[0];
  if (!exercise) throw new Error('Day A is empty.');
  return exercise;
}

describe('a program is read as it was written', () => {
  const program = read(PLAIN);
  const [a, b] = program.days;

  test('its head', () => {
    expect(program).toMatchObject({
      name: 'Lean spring',
      file: 'plan.yaml',
      unit: 'kg',
      aim: 'cut',
      daysPerWeek: 3,
    });
    expect(program.days.map(({ name }) => name)).toEqual(['A', 'B']);
  });

  test('straight sets, with their place in the file', () => {
    expect(a?.exercises[0]).toMatchObject({
      style: 'straight',
      sets: 3,
      range: [5, 8],
      rest: { from: 180, to: 300 },
      reserve: [1, 2],
      start: kilograms(80),
      place: { line: 8, column: 9 },
    });
    expect(a?.exercises[0]?.lift.name).toBe('Back squat');
  });

  test('a cluster', () => {
    expect(a?.exercises[1]).toMatchObject({
      style: 'cluster',
      range: [12, 15],
      rest: { from: 10, to: 15 },
      mostSets: 5,
    });
  });

  test('a hold in seconds', () => {
    expect(b?.exercises[1]).toMatchObject({ range: [30, 60], lift: { counts: 'seconds' } });
  });

  test('a lift of its own, in place of the one in the catalogue', () => {
    expect(b?.exercises[0]?.lift).toMatchObject({
      loading: 'barbell',
      pattern: 'vertical-push',
      perSide: false,
      form: null,
      trains: { 'front-delts': 1, chest: 0.5, triceps: 0.5 },
    });
    expect(program.lifts.size).toBeGreaterThan(120);
  });
});

test('a lift of its own that only helps muscles moves as the first of them most often does', () => {
  const made = read(
    'name: Own\nunit: kg\nlifts:\n  carry: { name: Carry, loading: dumbbell, kind: compound, trains: { forearms: 0.5, quads: 0.5 } }\n' +
      'days:\n  - name: A\n    exercises:\n      - { lift: carry, sets: 3, reps: 6, start: 20 }\n',
  );
  const lift = made.days[0]?.exercises[0]?.lift;
  expect([lift?.pattern, lift?.trains]).toEqual(['carry', { forearms: 0.5, quads: 0.5 }]);
});

describe('what a program leaves out has a default', () => {
  const bare = read(
    'name: Bare\nunit: lb\ndays:\n  - name: A\n    exercises:\n' +
      '      - { lift: bench-press, sets: 3, reps: 6, start: 135 }\n' +
      '      - { lift: barbell-curl, sets: 3, reps: 8-12 }\n' +
      '      - { lift: crunch, cluster: { lead: 12-15 } }\n',
  );
  const [bench, curl, crunch] = bare.days[0]?.exercises ?? [];

  test('of the program', () => {
    expect(bare).toMatchObject({
      aim: 'cut',
      daysPerWeek: 3,
      rate: [0.5, 1],
      goal: { mass: null, date: null },
      cutFrom: null,
      monthlyCycle: false,
      restBetween: { from: 120, to: 180 },
    });
  });

  test('a compound rests 3–5 min and stops at 1–2 in reserve', () => {
    expect(bench).toMatchObject({
      range: [6, 6],
      rest: { from: 180, to: 300 },
      reserve: [1, 2],
      start: pounds(135),
      warmUp: true,
      bar: null,
    });
  });

  test('isolation rests 1.5–2 min and stops at 0–1', () => {
    expect(curl).toMatchObject({ rest: { from: 90, to: 120 }, reserve: [0, 1] });
  });

  test('a cluster rests 10–15 s, has 5 sets and stops at 0–1', () => {
    expect(crunch).toMatchObject({
      rest: { from: 10, to: 15 },
      mostSets: 5,
      reserve: [0, 1],
      start: null,
    });
  });
});

test.each([
  ['3-5 min', { from: 180, to: 300 }],
  ['3–5 min', { from: 180, to: 300 }],
  ['2 min', { from: 120, to: 120 }],
  ['90 s', { from: 90, to: 90 }],
  ['90s', { from: 90, to: 90 }],
  ['1.5-2 min', { from: 90, to: 120 }],
  ['90 s - 2 min', { from: 90, to: 120 }],
])('a rest of %s', (written, rest) => {
  expect(squat('rest: 3-5 min', `rest: ${written}`).rest).toEqual(rest);
});

test.each([
  ['5', [5, 5]],
  ['5-8', [5, 8]],
  ['5 - 8', [5, 8]],
  ['5–8', [5, 8]],
])('a range of %s', (written, range) => {
  expect(squat('reps: 5-8', `reps: ${written}`).range).toEqual(range);
});

test.each([
  ['80', kilograms(80)],
  ['82.5', kilograms(82.5)],
  ['45 lb', pounds(45)],
  ['"82,5 kg"', kilograms(82.5)],
])('a start of %s', (written, mass) => {
  expect(squat('start: 80', `start: ${written}`).start).toBe(mass);
});

test('a body weight lift may start with assistance, and on one side only', () => {
  const exercise = squat(
    'lift: back-squat\n        sets: 3\n        reps: 5-8\n        rest: 3-5 min\n        reserve: 1-2\n        start: 80',
    'lift: pull-up\n        sets: 3\n        reps: 5-8\n        start: -20\n        sides: each',
  );
  expect(exercise.start).toBe(-kilograms(20));
  expect(exercise.lift.perSide).toBe(true);
});

test('the rest of the keys', () => {
  const text = withChange(
    'aim: cut\n',
    'aim: build\nformat: 1\nrest: 60-90 s\nrate: 0.3-0.6\ncut_from: 2026-11-25\ngoal_weight: 165 lb\ngoal_date: 2027-03-01\nmonthly_cycle: true\naccept: { few-sets: I am busy }\n',
    withChange(
      'start: 80',
      'start: 80\n        bar: short bar\n        step: 5\n        track: heavy\n        warm_up: false\n        note: Belt on\n        accept: { long-rest: it suits me }',
    ),
  );
  const program = read(text);
  expect(program).toMatchObject({
    aim: 'build',
    restBetween: { from: 60, to: 90 },
    rate: [0.3, 0.6],
    goal: { mass: pounds(165), date: '2027-03-01' },
    cutFrom: '2026-11-25',
    monthlyCycle: true,
    accept: { 'few-sets': 'I am busy' },
  });
  expect(program.days[0]?.exercises[0]).toMatchObject({
    bar: 'short bar',
    step: kilograms(5),
    track: 'heavy',
    warmUp: false,
    note: 'Belt on',
    accept: { 'long-rest': 'it suits me' },
  });
});

test('of a lift in the catalogue only what changes is written', () => {
  const text = withChange('lifts:\n', 'lifts:\n  back-squat: { caution: Mind the low ceiling. }\n');
  const lift = read(text).lifts.get('back-squat');
  expect(lift).toMatchObject({ name: 'Back squat', caution: 'Mind the low ceiling.' });
});

test('exercises of a day with the same word at pair: alternate, three at most', () => {
  const lines = (count: number) =>
    [
      'name: Short of time',
      'unit: kg',
      'days:',
      '  - name: A',
      '    exercises:',
      ...['bench-press', 'dumbbell-row', 'crunch', 'leg-curl']
        .slice(0, count)
        .map((lift) => `      - { lift: ${lift}, sets: 3, reps: 8-10, pair: a }`),
    ].join('\n');
  expect(read(lines(3)).days[0]?.exercises.map(({ pair }) => pair)).toEqual(['a', 'a', 'a']);
  expect(readProgram(lines(4), 'p.yaml')).toMatchObject({
    ok: false,
    problems: [
      {
        line: 9,
        what: 'pair: more than 3 exercises of the day have "a"; two or three can alternate.',
      },
    ],
  });
});

test('a lift twice in a day has two tracks, on two days it has one', () => {
  const squat = '      - { lift: back-squat, sets: 1, reps: 3-5, start: 100 }';
  const text = [
    'name: Top and back-off',
    'unit: kg',
    'days:',
    '  - name: A',
    '    exercises:',
    squat,
    squat.replace('100', '80'),
    '  - name: B',
    '    exercises:',
    squat,
  ].join('\n');
  const tracks = read(text).days.map(({ exercises }) => exercises.map(trackOf));
  expect(tracks).toEqual([
    ['back-squat straight 3-5', 'back-squat straight 3-5 (2)'],
    ['back-squat straight 3-5'],
  ]);
});
