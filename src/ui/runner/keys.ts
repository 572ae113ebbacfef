import type { SessionCommand } from '../../session/command.ts';
import { decide } from '../../session/decide.ts';
import { problemText } from '../../text/problem.ts';
import { typedCommands } from '../entry.ts';
import type { Model } from '../model.ts';
import { type Acting, ask, draftOf, type Outcome, tell, withDraft } from '../outcome.ts';
import { HELP, type KeyRow, LEAVE, SETTINGS_KEY } from '../screen.ts';
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
  const typed = typedCommands(acting.model);
  const commands = typeof typed === 'string' ? [] : typed;
  const refused = typeof typed === 'string' ? typed : refusalOf(commands, acting.model);
  // Who leaves must not be held by numbers that no set can have.
  if (refused !== null) return leaves(outcome) ? outcome : tell(acting, refused);
  if (commands.length === 0) return outcome;
  return { ...outcome, effects: [{ do: 'send', commands }, ...outcome.effects] };
}

function refusalOf(commands: readonly SessionCommand[], { session, now }: Model): string | null {
  if (!session) return null;
  for (const command of commands) {
    const decided = decide(session, command, now);
    if (!decided.ok) return problemText(decided.problem);
  }
  return null;
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
