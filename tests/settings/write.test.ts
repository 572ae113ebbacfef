import {
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, expect, test } from 'vitest';
import { readSettings } from '../../src/settings/read-settings.ts';
import { DEFAULT_SETTINGS } from '../../src/settings/settings.ts';
import { writeSettings } from '../../src/settings/write-settings.ts';

const home = mkdtempSync(join(tmpdir(), 'holdfast-'));
afterEach(() => rmSync(home, { recursive: true, force: true }));

test.skipIf(process.platform === 'win32')('nobody else may read what is set', () => {
  const folder = join(home, 'config', 'holdfast');
  expect(writeSettings(folder, { bell: false })).toEqual({ ...DEFAULT_SETTINGS, bell: false });
  const mode = (path: string) => statSync(path).mode & 0o777;
  expect(mode(folder).toString(8)).toBe('700');
  expect(mode(join(folder, 'settings.json')).toString(8)).toBe('600');
});

test('where there is no file yet, none is damaged', () => {
  const folder = join(home, 'none');
  expect(readSettings(folder)).toMatchObject({
    settings: DEFAULT_SETTINGS,
    isDamaged: false,
    problem: null,
  });
});

test('a damaged file is put aside as it was, a good one is not, and what was good holds on', () => {
  const folder = join(home, 'aside');
  mkdirSync(folder, { recursive: true });
  writeSettings(folder, { bell: false });
  writeSettings(folder, { theme: 'plain' });
  const usual = ['settings.json', 'settings.last-good.json'];
  expect(readdirSync(folder).toSorted()).toEqual(usual);
  writeFileSync(join(folder, 'settings.json'), '{ "bell": fal');
  expect(writeSettings(folder, { theme: 'colour' })).toMatchObject({
    bell: false,
    theme: 'colour',
  });
  expect(readdirSync(folder).toSorted()).toEqual(['settings.damaged.json', ...usual]);
  expect(readFileSync(join(folder, 'settings.damaged.json'), 'utf8')).toBe('{ "bell": fal');
});

test('what cannot be written is refused in a sentence', () => {
  const folder = join(home, 'no-folder');
  mkdirSync(home, { recursive: true });
  writeFileSync(folder, '');
  expect(() => writeSettings(folder, { bell: false })).toThrow('The settings could not be written');
});
