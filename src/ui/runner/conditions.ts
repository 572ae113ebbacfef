import { presentLoad } from '../../session/aim.ts';
import type { SessionCommand } from '../../session/command.ts';
import { decide } from '../../session/decide.ts';
import type { ExerciseState } from '../../session/state.ts';
import { problemText } from '../../text/problem.ts';
import type { Seen } from '../outcome.ts';

export const NO_EXERCISE = 'Every exercise is done.';

/** Can the gear of today make no load at all for it, so that another lift is asked for? */
export const lacksGear = (state: ExerciseState): boolean =>
  presentLoad(state) === null && state.prescribed.why.some(({ rule }) => rule === 'gear-missing');

/** Why no load can be told for it. */
export const gearLackText = (name: string): string =>
  `Your gear makes no load for ${name}: space asks for another lift.`;

/** What the session itself says to a command: true, or the sentence why not. */
export function accepts({ model }: Seen, command: SessionCommand): true | string {
  if (!model.session) return 'No session is open.';
  const decided = decide(model.session, command, model.now);
  return decided.ok ? true : problemText(decided.problem);
}
