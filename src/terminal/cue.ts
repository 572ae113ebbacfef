import { spokenNumber } from './speech.ts';

/** What is rung, flashed, said or shown outside the window. */
export type Cue =
  /** The early end of a rest: the next set may start. */
  | { readonly cue: 'rest-early' }
  /** The late end of a rest: it should have started. */
  | { readonly cue: 'rest-late' }
  /** One of the seconds before a cluster's rest ends. */
  | { readonly cue: 'tick'; readonly left: 1 | 2 | 3 }
  /** A mini-set has started by itself. */
  | { readonly cue: 'go' }
  /** The next mini-set is the last one. */
  | { readonly cue: 'last-one' }
  /** The cluster is over. */
  | { readonly cue: 'cluster-done' }
  /** One side of a timed hold has reached its aim, and the other is next. */
  | { readonly cue: 'other-side' }
  /** A timed hold has reached its aim. */
  | { readonly cue: 'hold-reached' }
  /** Before the early end of a long rest. */
  | { readonly cue: 'rest-soon'; readonly seconds: 60 | 10 }
  /** Another lift or load is next: what an eye would look for. */
  | {
      readonly cue: 'next';
      /** Null where only the load is another one. */
      readonly lift: string | null;
      /** In `unit`; null for body weight alone. */
      readonly load: number | null;
      readonly unit: 'kg' | 'lb';
      /** `6 reps`. */
      readonly aim: string;
      /** `take off 5, put on 10 a side`; null where nothing changes. */
      readonly plates: string | null;
    }
  | { readonly cue: 'session-done' };

type CueName = Cue['cue'];

/** The channels that the lifter wants. */
export interface CueChoices {
  readonly bell: boolean;
  readonly flash: boolean;
  readonly speech: boolean;
  /** Whole sentences, or as few words as will do. */
  readonly spoken: 'full' | 'few';
  readonly notification: boolean;
}

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
  'other-side': () => ({ ...QUIET, bells: 1, flash: true, say: 'Other side' }),
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
