import { expect, test } from 'vitest';
import { CAUTIONS, READINESS_QUESTIONS } from '../../src/training/cautions.ts';

// PAR-Q (Canadian Society for Exercise Physiology): seven questions, by what each is about.
test.each([
  ['a heart condition', /heart condition/],
  ['chest pain in activity', /pain in your chest when you are active/],
  ['chest pain at rest in the past month', /chest pain while at rest in the past month/],
  ['dizziness or loss of consciousness', /dizziness.*consciousness/],
  ['a bone or joint problem', /bone or joint/],
  ['medicine for blood pressure or heart', /medicine for blood pressure or a heart/],
  ['any other reason', /any other reason/],
])('asks about %s', (_, about) => {
  expect(READINESS_QUESTIONS).toHaveLength(7);
  expect(READINESS_QUESTIONS.some((question) => about.test(question))).toBe(true);
});

// Who gets no weight-loss targets: IOC REDs consensus 2023, BJSM 57(17):1073–1097, and trial exclusions.
test('the cautions name who is to see a doctor, when to stop, and that local rules come first', () => {
  const all = CAUTIONS.join(' ');
  for (const said of [
    /not medical advice/,
    /Local rules/,
    /pregnant/,
    /under 18/,
    /eating disorder/,
    /chest pain/,
    /safeties/,
  ]) {
    expect(all).toMatch(said);
  }
});
