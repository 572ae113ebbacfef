import { execFileSync } from 'node:child_process';
import {
  appendFileSync,
  chmodSync,
  copyFileSync,
  lstatSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  symlinkSync,
  truncateSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { nodeDevice } from '../../src/journal/disk/device.ts';
import { nodeFiles } from '../../src/journal/disk/files.ts';
import { openJournal } from '../../src/journal/disk/open-journal.ts';
import { kilograms } from '../../src/training/mass.ts';
import { aDay, handClock, lift, send, train } from './a-journal.ts';

let home = '';
beforeEach(() => {
  home = mkdtempSync(join(tmpdir(), 'holdfast-journal-'));
});
afterEach(() => rmSync(home, { recursive: true, force: true }));

const clock = handClock();
const journalIn = (data: string) =>
  openJournal({
    dataDir: join(home, data),
    stateDir: join(home, 'state'),
    configDir: join(home, 'config'),
    files: nodeFiles,
    clock,
    device: nodeDevice('laptop'),
  });

test('a session is on disk, for this user alone, and read back by another start', () => {
  const journal = journalIn('data');
  const session = train(journal, clock);
  journal.record({ type: 'weighed', mass: kilograms(80), on: '2026-11-25' });
  const month = join(home, 'data', 'journal', '2026-11');
  for (const name of readdirSync(month)) {
    expect(name).toMatch(/^2026-11-25-[0-9a-z]{6}-[0-9a-z]{10}\.jsonl$/);
    expect(statSync(join(month, name)).mode & 0o777).toBe(0o600);
  }
  expect(statSync(month).mode & 0o777).toBe(0o700);
  const { sessions, weighIns, unreadable } = journalIn('data').history();
  expect(sessions).toMatchObject([{ session, setsDone: 3 }]);
  expect([weighIns.length, unreadable]).toEqual([1, []]);
  expect(readdirSync(join(home, 'state'))).toEqual([]);
});

test('one data folder has one lock, by whatever path it is reached', () => {
  mkdirSync(join(home, 'data'));
  symlinkSync(join(home, 'data'), join(home, 'link'));
  const writer = journalIn('link').beginSession(aDay());
  lift(writer, clock);
  expect(() => journalIn('data').resumeSession(writer.session)).toThrow('Another holdfast');
});

test.skipIf(process.getuid?.() === 0 || process.platform === 'win32')(
  'a folder that may not be written to is a sentence',
  () => {
    mkdirSync(join(home, 'data'));
    chmodSync(join(home, 'data'), 0o500);
    expect(() => journalIn('data').beginSession(aDay())).toThrow('this user may not do that there');
  },
);

test('a file where the folder should be is a sentence', () => {
  nodeFiles.close(nodeFiles.create(join(home, 'data')));
  expect(() => journalIn('data').beginSession(aDay())).toThrow(
    `Nothing was saved in ${join(home, 'data')}: a file stands where a folder should be. Choose another folder with --data.`,
  );
  expect(readdirSync(join(home, 'state'))).toEqual([]);
});

/** What is done to the file of a session, or to what holds it, while the session runs. */
const BEHIND_ITS_BACK: Readonly<Record<string, (file: string) => void>> = {
  'written beside and renamed, as it was at the beginning': (file) => {
    writeFileSync(`${file}.tmp`, firstLineOf(file));
    renameSync(`${file}.tmp`, file);
  },
  'written beside and renamed, as it is now': (file) => {
    copyFileSync(file, `${file}.tmp`);
    renameSync(`${file}.tmp`, file);
  },
  removed: (file) => rmSync(file),
  'removed with its month': (file) => rmSync(join(file, '..'), { recursive: true }),
  'removed with all data': () => rmSync(join(home, 'data'), { recursive: true }),
  'cut back to its beginning in place': (file) => writeFileSync(file, firstLineOf(file)),
  'written to by somebody else': (file) => appendFileSync(file, firstLineOf(file)),
};

const firstLineOf = (file: string): string =>
  `${readFileSync(file, 'utf8').split('\n', 1).join('')}\n`;

describe.each(Object.entries(BEHIND_ITS_BACK))('a session whose file is %s', (_, act) => {
  const idsOf = (data: string) =>
    journalIn(data)
      .history()
      .events()
      .map(({ id }) => id);

  test('goes on, and every set that was said to be saved is read back', () => {
    const journal = journalIn('data');
    const writer = journal.beginSession(aDay());
    lift(writer, clock);
    const month = join(home, 'data', 'journal', '2026-11');
    const [name = ''] = readdirSync(month);
    act(join(month, name));
    lift(writer, clock);
    const { events, open, unreadable } = journalIn('data').history();
    expect(events().map(({ id }) => id)).toEqual(
      expect.arrayContaining(writer.state().events.map(({ id }) => id)),
    );
    expect(open[0]?.state.exercises[0]?.done).toHaveLength(2);
    expect(open[0]?.state).toEqual(writer.state());
    expect(unreadable).toEqual([]);
    send(writer, { do: 'close', how: 'as-it-is' }, clock);
    writer.close();
    journal.release();
    expect(journalIn('data').history().sessions).toMatchObject([{ setsDone: 2 }]);
  });

  test('is whole as soon as the lifter leaves, without another set', () => {
    const journal = journalIn('data');
    const writer = journal.beginSession(aDay());
    lift(writer, clock);
    const month = join(home, 'data', 'journal', '2026-11');
    const [name = ''] = readdirSync(month);
    act(join(month, name));
    journal.release();
    expect(idsOf('data')).toEqual(writer.state().events.map(({ id }) => id));
    const again = journalIn('data').resumeSession(writer.session);
    expect(again.state().exercises[0]?.done).toHaveLength(1);
  });
});

test('a set is not called saved where a file took the place of the folder', () => {
  const journal = journalIn('data');
  const writer = journal.beginSession(aDay());
  lift(writer, clock);
  const before = writer.state();
  rmSync(join(home, 'data'), { recursive: true });
  writeFileSync(join(home, 'data'), 'not a folder');
  expect(() => send(writer, 'start', clock)).toThrow(/could not be read|Nothing was saved/);
  expect(writer.state()).toBe(before);
  rmSync(join(home, 'data'));
  lift(writer, clock);
  expect(journalIn('data').history().open[0]?.state.exercises[0]?.done).toHaveLength(2);
});

/** Things that stand where a file of a session should, or beside one. */
const NO_SESSION: Readonly<Record<string, (path: string) => void>> = {
  'a folder': (path) => mkdirSync(path),
  'a link in a circle': (path) => symlinkSync(path, path),
  'a link to nothing': (path) => symlinkSync(`${path}.none`, path),
  'a pipe': (path) => void execFileSync('mkfifo', [path]),
  'an endless device': (path) => symlinkSync('/dev/zero', path),
  'a huge file': (path) => {
    writeFileSync(path, '');
    truncateSync(path, 3e9);
  },
  'an empty file': (path) => writeFileSync(path, ''),
  'a file of zeroes': (path) => writeFileSync(path, Buffer.alloc(5000)),
  'a file in UTF-16': (path) => writeFileSync(path, Buffer.from('0123abcd {"v":1}\n', 'utf16le')),
  'a file of something else': (path) => writeFileSync(path, 'Dear diary,\ntoday I trained.\n'),
};

describe.skipIf(process.platform === 'win32')('beside the sessions stands', () => {
  test.each(Object.entries(NO_SESSION))('%s: it is named, and the rest is read', (_, put) => {
    const journal = journalIn('data');
    const session = train(journal, clock);
    const month = join(home, 'data', 'journal', '2026-11');
    const path = join(month, '2026-11-24-aaaaaa-bbbbbbbbbb.jsonl');
    put(path);
    // Longer ago than what another device is still sending.
    if (lstatSync(path).isFile()) utimesSync(path, 1, 1);
    const before = lstatSync(path);
    const again = journalIn('data');
    const { sessions, unreadable } = again.history();
    expect(sessions).toMatchObject([{ session }]);
    expect(unreadable).toMatchObject([
      { problem: { what: expect.stringContaining('2026-11-24-aaaaaa-bbbbbbbbbb.jsonl') } },
    ]);
    expect(again.repair()).toEqual([]);
    expect([lstatSync(path).size, lstatSync(path).mtimeMs]).toEqual([before.size, before.mtimeMs]);
    train(again, clock);
    expect(journalIn('data').history().sessions).toHaveLength(2);
  });

  test('a month that is a link to a folder: it is read', () => {
    const session = train(journalIn('data'), clock);
    const month = join(home, 'data', 'journal', '2026-11');
    renameSync(month, join(home, 'elsewhere'));
    symlinkSync(join(home, 'elsewhere'), month);
    expect(journalIn('data').history().sessions).toMatchObject([{ session }]);
    train(journalIn('data'), clock);
    const { sessions, unreadable } = journalIn('data').history();
    expect([sessions.length, unreadable]).toEqual([2, []]);
  });
});
