import type { SessionWriter } from '../journal/disk/journal.ts';
import { decide } from '../session/decide.ts';
import type { Reading } from '../training/reading.ts';
import type { LiveSession } from './live-session.ts';
import { orProblem } from './or-problem.ts';

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
