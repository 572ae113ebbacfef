import { execFileSync } from 'node:child_process';
import {
  existsSync,
  readdirSync,
  readFileSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { PassThrough } from 'node:stream';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { main } from '../../src/commands/main.ts';
import { AHome } from './a-home.ts';

let home: AHome;
beforeEach(() => {
  home = new AHome();
});
afterEach(() => home.throwAway());

const plan = (name = 'my-three-days') => join(home.data, 'programs', `${name}.yaml`);

test('a draft is written among the programs, explained, and passes the check', async () => {
  const { status, out } = await home.run('draft', '--days', '3', '--minutes', '60');
  expect(status).toBe(0);
  expect(out).toContain('The check finds nothing to better.');
  expect(out).toContain(`Written to ${plan()}.`);
  expect(readFileSync(plan(), 'utf8')).toMatch(/^# yaml-language-server: \$schema=\.\/program/);
  expect(existsSync(join(home.data, 'programs', 'program.schema.json'))).toBe(true);
  expect((await home.run('check', plan(), '--strict')).status).toBe(0);
});

test.skipIf(process.platform === 'win32')('nobody else may look into what is kept', async () => {
  await home.run('draft', '--days', '3');
  await home.run('weigh', '80');
  await home.run('settings', 'bell', 'no');
  const folders = readdirSync(home.folder, { recursive: true, encoding: 'utf8' })
    .map((name) => join(home.folder, name))
    .filter((path) => statSync(path).isDirectory() && !path.endsWith('/config'));
  expect(folders.filter((path) => (statSync(path).mode & 0o777) !== 0o700)).toEqual([]);
  expect(folders.length).toBeGreaterThan(4);
});

test('a file that is there stays, but for --replace', async () => {
  await home.run('draft', '--days', '3');
  const before = readFileSync(plan(), 'utf8');
  const again = await home.run('draft', '--days', '3', '--minutes', '40');
  expect([again.status, again.err]).toEqual([2, expect.stringContaining('is there already')]);
  expect(readFileSync(plan(), 'utf8')).toBe(before);
  expect((await home.run('draft', '--days', '3', '--minutes', '40', '--replace')).status).toBe(0);
  expect(readFileSync(plan(), 'utf8')).not.toBe(before);
});

test('no draft takes the place of training data, not even through a link or with --replace', async () => {
  await home.run('weigh', '80');
  const journal = join(home.data, 'journal');
  const [name = ''] = readdirSync(journal, { recursive: true, encoding: 'utf8' }).filter((each) =>
    each.endsWith('.jsonl'),
  );
  const file = join(journal, name);
  const before = readFileSync(file, 'utf8');
  const link = join(home.folder, 'elsewhere');
  symlinkSync(journal, link);
  for (const path of [file, join(link, name), join(journal, 'new.yaml'), `${home.data}/x.yaml`]) {
    const { status, err } = await home.run('draft', '--out', path, '--replace');
    expect([status, err]).toEqual([2, expect.stringContaining('lies in the data folder')]);
  }
  expect((await home.run('draft', '--from', file, '--replace')).status).toBe(2);
  expect(readFileSync(file, 'utf8')).toBe(before);
});

test.skipIf(process.platform === 'win32')('no draft takes the place of a pipe', async () => {
  const pipe = join(home.folder, 'pipe');
  execFileSync('mkfifo', [pipe]);
  const { status, err } = await home.run('draft', '--out', pipe, '--replace');
  expect([status, err]).toEqual([2, expect.stringContaining('no file that could be replaced')]);
});

test('--print writes nothing, and keeps words out of stdout', async () => {
  const { out, err } = await home.run('draft', '--days', '2', '--print');
  expect(out).toMatch(/^# yaml-language-server/);
  expect(out).not.toContain('Chosen:');
  expect(err).toContain('Chosen:');
  expect(existsSync(plan('my-two-days'))).toBe(false);
});

test('--use makes it the program in use', async () => {
  await home.run('draft', '--days', '4', '--name', 'Lean spring', '--use');
  const today = await home.json('today');
  expect(today.program).toBe('Lean spring');
  expect(existsSync(plan('lean-spring'))).toBe(true);
});

test('lifts go by key or name, several at once', async () => {
  const { out } = await home.run(
    ...['draft', '--print', '--like', 'Overhead press, goblet-squat', '--without', 'deadlift'],
  );
  expect(out).toContain('- lift: overhead-press');
  expect(out).toContain('- lift: goblet-squat');
  expect(out).not.toContain('- lift: deadlift');
});

describe('an answer that cannot be read is refused with what to write', () => {
  test.each([
    [['--days', '5'], 'Write 2, 3 or 4.'],
    [['--minutes', '5'], 'Write a whole number from 15 to 180.'],
    [['--aim', 'bulk'], 'Write cut, maintain or build.'],
    [['--like', 'bakc-squat'], 'Did you mean "back-squat"?'],
    [['--focus', 'side-delt'], 'Did you mean "side-delts"?'],
    [
      ['--best', 'back-squat 100'],
      'Write it as "back-squat=100kg for 5 leaving 2", of 1 to 10 reps.',
    ],
    [
      ['--best', 'back-squat=lots for 5'],
      'Write it as "back-squat=100kg for 5 leaving 2", of 1 to 10 reps.',
    ],
    [['--from', 'no-such'], 'Shipped programs:'],
  ])('%j', async (options, wanted) => {
    const { status, err } = await home.run('draft', '--print', ...options);
    expect([status, err]).toEqual([2, expect.stringContaining(wanted)]);
  });
});

test('--from changes a program where it lies, and a shipped one as a copy', async () => {
  const copy = await home.run('draft', '--from', 'three-day', '--days', '4');
  expect(copy.out).toContain(`Written to ${plan('three-day')}.`);
  const path = join(home.folder, 'mine.yaml');
  writeFileSync(path, readFileSync(plan('three-day')));
  expect((await home.run('draft', '--from', path, '--days', '3')).status).toBe(2);
  expect((await home.run('draft', '--from', path, '--days', '3', '--replace')).status).toBe(0);
  expect(readFileSync(path, 'utf8')).toContain('# Three days a week, loads in kg.');
});

test('at a terminal it asks, and asks again what it cannot read', async () => {
  const stdin = Object.assign(new PassThrough(), { isTTY: true, setRawMode: () => {} });
  const stdout = Object.assign(new PassThrough(), { isTTY: true, columns: 80 });
  const said: string[] = [];
  const answers = ['6', '7', '2', '45', '', 'dip', 'deadlift', 'knee', 'biceps', '', ''];
  stdout.on('data', (bytes: Buffer) => {
    said.push(String(bytes));
    if (/[:\]] ?: ?$|: $/.test(String(bytes))) {
      const answer = answers.shift();
      if (answer !== undefined) stdin.write(`${answer}\n`);
    }
  });
  const ports = {
    ...home.ports(),
    stdin: stdin as unknown as NodeJS.ReadStream,
    stdout: stdout as unknown as NodeJS.WriteStream,
    stderr: { write: (text: string) => said.push(text) } as unknown as NodeJS.WriteStream,
  };
  expect(await main(ports, ['draft'])).toBe(0);
  const text = said.join('');
  expect(text).toContain('"7" is no answer for days a week. Write 2, 3 or 4.');
  expect(readFileSync(plan('my-two-days'), 'utf8')).toContain('days_per_week: 2');
  // The kit has no dip station, and enter alone takes the program into use.
  expect(text).toContain('Dip is not in: your gear holds nothing for it.');
  expect(text).toContain('It is the program in use now.');
  expect((await home.run('gear')).out).toContain('bench, rack, chin-up bar');
});

test('a kit is named by its number or the begin of its name, and all are told where it is neither', async () => {
  const { out } = await home.run('draft', '--kit', 'dumbbells and', '--print');
  expect(out).toContain('lift: dumbbell-bench-press');
  const { status, err } = await home.run('draft', '--kit', 'rack', '--print');
  expect([status, err]).toEqual([2, expect.stringContaining('6 rack, bar, bench and dumbbells')]);
});

test('a lift that is liked may go by its everyday name', async () => {
  const { out } = await home.run('draft', '--kit', '6', '--like', 'military press', '--print');
  expect(out).toContain('lift: overhead-press');
});
