import type { SessionWriter } from '../journal/disk/journal.ts';
import type { SessionCommand } from '../session/command.ts';
import { decide } from '../session/decide.ts';
import { dateOf, setsAsked, setsCountedIn } from '../session/results.ts';
import type { SessionState } from '../session/state.ts';
import { shortDayWords } from '../text/day-words.ts';
import type { Problem } from '../text/problem.ts';
import { elapsedMs, type Reading } from '../training/reading.ts';
import { orProblem } from './once.ts';

/** A session whose commands are decided, written to disk, and only then believed. */
export function runSession(
  writer: Pick<SessionWriter, 'state' | 'write'>,
  now: () => Reading,
): LiveSession {
  return {
    state: writer.state,
    now,
    send: (command) => {
      const at = now();
      const decided = decide(writer.state(), command, at);
      if (!decided.ok) return decided.problem;
      return orProblem(() => {
        writer.write(decided.facts, at);
        return null;
      });
    },
  };
}

/** A session that runs: what the screens see of it. */
export interface LiveSession {
  readonly state: () => SessionState;
  /**
   * Carries a command out. Returns once its facts are on disk; a problem means that nothing
   * changed, on disk or in the state.
   */
  readonly send: (command: SessionCommand) => Problem | null;
  readonly now: () => Reading;
}

const STALE_MS = 12 * 60 * 60 * 1000;

/** Did nothing happen in it for so long that it is asked about before it goes on? */
export const isStale = ({ lastAt }: SessionState, now: Reading): boolean =>
  elapsedMs(lastAt, now) > STALE_MS;

/** Which session is open, and how far it has come: `Day A, begun Wed 25 Nov: 2 of 7 sets done.` */
export function openWords(session: SessionState): string {
  const { prescription } = session;
  const begun = shortDayWords(dateOf(session).toString());
  const done = `${setsCountedIn(session)} of ${setsAsked(prescription.exercises)} sets done`;
  return `Day ${prescription.day}, begun ${begun}: ${done}.`;
}
