import type { SessionCommand } from '../session/command.ts';
import type { SessionState } from '../session/state.ts';
import type { Problem } from '../text/problem.ts';
import type { Reading } from '../training/reading.ts';

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
