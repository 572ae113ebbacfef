import type { SessionCommand } from '../../session/command.ts';
import { decide } from '../../session/decide.ts';
import { problemText } from '../../text/problem.ts';
import type { Seen } from '../outcome.ts';
import type { Phase } from '../phase.ts';

export const NO_EXERCISE = 'Every exercise is done.';

/** What the session itself says to a command: true, or the sentence why not. */
export function accepts({ model }: Seen, command: SessionCommand): true | string {
  if (!model.session) return 'No session is open.';
  const decided = decide(model.session, command, model.now);
  return decided.ok ? true : problemText(decided.problem);
}

export const BETWEEN: readonly Phase['kind'][] = ['ready', 'resting', 'over'];

/** Only in some phases, else the sentence. */
export const during =
  (reason: string, kinds: readonly Phase['kind'][] = BETWEEN) =>
  ({ phase }: Seen): true | string =>
    phase && kinds.includes(phase.kind) ? true : reason;
