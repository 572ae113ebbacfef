import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Problem } from '../text/problem.ts';
import { DEFAULT_SETTINGS, type Settings, settingsSchema } from './settings.ts';

export const SETTINGS_NAME = 'settings';
export const LAST_GOOD_NAME = 'settings.last-good';

export interface SettingsRead {
  readonly settings: Settings;
  /** Said to the lifter where the file could not be used as it stands. */
  readonly problem: Problem | null;
}

/**
 * Settings of this machine out of `folder`. A damaged file never stops a session: the copy of the
 * last good one is used in its place, then the defaults, and the problem says so.
 */
export function readSettings(folder: string): SettingsRead {
  const present = readOne(join(folder, `${SETTINGS_NAME}.json`));
  if (present.kind === 'missing') return { settings: DEFAULT_SETTINGS, problem: null };
  if (present.kind === 'good') return { settings: present.settings, problem: null };
  const copy = readOne(join(folder, `${LAST_GOOD_NAME}.json`));
  const fallback = copy.kind === 'good' ? copy.settings : DEFAULT_SETTINGS;
  return {
    settings: fallback,
    problem: {
      what: `The settings in ${join(folder, `${SETTINGS_NAME}.json`)} cannot be used: ${present.found}.`,
      why:
        copy.kind === 'good'
          ? 'The copy of the last good settings is used in their place.'
          : 'The defaults are used in their place; no training data is touched.',
      fix: 'Mend or delete that file; the next change of a setting writes a new one.',
    },
  };
}

type OneFile =
  | { kind: 'missing' }
  | { kind: 'bad'; found: string }
  | { kind: 'good'; settings: Settings };

function readOne(path: string): OneFile {
  let text: string;
  try {
    text = readFileSync(path, 'utf8');
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code ?? 'an unknown error';
    return code === 'ENOENT' ? { kind: 'missing' } : { kind: 'bad', found: code };
  }
  let data: unknown;
  try {
    data = JSON.parse(text);
  } catch {
    return { kind: 'bad', found: 'it is not JSON' };
  }
  const checked = settingsSchema.safeParse(data);
  if (checked.success) return { kind: 'good', settings: checked.data };
  const first = checked.error.issues[0];
  return { kind: 'bad', found: `${first?.path.join('.') || 'the file'}: ${first?.message}` };
}
