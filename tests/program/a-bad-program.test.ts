import { describe, expect, test } from 'vitest';
import { fileProblemText } from '../../src/program/file-problem.ts';
import { readProgram } from '../../src/program/read-program.ts';
import { PLAIN, withChange } from './program-text.ts';

function problemsOf(text: string): string[] {
  const read = readProgram(text, 'plan.yaml');
  return read.ok ? [] : read.problems.map(fileProblemText);
}

const changed = (old: string, by: string) => problemsOf(withChange(old, by));

test('a fault is told with file, line and column, what was found and what to write', () => {
  expect(changed('reps: 5-8', 'reps: 0')).toEqual([
    'plan.yaml:10:15: reps: 0 is too low: 1 is the least. Write a whole number or a range from 1 to 50, such as 5-8.',
  ]);
});

test('all faults are told at once, in the order of the lines', () => {
  const text = withChange(
    'aim: cut',
    'aim: cutt',
    withChange(
      'reps: 5-8',
      'reps: 99',
      withChange(
        'lead: 12-15',
        'lead: 15-12',
        withChange('kind: compound', 'kind: big', withChange('lift: plank', 'lift: plonk')),
      ),
    ),
  );
  expect(problemsOf(text).map((problem) => problem.split(':')[1])).toEqual([
    '3',
    '10',
    '15',
    '22',
    '29',
  ]);
});

describe('numbers', () => {
  test.each([
    ['reps: 5-8', 'reps: 99', 'reps: 99 is too high: 50 is the most.'],
    ['reps: 5-8', 'reps: five', 'reps: "five" is not a number or a range of numbers.'],
    ['reps: 5-8', 'reps: 5.5', 'reps: 5.5 is not a number or a range of numbers.'],
    ['reps: 5-8', 'reps: -5', 'reps: -5 is not a number or a range of numbers.'],
    ['reps: 5-8', 'reps:', 'reps: nothing is not a number or a range of numbers.'],
    ['reps: 5-8', 'reps: 8-5', 'Write 5-8.'],
    ['reps: 5-8', 'reps: [5, 8]', 'reps: a list is not'],
    ['sets: 3', 'sets: 0', 'sets: 0 is too low: 1 is the least.'],
    ['sets: 3', 'sets: three', 'sets: "three" is not a whole number.'],
    ['sets: 3', 'sets: 11', 'sets: 11 is too high: 10 is the most.'],
    ['sets: 3', 'sets: 1e400', 'is not a whole number'],
    ['reserve: 1-2', 'reserve: 9', 'reserve: 9 is too high'],
    ['start: 80', 'start: heavy', 'start: "heavy" is not a load.'],
    ['start: 80', 'start: 80 stone', 'start: "80 stone" is not a load.'],
    ['start: 80', 'start: .nan', 'is not a load.'],
    ['start: 80', 'start: 0', 'start: 0 is no load for Back squat.'],
    ['start: 80', 'start: -20', 'start: -20 is no load for Back squat.'],
    ['start: 80', 'start: 5000', 'more than anyone lifts'],
    ['start: 8\n', 'start: 8\n        step: 0\n', 'step: 0 is no step.'],
    ['most_sets: 5', 'most_sets: 1', 'most_sets: 1 is too low'],
    ['days_per_week: 3', 'days_per_week: 8', 'days_per_week: 8 is too high'],
    ['seconds: 30-60', 'seconds: 1', 'seconds: 1 is too low'],
    ['chest: 0.5', 'chest: 0.7', 'chest: 0.7 does not count. Write 1 or 0.5.'],
    ['aim: cut', 'aim: cut\nrate: 1.0-0.5', 'must rise from low to high'],
    ['aim: cut', 'aim: cut\nrate: 0.7', 'is no range. Write two numbers'],
    ['aim: cut', 'aim: cut\ncut_from: 2026-02-30', 'is not a day of the calendar'],
    ['aim: cut', 'aim: cut\nformat: 2', 'format: 2 does not count. Write 1.'],
  ])('%s → %s', (old, by, said) => {
    expect(changed(old, by).join('\n')).toContain(said);
  });
});

describe('rests', () => {
  test.each([
    ['1:30', 'rest: "1:30" is a time of day, not a rest. Write 90 s.'],
    ['90', 'rest: 90 has no unit. Write 90 s or 90 min.'],
    ['3-5', 'rest: "3-5" has no unit. Write 3-5 s or 3-5 min.'],
    ['5-3 min', 'rest: "5-3 min" runs backwards.'],
    ['3 minutes', 'rest: "3 minutes" is not a rest.'],
    ['long', 'rest: "long" is not a rest.'],
    ['90 min', 'rest: "90 min" is over 15 minutes.'],
    ['0 s', 'there is no rest of 0 seconds'],
  ])('rest: %s', (written, said) => {
    expect(changed('rest: 3-5 min', `rest: ${written}`).join('\n')).toContain(said);
  });
});

describe('words', () => {
  test.each([
    ['aim: cut', 'aim: cutt', 'Did you mean cut?'],
    ['unit: kg', 'unit: stone', 'unit: "stone" is not one of the words for it. Write kg or lb.'],
    ['lift: plank', 'lift: plonk', 'Did you mean "plank"?'],
    ['lift: plank', 'lift: squat', 'Did you mean "'],
    ['lift: plank', 'lift: xyzzy', 'Describe it under "lifts"'],
    ['reps: 5-8', 'rep: 5-8', '"rep" is not a key that can stand here. Did you mean "reps"?'],
    ['aim: cut', 'amount: cut', 'Known here: format, name, unit'],
    ['lead: 12-15', 'lead: 12-15, reps: 3', '"reps" is not a key that can stand here.'],
    ['front-delts: 1', 'front-delt: 1', 'Did you mean "front-delts"?'],
    ['loading: barbell', 'loading: barbel', 'Did you mean barbell?'],
    ['start: 80', 'start: 80\n        warm_up: no', 'neither true nor false. Write false.'],
    ['start: 80', 'start: 80\n        accept: [few-sets]', 'a list stands where keys should'],
    ['name: Lean spring', 'name: 2026', 'name: 2026 is not text. Put it in quotes: "2026".'],
    ['name: Lean spring', 'name: ""', 'name: there is no text.'],
    ['name: Lean spring\n', '', 'name is missing.'],
    ['unit: kg\n', '', 'unit is missing.'],
    ['- name: B', '- name: a', 'name: there is another day "a".'],
    ['- name: B', '- name: "A "', 'name: there is another day "A ".'],
    ['  landmine-press:\n', '  Landmine Press:\n', 'cannot name a lift'],
    ['    kind: compound\n', '    knd: compound\n', 'Did you mean "kind"?'],
  ])('%s → %s', (old, by, said) => {
    expect(changed(old, by).join('\n')).toContain(said);
  });
});

describe('things that do not go together', () => {
  test.each([
    ['sets: 3\n        reps: 5-8', 'reps: 5-8', 'does not say how many sets'],
    ['reps: 5-8', 'note: hard', 'neither reps nor seconds nor cluster'],
    ['reps: 5-8', 'reps: 5-8\n        seconds: 30-60', 'not both'],
    ['start: 8\n', 'start: 8\n        sets: 3\n', 'sets: it does not go with a cluster'],
    ['start: 8\n', 'start: 8\n        rest: 3 min\n', 'Write the rest inside cluster.'],
    ['seconds: 30-60', 'reps: 5-8', 'reps: Plank is held for seconds.'],
    ['reps: 5-8', 'seconds: 30-60', 'seconds: Back squat is counted in reps.'],
    [
      'start: 8\n',
      'start: 8\n        bar: bar\n',
      'bar: Dumbbell side raise is not loaded on a bar.',
    ],
    ['    loading: barbell', '    loading: barbell\n    body_share: 1', 'has a body_share'],
    [
      'lifts:\n',
      'lifts:\n  log-press:\n    name: Log press\n',
      'is not in the catalogue and has no loading, kind, trains',
    ],
    ['trains: { front-delts: 1, chest: 0.5, triceps: 0.5 }', 'trains: {}', 'trains nothing'],
  ])('%s → %s', (old, by, said) => {
    expect(changed(old, by).join('\n')).toContain(said);
  });

  test('an exercise is not blamed for a lift of the program’s own that cannot be read', () => {
    expect(changed('kind: compound', 'kind: big')).toHaveLength(1);
  });
});

describe('shapes', () => {
  test.each([
    ['days:\n', 'days: A\ndaysy:\n', 'days: "A" is not a list.'],
    [PLAIN, 'name: Bare\nunit: kg\ndays: []\n', 'days: there is nothing in the list.'],
    [PLAIN, 'name: Bare\nunit: kg\n', 'days is missing.'],
    [PLAIN, '- a\n- b\n', 'The file holds a list and no program.'],
    [PLAIN, 'hello\n', 'The file holds "hello" and no program.'],
    [PLAIN, 'name: x\nunit: kg\ndays:\n  - A\n', '"A" stands where keys should.'],
    [PLAIN, 'name: x\nunit: kg\ndays:\n  - name: A\n    exercises: back-squat\n', 'is not a list'],
    [PLAIN, 'name: x\nunit: kg\ndays:\n  - name: A\n', 'exercises is missing.'],
    [
      PLAIN,
      'name: x\nunit: kg\ndays:\n  - name: A\n    exercises:\n      - lift:plank\n',
      'There is no space after the colon in "lift:plank"',
    ],
  ])('%#', (old, by, said) => {
    expect(changed(old, by).join('\n')).toContain(said);
  });

  test('a missing key is placed at what it is missing from', () => {
    expect(changed('lift: plank\n        sets', 'sets')[0]).toMatch(
      /^plan\.yaml:22:9: lift is miss/,
    );
  });
});
