import type { Exercise } from '../program.ts';

/** One way to do a lift on a day, with all that a search needs to know of it. */
export interface Option {
  readonly exercise: Exercise;
  /** Straight sets, or the sets of the cluster. */
  readonly sets: number;
  /** Hard sets in the order of MUSCLES, indirect ones half. */
  readonly volume: Float64Array;
  /** Places of the muscles that it trains. */
  readonly trained: readonly number[];
  /** Muscles trained directly, a bit each. */
  readonly direct: number;
  /** Seconds when it is the first for its direct muscles on a day, and when it is not. */
  readonly seconds: { readonly first: number; readonly later: number };
  /** How much a draft would rather take another lift; 0 is the best. */
  readonly cost: number;
  /** Where it comes in a day, the lowest first; no two lifts have the same. */
  readonly order: number;
  /** Groups of movements that it covers as a compound, a bit each. */
  readonly groups: number;
}

/** A lift with the sets that it may have, the fewest first; all are the same exercise otherwise. */
export type OptionRow = readonly Option[];
