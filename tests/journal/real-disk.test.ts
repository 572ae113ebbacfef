import {
  chmodSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  rmSync,
  statSync,
  symlinkSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { nodeDevice } from '../../src/journal/disk/device.ts';
import { nodeFiles } from '../../src/journal/disk/files.ts';
import { openJournal } from '../../src/journal/disk/open-journal.ts';
import { kilograms } from '../../src/training/mass.ts';
import { aDay, handClock, lift, train } from './a-journal.ts';

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
    expect(() => journalIn('data').beginSession(aDay())).toThrow('this user may not write there');
  },
);

test('a file where the folder should be is a sentence', () => {
  nodeFiles.close(nodeFiles.create(join(home, 'data')));
  expect(() => journalIn('data').beginSession(aDay())).toThrow(
    `Nothing was saved in ${join(home, 'data')}: a file stands where a folder should be. Choose another folder with --data.`,
  );
  expect(readdirSync(join(home, 'state'))).toEqual([]);
});
