import { readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import type * as z from 'zod';
import { diskWords } from '../text/disk-words.ts';
import type { Problem } from '../text/problem.ts';
import { andText } from '../text/words.ts';
import { DEFAULT_SETTINGS, SETTING_SCHEMAS, type Settings } from './settings.ts';

export const SETTINGS_NAME = 'settings';
export const LAST_GOOD_NAME = 'settings.last-good';

export interface SettingsRead {
  readonly settings: Settings;
  /** What this version does not understand, as it stands in the file: keys it does not know, and values. */
  readonly foreign: Readonly<Record<string, unknown>>;
  /** The file as a whole could not be used. */
  readonly isDamaged: boolean;
  /** Said to the lifter where the file could not be used as it stands. */
  readonly problem: Problem | null;
}

/**
 * Settings of this machine out of `folder`. A value that is not understood costs its own setting
 * alone. A damaged file never stops a session: the copy of the last good one is used in its place,
 * then the defaults, and the problem says so.
 */
export function readSettings(folder: string): SettingsRead {
  const path = join(folder, `${SETTINGS_NAME}.json`);
  const present = readOne(path);
  if (present.kind === 'missing') {
    return { settings: DEFAULT_SETTINGS, foreign: {}, isDamaged: false, problem: null };
  }
  if (present.kind === 'good') {
    const { settings, foreign, odd } = present;
    return {
      settings,
      foreign,
      isDamaged: false,
      problem: odd.length > 0 ? notUnderstood(path, odd) : null,
    };
  }
  const copy = readOne(join(folder, `${LAST_GOOD_NAME}.json`));
  const fallback = copy.kind === 'good' ? copy : { settings: DEFAULT_SETTINGS, foreign: {} };
  return {
    settings: fallback.settings,
    foreign: fallback.foreign,
    isDamaged: true,
    problem: {
      what: `The settings in ${path} cannot be used: ${present.found}.`,
      why:
        copy.kind === 'good'
          ? 'The copy of the last good settings is used in their place.'
          : 'The defaults are used in their place; no training data is touched.',
      fix: 'Mend or delete that file; the next change of a setting writes a new one.',
    },
  };
}

const notUnderstood = (path: string, odd: readonly string[]): Problem => ({
  what: `In the settings in ${path} this version does not understand ${andText(odd)}.`,
  ...(odd.length === 1
    ? {
        why: 'It is kept there as it is, the default is used in its place, and all other settings hold.',
        fix: 'A newer version may have written it; mend it otherwise.',
      }
    : {
        why: 'They are kept there as they are, the defaults are used in their place, and all other settings hold.',
        fix: 'A newer version may have written them; mend them otherwise.',
      }),
});

type OneFile =
  | { kind: 'missing' }
  | { kind: 'bad'; found: string }
  | {
      kind: 'good';
      settings: Settings;
      foreign: Readonly<Record<string, unknown>>;
      /** `theme: "dark"` of each value that is not understood. */
      odd: readonly string[];
    };

const MOST_BYTES = 1024 * 1024;

function readOne(path: string): OneFile {
  let text: string;
  try {
    // A pipe or a device would never come to an end.
    const about = statSync(path);
    if (!about.isFile()) return { kind: 'bad', found: 'it is no file' };
    if (about.size > MOST_BYTES) return { kind: 'bad', found: 'it is too large' };
    text = readFileSync(path, 'utf8');
  } catch (error) {
    const isMissing = (error as NodeJS.ErrnoException).code === 'ENOENT';
    return isMissing ? { kind: 'missing' } : { kind: 'bad', found: diskWords(error) };
  }
  let data: unknown;
  try {
    data = JSON.parse(text);
  } catch {
    return { kind: 'bad', found: 'it is not JSON' };
  }
  if (data === null || typeof data !== 'object' || Array.isArray(data)) {
    return { kind: 'bad', found: 'it is no list of settings' };
  }
  const schemas: Readonly<Record<string, () => z.ZodType>> = SETTING_SCHEMAS;
  const understood: Record<string, unknown> = {};
  const foreign: Record<string, unknown> = {};
  const odd: string[] = [];
  for (const [key, value] of Object.entries(data)) {
    const schema = Object.hasOwn(schemas, key) ? schemas[key] : undefined;
    const read = schema?.().safeParse(value);
    if (read?.success) understood[key] = read.data;
    else foreign[key] = value;
    if (read?.success === false) odd.push(`${key}: ${JSON.stringify(value).slice(0, 60)}`);
  }
  return { kind: 'good', settings: { ...DEFAULT_SETTINGS, ...understood }, foreign, odd };
}
