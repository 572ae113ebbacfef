import type { SessionCommand } from '../../session/command.ts';
import { decide } from '../../session/decide.ts';
import { problemText } from '../../text/problem.ts';
import type { Seen } from '../outcome.ts';

export const NO_EXERCISE = 'Every exercise is done.';

/** What the session itself says to a command: true, or the sentence why not. */
export function accepts({ model }: Seen, command: SessionCommand): true | string {
  if (!model.session) return 'No session is open.';
  const decided = decide(model.session, command, model.now);
  return decided.ok ? true : problemText(decided.problem);
}
