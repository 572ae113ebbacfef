import { ask, draftOf, withDraft } from '../outcome.ts';
import { HELP, type KeyRow, LEAVE, SETTINGS_KEY } from '../screen.ts';
import { NUMBERS, OLDER_SETS } from './entry-keys.ts';
import { MAIN, SAVE } from './main-keys.ts';
import { EXERCISE_KEYS, SESSION_KEYS } from './plan-keys.ts';
import { AFTER_SET, RUNNING, SETS } from './set-keys.ts';
import { UNDO_KEYS } from './undo-keys.ts';

/** Keys of a session that runs. */
export const RUNNER_KEYS: readonly KeyRow[] = [
  MAIN,
  SAVE,
  ...NUMBERS,
  ...UNDO_KEYS,
  ...AFTER_SET,
  ...OLDER_SETS,
  ...RUNNING,
  ...EXERCISE_KEYS,
  ...SETS,
  ...SESSION_KEYS,
  SETTINGS_KEY,
  HELP,
  {
    ...LEAVE,
    // `esc` first puts away what was typed; `q` means it.
    press: (acting) =>
      acting.name === 'esc' && draftOf(acting.model)
        ? withDraft(acting, null)
        : ask(acting, { do: 'leave', status: 0 }),
  },
];
