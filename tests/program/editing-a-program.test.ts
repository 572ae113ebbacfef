import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import {
  addExercise,
  moveExercise,
  removeExercise,
  withHead,
  withSets,
} from '../../src/program/edit-program.ts';
import { programOf } from './check-report.ts';

const TEXT = `# My plan, since spring.
name: Lean spring   # a good name
unit: kg

days:
  - name: A   # heavy
    exercises:
      # Deep ones.
      - lift: back-squat
        sets: 3      # four when I sleep well
        reps: 5-8

      # Strict.
      - lift: barbell-row
        sets: 3
        reps: 6-10

      - lift: crunch
        cluster: { lead: 12-15, most_sets: 5 }   # plate on the chest

  - name: B
    exercises:
      - lift: bench-press
        sets: 3
        reps: 5-8

# The end.
`;

/** The lines that an edit took out and put in, in order. */
function changes(before: string, after: unknown): readonly string[] {
  if (typeof after !== 'string') throw new Error(JSON.stringify(after));
  programOf(after);
  const [old, now] = [before.split('\n'), after.split('\n')];
  const common: number[][] = Array.from({ length: old.length + 1 }, () =>
    Array<number>(now.length + 1).fill(0),
  );
  for (let i = old.length - 1; i >= 0; i -= 1) {
    for (let j = now.length - 1; j >= 0; j -= 1) {
      const row = common[i]!;
      row[j] =
        old[i] === now[j] ? common[i + 1]![j + 1]! + 1 : Math.max(common[i + 1]![j]!, row[j + 1]!);
    }
  }
  const lines: string[] = [];
  for (let i = 0, j = 0; i < old.length || j < now.length; ) {
    if (i < old.length && j < now.length && old[i] === now[j]) [i, j] = [i + 1, j + 1];
    else if (j >= now.length || (i < old.length && common[i + 1]![j]! >= common[i]![j + 1]!)) {
      lines.push(`- ${old[i]!.trim()}`);
      i += 1;
    } else {
      lines.push(`+ ${now[j]!.trim()}`);
      j += 1;
    }
  }
  return lines.filter((line) => line.length > 2);
}

const at = (day: number, exercise: number) => ({ day, exercise });

describe('an edit changes its own lines and no others', () => {
  test('a set fewer', () => {
    expect(changes(TEXT, withSets(TEXT, at(0, 1), 2))).toEqual(['- sets: 3', '+ sets: 2']);
  });

  test('a set fewer, with a comment behind it', () => {
    expect(changes(TEXT, withSets(TEXT, at(0, 0), 2))).toEqual([
      '- sets: 3      # four when I sleep well',
      '+ sets: 2      # four when I sleep well',
    ]);
  });

  test('a smaller cluster', () => {
    expect(changes(TEXT, withSets(TEXT, at(0, 2), 3))).toEqual([
      '- cluster: { lead: 12-15, most_sets: 5 }   # plate on the chest',
      '+ cluster: { lead: 12-15, most_sets: 3 }   # plate on the chest',
    ]);
  });

  test('an exercise added', () => {
    const added = { lift: 'dumbbell-curl', cluster: { lead: '12-15', rest: '10-15 s' }, start: 8 };
    expect(changes(TEXT, addExercise(TEXT, at(1, 1), added))).toEqual([
      '+ - lift: dumbbell-curl',
      '+ cluster: { lead: 12-15, rest: 10-15 s }',
      '+ start: 8',
    ]);
  });

  test('an exercise taken out, with the comment above it', () => {
    expect(changes(TEXT, removeExercise(TEXT, at(0, 1)))).toEqual([
      '- # Strict.',
      '- - lift: barbell-row',
      '- sets: 3',
      '- reps: 6-10',
    ]);
  });

  test('the first exercise taken out, with the comment above it', () => {
    expect(changes(TEXT, removeExercise(TEXT, at(0, 0))).slice(0, 2)).toEqual([
      '- # Deep ones.',
      '- - lift: back-squat',
    ]);
  });
});

describe('an exercise moves with its comments', () => {
  const order = (after: unknown) =>
    programOf(String(after)).days.map(({ exercises }) => exercises.map(({ lift }) => lift.key));

  test('within its day', () => {
    const after = moveExercise(TEXT, at(0, 0), at(0, 2));
    expect(order(after)[0]).toEqual(['barbell-row', 'crunch', 'back-squat']);
    expect(after).toMatch(/# Deep ones\.\n {6}- lift: back-squat/);
    expect(after).toMatch(/exercises:\n {6}# Strict\.\n {6}- lift: barbell-row/);
  });

  test('to another day', () => {
    const after = moveExercise(TEXT, at(0, 1), at(1, 0));
    expect(order(after)).toEqual([
      ['back-squat', 'crunch'],
      ['barbell-row', 'bench-press'],
    ]);
    expect(after).toMatch(/exercises:\n {6}# Strict\.\n {6}- lift: barbell-row/);
  });

  test('there and back again the file is what it was', () => {
    const there = String(moveExercise(TEXT, at(0, 2), at(1, 1)));
    expect(moveExercise(there, at(1, 1), at(0, 2))).toBe(TEXT);
  });
});

describe('nothing is changed', () => {
  test('when a day would be left without exercises', () => {
    expect(removeExercise(TEXT, at(1, 0))).toEqual({
      what: 'A day keeps at least one lift.',
    });
  });

  test('when there is no such exercise', () => {
    expect(withSets(TEXT, at(0, 7), 2)).toMatchObject({ what: 'Day 1 has no exercise 8.' });
    expect(withSets(TEXT, at(7, 0), 2)).toMatchObject({ what: 'There is no day 8.' });
    expect(moveExercise(TEXT, at(0, 0), at(1, 9))).toMatchObject({
      what: expect.stringContaining('no place 10'),
    });
  });

  test('when the number or the lift cannot be', () => {
    expect(withSets(TEXT, at(0, 0), 0)).toMatchObject({ what: expect.stringContaining('too low') });
    const added = { lift: 'back-sqat', sets: 3, reps: 5 };
    expect(addExercise(TEXT, at(0, 0), added)).toMatchObject({
      what: expect.stringContaining('no lift'),
    });
  });

  test('when the file cannot be read', () => {
    expect(withSets('days: [', at(0, 0), 2)).toMatchObject({ what: expect.any(String) });
  });
});

test('line ends and byte order mark stay', () => {
  const text = `\ufeff${TEXT.replaceAll('\n', '\r\n')}`;
  const after = String(withSets(text, at(0, 1), 2));
  expect(after).toBe(`\ufeff${String(withSets(TEXT, at(0, 1), 2)).replaceAll('\n', '\r\n')}`);
});

const folder = new URL('../../programs/', import.meta.url);
test.each(readdirSync(folder).filter((file) => file.endsWith('.yaml')))(
  'one line of %s changes with one number',
  (file) => {
    const text = readFileSync(new URL(file, folder), 'utf8');
    expect(changes(text, withSets(text, at(1, 0), 5))).toHaveLength(2);
  },
);

describe('the head of a program', () => {
  const done = (result: unknown): string => {
    if (typeof result === 'string') return result;
    throw new Error(JSON.stringify(result));
  };

  test('takes a goal in a line of its own, another value in its place, and goes back to the byte', () => {
    const with75 = done(withHead(TEXT, 'goal_weight', '75'));
    expect(changes(TEXT, with75)).toEqual(['+ goal_weight: 75']);
    const with74 = done(withHead(with75, 'goal_weight', '74.5'));
    expect(changes(with75, with74)).toEqual(['- goal_weight: 75', '+ goal_weight: 74.5']);
    expect(programOf(with74).goal.mass).toBe(74.5e9);
    expect(withHead(with74, 'goal_weight', null)).toBe(TEXT);
    expect(withHead(TEXT, 'goal_date', null)).toBe(TEXT);
    expect(programOf(done(withHead(TEXT, 'rate', '0.5-0.7'))).rate).toEqual([0.5, 0.7]);
  });

  test('takes nothing that would be no program', () => {
    expect(withHead(TEXT, 'goal_date', 'soon')).toMatchObject({ what: expect.any(String) });
    expect(withHead(TEXT, 'rate', '3')).toMatchObject({ what: expect.any(String) });
  });
});
