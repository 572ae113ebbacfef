import type { Cue, CueName } from './cue.ts';
import { spokenNumber } from './spoken-number.ts';

/** How a cue sounds and looks on each channel. */
export interface Score {
  /** Strokes of the bell. */
  readonly bells: 0 | 1 | 2;
  readonly flash: boolean;
  /** Words for the speech program; null keeps it silent. */
  readonly say: string | null;
  /** Words for the desktop; null shows none. */
  readonly notice: string | null;
}

const QUIET: Score = { bells: 0, flash: false, say: null, notice: null };

const SCORES: { readonly [Name in CueName]: (cue: Extract<Cue, { cue: Name }>) => Score } = {
  'rest-early': () => ({ bells: 1, flash: true, say: 'Ready', notice: 'Ready for the next set.' }),
  'rest-late': () => ({ bells: 2, flash: true, say: 'Lift', notice: 'The rest is over.' }),
  tick: ({ left }) => ({ ...QUIET, bells: 1, say: spokenNumber(left) }),
  go: () => ({ ...QUIET, bells: 2, flash: true, say: 'Go' }),
  'last-one': () => ({ ...QUIET, say: 'Last one' }),
  'cluster-done': () => ({ ...QUIET, bells: 1, flash: true, say: 'Done' }),
  'hold-reached': () => ({ ...QUIET, bells: 1, flash: true, say: 'Done' }),
  load: ({ amount }) => ({ ...QUIET, say: `Load ${spokenNumber(amount)}` }),
  'session-done': () => ({ ...QUIET, say: 'Session done' }),
};

/** What a cue does on each channel, before the lifter's choices. */
export function cueScore(cue: Cue): Score {
  // The table is keyed by the cue's own name, which the compiler cannot follow.
  return (SCORES[cue.cue] as (cue: Cue) => Score)(cue);
}
