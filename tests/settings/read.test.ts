import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { readSettings } from '../../src/settings/read-settings.ts';
import { DEFAULT_SETTINGS } from '../../src/settings/settings.ts';

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'holdfast-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const read = (text: string) => {
  writeFileSync(join(folder, 'settings.json'), text);
  return readSettings(folder);
};

test('by itself a rest rings and flashes, and does nothing that others would hear words of or a terminal asks for', () => {
  const { bell, flash, speech, notification, taps } = DEFAULT_SETTINGS;
  expect({ bell, flash }).toEqual({ bell: true, flash: true });
  expect({ speech, notification, taps }).toEqual({
    speech: false,
    notification: false,
    taps: false,
  });
});

test('a value that is not understood costs its own setting alone, and is named; a key that no version knows is not', () => {
  const long = 'x'.repeat(100);
  const { settings, foreign, isDamaged, problem } = read(
    JSON.stringify({ bell: false, theme: long, later: 1 }),
  );
  expect(settings).toEqual({ ...DEFAULT_SETTINGS, bell: false });
  expect(foreign).toEqual({ theme: long, later: 1 });
  expect(isDamaged).toBe(false);
  // Of a long one, sixty letters as they stand in the file.
  expect(problem?.what).toMatch(/does not understand theme: "x{59}\.$/);
  expect(problem?.why).toMatch(/^It is kept .* the default is used/);
  const both = read('{ "theme": "dark", "bell": 3 }').problem;
  expect(both?.what).toContain('theme: "dark" and bell: 3');
  expect(both?.why).toMatch(/^They are kept .* the defaults are used/);
  expect(read('{ "later": 1 }').problem).toBeNull();
});

test.each([
  ['null', 'it is no list of settings'],
  ['"bell"', 'it is no list of settings'],
  ['3', 'it is no list of settings'],
  ['["bell"]', 'it is no list of settings'],
  ['{ "bell": fal', 'it is not JSON'],
])('%s is no settings: %s', (text, found) => {
  const { settings, isDamaged, problem } = read(text);
  expect({ settings, isDamaged }).toEqual({ settings: DEFAULT_SETTINGS, isDamaged: true });
  expect(problem?.what).toContain(found);
  expect(problem?.why).toContain('The defaults are used');
  writeFileSync(join(folder, 'settings.last-good.json'), '{ "bell": false }');
  const again = readSettings(folder);
  expect(again.settings).toEqual({ ...DEFAULT_SETTINGS, bell: false });
  expect(again.problem?.why).toContain('last good settings is used');
});

test('a file of a mebibyte is read, a larger one is not, nor what is no file', () => {
  const most = 1024 * 1024;
  expect(read('{}'.padEnd(most)).isDamaged).toBe(false);
  expect(read('{}'.padEnd(most + 1)).problem?.what).toContain('it is too large');
  rmSync(join(folder, 'settings.json'));
  mkdirSync(join(folder, 'settings.json'));
  expect(readSettings(folder).problem?.what).toContain('it is no file');
});
