import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it, vi } from 'vitest';
import { draftProgram } from '../../src/program/draft/draft-program.ts';
import { readProgram } from '../../src/program/read-program.ts';
import { KITS } from '../../src/training/kits.ts';
import { kilograms } from '../../src/training/mass.ts';
import { DAYS, someWishes } from './some-wishes.ts';

vi.setConfig({ testTimeout: 60_000 });

function before(text: string) {
  const read = readProgram(text, 'before.yaml');
  if (!read.ok) throw new Error('no program');
  return { text, program: read.program };
}

const FILES = readdirSync('programs').filter((name) => /day.*\.yaml$/.test(name));

describe.each(FILES)('%s changed', (file) => {
  const from = before(readFileSync(`programs/${file}`, 'utf8'));

  it.each(DAYS)('to %i days a week', (days) => {
    const draft = draftProgram(someWishes({ from, days, unit: from.program.unit }));
    expect(draft.program.days).toHaveLength(days);
    expect(draft.program.daysPerWeek).toBe(days);
    expect(draft.findings.filter(({ severity }) => severity === 'error')).toEqual([]);
    // The head of the file with its comments is untouched, or told to be of before.
    const head = from.text.slice(0, from.text.indexOf('name:'));
    for (const line of head.trim().split('\n')) expect(draft.text).toContain(line);
    if (from.program.days.length === days) expect(draft.text.startsWith(head)).toBe(true);
    else {
      expect(draft.text).toMatch(new RegExp(`# Laid out anew over ${days} days`));
      expect(draft.program.days.map(({ name }) => name).join('')).toBe('ABCD'.slice(0, days));
    }
  });
});

it("keeps the lifter's words and numbers at exercises that stay", () => {
  const from = before(`# Mine.
name: Mine   # since March
unit: kg
days_per_week: 3
days:
  - name: Monday
    exercises:
      # My knee likes a high box.
      - lift: split-squat   # slowly
        sets: 3
        reps: 7-9
        rest: 3 min
        note: high box
        start: 12
      - lift: good-morning
        sets: 2
        reps: 8-10
`);
  const draft = draftProgram(someWishes({ from, name: 'Mine', without: ['good-morning'] }));
  expect(draft.text).toMatch(
    /# My knee likes a high box\.\n {6}- lift: split-squat {3}# slowly\n {8}sets: \d\n {8}reps: 7-9\n {8}rest: 3 min\n {8}note: high box\n {8}start: 12\n/,
  );
  expect(draft.text).toMatch(/^# Laid out anew over 3 days/);
  expect(draft.text).toMatch(/# Mine\.\nname: Mine {3}# since March\n/);
  expect(draft.text).not.toContain('good-morning');
  expect(draft.program.days).toHaveLength(3);
});

describe('changed to other gear', () => {
  const from = before(readFileSync('programs/three-day.yaml', 'utf8'));

  it.each(KITS.map(({ name, gear }) => ({ name, gear: gear('kg') })))(
    'leaves no day without a compound lift: $name',
    ({ gear }) => {
      const draft = draftProgram(someWishes({ from, gear, unit: 'kg' }));
      for (const { name, exercises } of draft.program.days) {
        const compounds = exercises.filter(({ lift }) => lift.kind === 'compound');
        expect(
          compounds.length,
          `${name}: ${exercises.map(({ lift }) => lift.key)}`,
        ).toBeGreaterThan(1);
      }
      expect(draft.lost.filter(({ facts }) => facts.cause === 'recovery')).toEqual([]);
    },
  );

  it('starts with what that gear can make, in the unit of the program, and says so', () => {
    const [, , , , , rack] = KITS;
    const draft = draftProgram(someWishes({ from, gear: rack!.gear('lb'), unit: 'kg' }));
    expect(draft.program.unit).toBe('kg');
    expect(draft.findings.map(({ rule }) => rule)).not.toContain('unloadable-start');
    expect(draft.chosen.map(({ rule }) => rule)).toContain('draft-start-made');
    const [squat] = draft.program.days.flatMap(({ exercises }) => exercises);
    expect(squat?.start).toBeLessThanOrEqual(kilograms(40));
    expect(squat?.start).toBeGreaterThan(kilograms(37));
  });
});
