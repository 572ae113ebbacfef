import { expect, test } from 'vitest';
import { CAUTIONS, READINESS_QUESTIONS } from '../../src/training/cautions.ts';

// The subjects that screening before exercise asks about, in words of our own (common practice).
test.each([
  ['heart and blood pressure', /heart or blood pressure/i],
  ['a diagnosis, a medicine or a limit', /diagnosis.*medicine.*limit/],
  ['chest pain, fainting and dizzy spells', /chest pain.*fainting.*dizzy/],
  ['bones, joints and muscles', /bone, joint or muscle/i],
  ['anything else a doctor should know', /anything else.*doctor/i],
])('asks about %s', (_, about) => {
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
