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
  /** The next load, in the lifter's unit. */
  | { readonly cue: 'load'; readonly amount: number }
  | { readonly cue: 'session-done' };

export type CueName = Cue['cue'];

/** The channels that the lifter wants. */
export interface CueChoices {
  readonly bell: boolean;
  readonly flash: boolean;
  readonly speech: boolean;
  readonly notification: boolean;
}
