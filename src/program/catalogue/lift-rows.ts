import type { Station } from '../../training/gear.ts';
import type { Joint, Loading, Shares } from '../../training/lift.ts';

/** One lift of the catalogue as a person writes it down; what is left out has the usual value. */
export interface LiftRow {
  readonly name: string;
  readonly loading: Loading;
  readonly kind: 'compound' | 'isolation';
  /** 1 for a muscle that moves the load, 0.5 for one that helps or holds. Which is which: ours, by anatomy; how they count: Pelland 2024. */
  readonly trains: Shares;
  /** One side at a time. */
  readonly perSide?: true;
  readonly counts?: 'seconds';
  /** Dumbbells held at once; two when left out. */
  readonly hands?: 1;
  /** Share of body weight that is lifted, and who says so. Every body weight lift in reps has one. */
  readonly bodyShare?: readonly [share: number, source: string];
  /** Joints that it loads hard. Common practice. */
  readonly joints?: readonly Joint[];
  readonly needs?: readonly Station[];
  readonly form: string;
  readonly caution?: string;
}

export type LiftRows = Readonly<Record<string, LiftRow>>;

export const EBBEN = 'Ebben 2011, JSCR 25(10):2891–2894';
export const EBBEN_MEMORY = 'Ebben 2011, JSCR 25(10):2891–2894, from memory';
/** Masses of the body's segments; shares of lifts worked out from them are ours. */
export const SEGMENTS =
  'ours, from segment masses in Winter, Biomechanics of Human Movement (memory)';
