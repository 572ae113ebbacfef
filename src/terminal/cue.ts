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

export type CueName = Cue['cue'];

/** The channels that the lifter wants. */
export interface CueChoices {
  readonly bell: boolean;
  readonly flash: boolean;
  readonly speech: boolean;
  /** Whole sentences, or as few words as will do. */
  readonly spoken: 'full' | 'few';
  readonly notification: boolean;
}
