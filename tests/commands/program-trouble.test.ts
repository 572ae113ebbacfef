import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeEach, expect, it } from 'vitest';
import { AHome } from './a-home.ts';

let home: AHome;
let program: string;
beforeEach(() => {
  home = new AHome();
  mkdirSync(home.folder, { recursive: true });
  program = join(home.folder, 'mine.yaml');
  writeFileSync(
    program,
    'name: Mine\nunit: lb\ndays:\n  - name: A\n    exercises: [{lift: back-squat, stes: 3}]\n',
  );
  home.writeSettings({ program, cautions: 'read', weightAdvice: 'yes' });
});

it.each([
  ['weigh', '180'],
  ['history'],
  ['export', '--as', 'csv'],
  ['export', '--as', 'json'],
  ['load', '135'],
  ['estimate', '--load', '135', '--reps', '5'],
])('a mistake in the program stops no "%s", which needs its unit only', async (...args) => {
  const { status, out, err } = await home.run(...args);
  // 1: this very load cannot be made of these plates.
  expect(status).toBeLessThanOrEqual(args[0] === 'load' ? 1 : 0);
  expect(err).not.toContain('stes');
  expect(out).not.toContain(' kg for one rep');
});

it('keeps the unit that the program says, though a lift in it is misspelt', async () => {
  expect((await home.run('weigh', '180')).out).toContain('180 lb');
});

it('means the unit of the last session where the program is gone', async () => {
  rmSync(program);
  writeFileSync(program, 'name: [');
  expect((await home.run('weigh', '80')).out).toContain('80 kg');
});

it('still says what is wrong where the program itself is asked for', async () => {
  const { status, err } = await home.run('today');
  expect(status).toBe(2);
  expect(err).toContain('stes');
});

it('means the unit of the program everywhere, whatever the gear is stamped in', async () => {
  writeFileSync(
    program,
    'name: Mine\nunit: lb\ndays:\n  - name: A\n    exercises: [{lift: back-squat, sets: 3, reps: 5}]\n',
  );
  await home.run('gear', '--unit', 'kg');
  const units = await Promise.all(
    [
      ['today'],
      ['weigh', '180'],
      ['load', '135'],
      ['estimate', '--load', '135', '--reps', '5'],
      ['history'],
    ].map(async (args) => (await home.json(...args)).unit),
  );
  expect(units).toEqual(['lb', 'lb', 'lb', 'lb', 'lb']);
});

it.each([
  ['a stray word', (lines: string[]) => lines.toSpliced(20, 0, 'stray words here')],
  ['a stray word before a dash', (lines: string[]) => lines.with(19, `   stray${lines[19]}`)],
  ['a bracket', (lines: string[]) => lines.with(24, `}${lines[24]}`)],
  ['a second colon', (lines: string[]) => lines.with(7, `${lines[7]} : x`)],
])('%s in the wrong place is one sentence, with its line', async (_, change) => {
  const shipped = join(home.ports().shippedPrograms, 'three-day.yaml');
  writeFileSync(program, change(readFileSync(shipped, 'utf8').split('\n')).join('\n'));
  const { status, err, out } = await home.run('check', program);
  expect(status).toBe(2);
  const said = `${err}${out}`.trim().split('\n');
  expect(said).toHaveLength(1);
  expect(said[0]).toMatch(/mine\.yaml:\d+:\d+: [A-Z]/);
  expect(said[0]).not.toMatch(/token|indicator|scalar|flow|seq|implicit/i);
});

it.each([
  [['load', '9'.repeat(20)], /is not a mass/],
  [['weigh', '9'.repeat(20)], /is not a mass/],
  [['weigh', '-5', '--sure'], /Nobody weighs/],
  [['export', '--as', '__proto__'], /There is no export as/],
])('%j is told to be wrong use', async (args, said) => {
  const { status, err } = await home.run(...args);
  expect([status, err]).toEqual([2, expect.stringMatching(said)]);
});
