import { typedCommands } from '../entry.ts';
import { type Acting, ask, draftOf, type Outcome, tell, withDraft } from '../outcome.ts';
import { HELP, type KeyRow, LEAVE, SETTINGS_KEY } from '../screen.ts';
import { accepts } from './conditions.ts';
import { NUMBERS, OLDER_SETS } from './entry-keys.ts';
import { MAIN, SAVE } from './main-keys.ts';
import { EXERCISE_KEYS, SESSION_KEYS } from './plan-keys.ts';
import { AFTER_SET, RUNNING, SETS } from './set-keys.ts';
import { UNDO_KEYS } from './undo-keys.ts';

const leaves = ({ effects }: Outcome): boolean => effects.some((effect) => effect.do === 'leave');

/** Will what was typed be out of sight? */
const leadsAway = (outcome: Outcome): boolean =>
  outcome.ui.screen.kind !== 'runner' ||
  leaves(outcome) ||
  outcome.effects.some((effect) => effect.do === 'send' && effect.to !== undefined);

/** What was typed is saved, not lost, by an act that leads away from it. */
export function savingTyped(acting: Acting, outcome: Outcome): Outcome {
  if (!leadsAway(outcome)) return outcome;
  // Who leaves must not be held by numbers that no set can have.
  const refused = (why: string) => (leaves(outcome) ? outcome : tell(acting, why));
  const typed = typedCommands(acting.model);
  if (typeof typed === 'string') return refused(typed);
  const why = typed.map((command) => accepts(acting, command)).find((may) => may !== true);
  if (why !== undefined) return refused(why);
  if (typed.length === 0) return outcome;
  return { ...outcome, effects: [{ do: 'send', commands: typed }, ...outcome.effects] };
}

const saving = (row: KeyRow): KeyRow => ({
  ...row,
  press: (acting) => savingTyped(acting, row.press(acting)),
});

/** Keys of a session that runs. */
export const RUNNER_KEYS: readonly KeyRow[] = [
  MAIN,
  SAVE,
  ...NUMBERS,
  ...UNDO_KEYS,
  ...AFTER_SET.map(saving),
  ...OLDER_SETS,
  ...[...RUNNING, ...EXERCISE_KEYS, ...SETS, ...SESSION_KEYS, SETTINGS_KEY].map(saving),
  HELP,
  saving({
    ...LEAVE,
    // `esc` first puts away what was typed; `q` means to leave.
    press: (acting) =>
      acting.name === 'esc' && draftOf(acting.model)
        ? withDraft(acting, null)
        : ask(acting, { do: 'leave', status: 0 }),
  }),
];
