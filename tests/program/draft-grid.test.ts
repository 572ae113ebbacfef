import { expect, it } from 'vitest';
import { checkProgram } from '../../src/program/check/check-program.ts';
import { doneText } from '../../src/program/done-text.ts';
import { draftProgram } from '../../src/program/draft/draft-program.ts';
import { readProgram } from '../../src/program/read-program.ts';
import { KITS } from '../../src/training/kits.ts';
import { draftFaults, GRID } from './draft-faults.ts';
import { someWishes } from './some-wishes.ts';

/** Every 23rd, so that each day, minute, kit, aim and joint comes up; `npm run grid` takes all. */
const SAMPLE = GRID.filter((_, at) => at % 23 === 0);

it.each(
  SAMPLE.map((wishes) => ({
    wishes,
    title: `${wishes.days} × ${wishes.minutes} min, ${wishes.name}, ${wishes.aim}, ${wishes.hurts[0] ?? 'nothing'} hurts`,
  })),
)('is what a coach would hand over: $title', ({ wishes }) => {
  expect(draftFaults(draftProgram(wishes), wishes)).toEqual([]);
});

it('every sample of the grid has each kit, joint and aim', () => {
  expect(new Set(SAMPLE.map(({ name }) => name)).size).toBe(6);
  expect(new Set(SAMPLE.map(({ hurts }) => hurts[0])).size).toBe(7);
  expect(new Set(SAMPLE.map(({ aim }) => aim)).size).toBe(3);
});

it('the faults are found where they are', () => {
  const text = `name: Bad
unit: kg
days:
  - name: A
    exercises:
      - {lift: dumbbell-curl, sets: 3, reps: 8-12}
      - {lift: barbell-row, sets: 3, reps: 6-10}
      - {lift: deadlift, sets: 3, reps: 5-8}
      - {lift: romanian-deadlift, sets: 3, reps: 6-10}
  - name: B
    exercises:
      - {lift: deadlift, sets: 4, reps: 5-8}
      - {lift: bodyweight-squat, sets: 3, reps: 6-10}
`;
  const wishes = someWishes({ minutes: 60, gear: KITS[5]!.gear('kg'), hurts: ['back'] });
  const read = readProgram(text, 'bad.yaml');
  if (!read.ok) throw new Error('It can be read.');
  const findings = checkProgram(read.program, wishes.gear);
  const draft = { text, program: read.program, findings, chosen: [], givenUp: [], lost: [] };
  expect(draftFaults(draft, wishes)).toEqual(
    expect.arrayContaining([
      'no horizontal-push',
      'nothing for abs',
      'two of one movement on a day',
      'a lift that loads what hurts',
      'one joint before many',
      'a row before the hinge',
      'two hinges running',
      'squats without a load for few reps',
      '19.5 sets for glutes',
    ]),
  );
});

it('is the same as before, so that no change of a draft goes unseen', async () => {
  const drafts = SAMPLE.map((wishes) => {
    const { program, chosen, givenUp } = draftProgram(wishes);
    const days = program.days.map(({ name, exercises }) => {
      const lifts = exercises.map(
        (each) => `${each.lift.key} ${doneText(each)}${each.pair ? ` in turn ${each.pair}` : ''}`,
      );
      return `  ${name}: ${lifts.join('; ')}`;
    });
    const why = [...chosen, ...givenUp].map(({ rule, facts }) => {
      const said = Object.values(facts).filter((fact) => typeof fact !== 'boolean');
      return `${rule} ${said.join(' ')}`.trimEnd();
    });
    const title = `${wishes.days} × ${wishes.minutes} min, ${wishes.name}, ${wishes.aim}, ${wishes.hurts[0] ?? 'nothing'} hurts`;
    return [title, ...days, `  ${why.join('; ')}`].join('\n');
  });
  await expect(`${drafts.join('\n\n')}\n`).toMatchFileSnapshot('drafts.txt');
});
