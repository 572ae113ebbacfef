import {
  appendFileSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { main } from '../../src/commands/main.ts';
import { nodeFiles } from '../../src/journal/disk/files.ts';
import type { Ports } from '../../src/lifter/ports.ts';
import { AHome } from './a-home.ts';
import { doSession, lifterOf, withTinyProgram } from './a-session.ts';

let home: AHome;
beforeEach(() => {
  home = new AHome();
  withTinyProgram(home);
});
afterEach(() => home.throwAway());

interface Checked {
  readonly what: string;
  readonly state: string;
  readonly words: readonly string[];
}

async function stateOf(what: string): Promise<Checked | undefined> {
  const { checked } = (await home.json('doctor')) as unknown as { checked: readonly Checked[] };
  return checked.find((each) => each.what === what);
}

const journalFiles = (): string[] => {
  const folder = join(home.data, 'journal');
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.jsonl'))
    .map((name) => join(folder, name));
};

test('a home in order is fine, and so is one that was never used', async () => {
  expect((await home.run('doctor')).status).toBe(0);
  expect(existsSync(home.data)).toBe(false);
  doSession(home);
  const { status, out } = await home.run('doctor');
  expect(status).toBe(0);
  expect(
    out
      .trim()
      .split('\n')
      .every((line) => line.endsWith(': fine')),
  ).toBe(true);
});

test('a half-written end is cut off and kept, and the next visit finds nothing', async () => {
  doSession(home);
  const [file = ''] = journalFiles();
  const whole = readFileSync(file, 'utf8');
  appendFileSync(file, '0123abcd {"v":1,"seq":99');
  const { status, out } = await home.run('doctor');
  expect([status, out]).toEqual([0, expect.stringMatching(/journal.*: repaired\n.*cut off/)]);
  expect(readFileSync(file, 'utf8')).toBe(whole);
  expect((await stateOf('journal'))?.state).toBe('fine');
});

test('while another holdfast is at work nothing is repaired, and that is said', async () => {
  doSession(home);
  const [file = ''] = journalFiles();
  appendFileSync(file, '0123abcd {"v":1,"seq":99');
  const torn = readFileSync(file, 'utf8');
  const other = lifterOf(home).journal();
  expect(other.lock()).toBe(true);
  const { status, out } = await home.run('doctor');
  other.release();
  expect([status, out]).toEqual([1, expect.stringMatching(/journal.*: not repaired\n.*at work/)]);
  expect(readFileSync(file, 'utf8')).toBe(torn);
});

test('damage in the middle is told, left as it is, and ends in 1', async () => {
  doSession(home);
  const [file = ''] = journalFiles();
  const damaged = readFileSync(file, 'utf8').replace('"set-started"', '"set-startef"');
  writeFileSync(file, damaged);
  const { status, out } = await home.run('doctor');
  expect([status, out]).toEqual([
    1,
    expect.stringMatching(/journal.*: not repaired\n.*damaged line/),
  ]);
  expect(readFileSync(file, 'utf8')).toBe(damaged);
});

test('damaged settings give way to the last good ones, and are kept', async () => {
  await home.run('settings', 'bell', 'no');
  writeFileSync(join(home.config, 'settings.json'), '{"bell":');
  expect(await stateOf('settings')).toMatchObject({ state: 'repaired' });
  expect(readFileSync(join(home.config, 'settings.damaged.json'), 'utf8')).toBe('{"bell":');
  expect((await home.json('settings')).settings).toMatchObject({ bell: 'no' });
  expect((await stateOf('settings'))?.state).toBe('fine');
});

test('a program that cannot be read is told with its place', async () => {
  writeFileSync(join(home.folder, 'tiny.yaml'), 'name: Tiny\nunit: kg\ndays: none\n');
  const { status, out } = await home.run('doctor');
  expect(status).toBe(1);
  expect(out).toMatch(/program .*tiny\.yaml: not repaired\n +tiny\.yaml:3:7: days/);
});

test('every program in the data folder is checked', async () => {
  const folder = join(home.data, 'programs');
  mkdirSync(folder, { recursive: true });
  writeFileSync(join(folder, 'old.yaml'), 'nonsense');
  expect((await home.run('doctor')).out).toMatch(/old\.yaml: not repaired/);
});

test('a file where the folder of programs should be is told, and stops nothing', async () => {
  doSession(home);
  const folder = join(home.data, 'programs');
  writeFileSync(folder, 'a file');
  expect(await home.run('doctor')).toMatchObject({
    status: 1,
    out: expect.stringMatching(/program {2}.*programs: not repaired\n.*a file stands where/),
  });
  home.writeSettings({ program: null, cautions: 'read' });
  expect((await home.run('today')).status).toBe(0);
  const lifter = lifterOf(home);
  expect(() => lifter.ownProgramPath()).toThrow(/copy of the program/);
});

test.skipIf(process.platform === 'win32')(
  'that nothing could be saved is told before it is needed',
  async () => {
    doSession(home);
    const full: Ports = {
      ...home.ports(),
      files: { ...nodeFiles, write: () => 0 },
    };
    const out: string[] = [];
    const stdout = { columns: 80, write: (text: string) => out.push(text) > 0 };
    const status = await main({ ...full, stdout: stdout as never }, ['doctor']);
    expect([status, out.join('')]).toEqual([
      1,
      expect.stringMatching(/Nothing could be saved in .*: the disk is full/),
    ]);
    expect(readdirSync(home.data).filter((name) => name.startsWith('.try'))).toEqual([]);
  },
);

test('a session file of zeroes is not called repaired, and stays as it is', async () => {
  doSession(home);
  const [file = ''] = journalFiles();
  writeFileSync(file, Buffer.alloc(4000));
  const { status, out } = await home.run('doctor');
  expect([status, out]).toEqual([
    1,
    expect.stringMatching(/not repaired\n.*holds no whole line any more: 4000 bytes are kept/),
  ]);
  expect(readFileSync(file)).toEqual(Buffer.alloc(4000));
});

test('settings whose folder is a circle of links are told in words', async () => {
  const folder = join(home.folder, 'config');
  rmSync(folder, { recursive: true });
  symlinkSync(`${folder}-b`, folder);
  symlinkSync(folder, `${folder}-b`);
  for (const words of [['settings', 'bell', 'no'], ['doctor']]) {
    const { status, out, err } = await home.run(...words);
    expect(status).toBeGreaterThan(0);
    expect(`${out}${err}`).toContain('its links lead in a circle');
    expect(`${out}${err}`).not.toMatch(/ELOOP|mkdir/);
  }
  // The session goes on with the defaults.
  expect((await home.run('today')).status).toBe(0);
});

test.skipIf(!existsSync('/proc/1'))(
  'a folder in which nothing can be made is refused',
  async () => {
    const weighed = await home.run('weigh', '80', '--data', '/proc/1');
    expect([weighed.status, weighed.out]).toEqual([2, '']);
    expect(weighed.err).toContain('Nothing was saved in /proc/1');
    const { status, out } = await home.run('doctor', '--data', '/proc/1');
    expect([status, out]).toEqual([
      1,
      expect.stringContaining('Nothing could be saved in /proc/1'),
    ]);
  },
);
