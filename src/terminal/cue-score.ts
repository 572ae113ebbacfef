import type { Cue, CueChoices, CueName } from './cue.ts';
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

const SCORES: {
  readonly [Name in CueName]: (
    cue: Extract<Cue, { cue: Name }>,
    spoken: CueChoices['spoken'],
  ) => Score;
} = {
  'rest-early': () => ({ bells: 1, flash: true, say: 'Ready', notice: 'Ready for the next set.' }),
  'rest-late': () => ({ bells: 2, flash: true, say: 'Lift', notice: 'The rest is over.' }),
  tick: ({ left }) => ({ ...QUIET, bells: 1, say: spokenNumber(left) }),
  go: () => ({ ...QUIET, bells: 2, flash: true, say: 'Go' }),
  'last-one': () => ({ ...QUIET, say: 'Last one' }),
  'cluster-done': () => ({ ...QUIET, bells: 1, flash: true, say: 'Done' }),
  'hold-reached': () => ({ ...QUIET, bells: 1, flash: true, say: 'Done' }),
  'rest-soon': ({ seconds }) => ({
    ...QUIET,
    say: seconds === 60 ? 'One minute left' : 'Ten seconds',
  }),
  next: (cue, spoken) => ({ ...QUIET, say: nextWords(cue, spoken) }),
  'session-done': () => ({ ...QUIET, say: 'Session done' }),
};

const UNITS = { kg: 'kilograms', lb: 'pounds' } as const;

/** `Back squat. Eighty kilograms, 6 reps. Put on 5 a side.`; in few words the load, and the lift where it is another. */
function nextWords(
  { lift, load, unit, aim, plates }: Extract<Cue, { cue: 'next' }>,
  spoken: CueChoices['spoken'],
): string {
  const amount = load === null ? 'body weight' : `${spokenNumber(load)} ${UNITS[unit]}`;
  if (spoken === 'few') return [lift, amount].filter(Boolean).join(', ');
  const sentences = [lift, `${amount}, ${aim}`, plates].filter((one) => one !== null);
  return sentences.map((one) => `${one.charAt(0).toUpperCase()}${one.slice(1)}.`).join(' ');
}

/** What a cue does on each channel, before the lifter's other choices. */
export function cueScore(cue: Cue, spoken: CueChoices['spoken']): Score {
  // The table is keyed by the cue's own name, which the compiler cannot follow.
  return (SCORES[cue.cue] as (cue: Cue, spoken: CueChoices['spoken']) => Score)(cue, spoken);
}
