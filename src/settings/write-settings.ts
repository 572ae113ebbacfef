import { copyFileSync, existsSync, mkdirSync, renameSync } from 'node:fs';
import { join } from 'node:path';
import Conf from 'conf';
import { diskWords } from '../text/disk-words.ts';
import { Refusal } from '../text/problem.ts';
import { LAST_GOOD_NAME, readSettings, SETTINGS_NAME } from './read-settings.ts';
import { type Settings, settingsSchema } from './settings.ts';

/**
 * Changes some settings of this machine and returns them all. What is written is read back before
 * the copy of the last good file is renewed, since a nearly full disk can cut a file short without
 * an error.
 *
 * This file loads `conf`, which is slow to load: import it only where a setting is written.
 */
export function writeSettings(folder: string, change: Partial<Settings>): Settings {
  const path = join(folder, `${SETTINGS_NAME}.json`);
  const before = readSettings(folder);
  const wanted = settingsSchema().parse({ ...before.settings, ...change });
  try {
    mkdirSync(folder, { recursive: true, mode: 0o700 });
    if (before.isDamaged && existsSync(path))
      renameSync(path, join(folder, 'settings.damaged.json'));
    const conf = new Conf<Settings & Record<string, unknown>>({
      projectName: 'holdfast',
      cwd: folder,
      configName: SETTINGS_NAME,
      configFileMode: 0o600,
    });
    // What this version does not understand stays as it is, until the lifter changes that very setting.
    const foreign = Object.entries(before.foreign).filter(([key]) => !Object.hasOwn(change, key));
    conf.store = { ...wanted, ...Object.fromEntries(foreign) };
  } catch (error) {
    throw unwritable(path, diskWords(error));
  }
  const after = readSettings(folder);
  if (after.isDamaged || JSON.stringify(after.settings) !== JSON.stringify(wanted)) {
    throw unwritable(path, 'what was read back is not what was written');
  }
  try {
    copyFileSync(path, join(folder, `${LAST_GOOD_NAME}.json`));
  } catch {
    // The settings themselves are written; the copy is only for the day that they are damaged.
  }
  return after.settings;
}

function unwritable(path: string, found: string): Refusal {
  return new Refusal({
    what: `The settings could not be written to ${path}: ${found}.`,
    why: 'They are as they were before.',
    fix: 'See that the folder can be written to and that the disk has room, then try again.',
  });
}
