import { afterAll, describe, expect, test } from 'vitest';
import { COMMANDS } from '../../src/commands/command-table.ts';
import { AHome } from './a-home.ts';

const home = new AHome();
afterAll(() => home.throwAway());

const listed = async (...words: string[]) =>
  (await home.run('lifts', ...words)).out
    .split('\n')
    .slice(1)
    .map((line) => line.split(' ')[0]);

describe('lifts are found', () => {
  test('by the start of words: rear finds rear delts first, and no forearms', async () => {
    const found = await listed('rear');
    expect(found[0]).toBe('dumbbell-rear-raise');
    expect(found).toContain('rear-foot-elevated-split-squat');
    expect(found).not.toContain('wrist-curl');
  });

  test.each([
    ['rdl', 'romanian-deadlift'],
    ['military press', 'overhead-press'],
    ['skull crusher', 'triceps-extension'],
    ['lateral raise', 'dumbbell-side-raise'],
  ])('by what gyms call them: %s', async (said, key) => {
    expect((await listed(...said.split(' ')))[0]).toBe(key);
  });

  test('by the nearest spelling, which is told', async () => {
    const { status, out, err } = await home.run('lifts', 'dedlift');
    expect(status).toBe(0);
    expect(err).toContain('There is no lift like "dedlift"; the nearest is this one.');
    expect(out).toContain('deadlift');
  });

  test('by words alone: of signs without a letter there is none', async () => {
    const { status, err } = await home.run('lifts', '!?');
    expect(status).toBe(2);
    expect(err).toContain('There is no lift like "!?".');
    expect((await listed()).length).toBeGreaterThan(100);
  });

  test('or not at all, with what to do', async () => {
    const { status, err } = await home.run('lifts', 'qqqqqqqq');
    expect(status).toBe(2);
    expect(err).toContain('holdfast lifts row');
  });
});

describe('help', () => {
  test('fits a screen of 24 lines and 80 columns, and names every command', async () => {
    const { out } = await home.run('--help');
    const lines = out.split('\n');
    expect(lines.length).toBeLessThanOrEqual(24);
    for (const line of lines) expect(line.length).toBeLessThanOrEqual(80);
    for (const { name } of COMMANDS) expect(out).toMatch(new RegExp(`(^|\\s)${name}\\s`));
    expect(out).toContain('holdfast help cautions');
  });

  test('of a command is that of its --help', async () => {
    const { out } = await home.run('help', 'weigh');
    expect(out).toBe((await home.run('weigh', '--help')).out);
    expect(out).toContain('holdfast weigh 82.4');
  });

  test('leads to the cautions and their questions', async () => {
    const { out } = await home.run('help', 'cautions');
    expect(out).toContain('doctor');
    expect(out).toContain('Heart or blood pressure');
  });

  test('names the nearest command', async () => {
    const { status, err } = await home.run('help', 'wiegh');
    expect(status).toBe(2);
    expect(err).toContain('Did you mean "weigh"?');
  });

  test('a missing argument is answered with an example', async () => {
    const { status, err } = await home.run('load');
    expect(status).toBe(2);
    expect(err).toContain('For example: holdfast load 82.5');
  });
});

test('a word that is spelled wrongly finds what it is nearest to', async () => {
  const { status, out, err } = await home.run('lifts', 'sqat');
  expect(status).toBe(0);
  expect(err).toContain('There is no lift like "sqat"; these fit "squat".');
  expect(out).toContain('back-squat');
  expect((await home.run('lifts', 'dumbell', 'press')).out).toContain('dumbbell-bench-press');
  expect((await home.run('lifts', 'xyzzy')).status).toBe(2);
});
