import { mkdtempSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, expect, test } from 'vitest';
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
