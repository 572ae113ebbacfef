import { type Mass, massOf, plus, type Quantity, type Unit } from './mass.ts';
import type { Piece } from './sums-of-pieces.ts';

/** Plates of one kind. */
export interface PlateKind {
  readonly stamped: Quantity;
  /** How many single plates are owned; two make a pair on a bar. */
  readonly count: number;
  /** What the scale says of one plate, where the lifter weighed it; the stamp counts otherwise. */
  readonly measured?: Quantity;
}

export interface Bar {
  /** What programs and `--bar` call it: `bar`, `short bar`. */
  readonly name: string;
  /** Real mass of the empty bar. */
  readonly mass: Quantity;
  /** Mass of both collars together. */
  readonly collars: Quantity;
}

export interface DumbbellHandle {
  /** Real mass of one empty handle with its collars. */
  readonly mass: Quantity;
  /** How many such handles are owned. */
  readonly count: number;
}

export interface Stack {
  readonly name: string;
  readonly lowest: Quantity;
  readonly step: Quantity;
  readonly highest: Quantity;
}

export interface Band {
  readonly name: string;
  /** How much body weight the band takes at the bottom of the movement. */
  readonly assistance: Quantity;
}

/** What lifts are done on or under. */
export const STATIONS = ['bench', 'rack', 'chin-up bar', 'dip station'] as const;
export type Station = (typeof STATIONS)[number];

/**
 * The most that is taken for gear, typed or read: more is a slip of the finger, or a file that was
 * written by something else. Ours.
 */
export const GEAR_LIMITS = {
  /** Kilograms or pounds of one thing. */
  amount: 1000,
  /** Letters of a name. */
  name: 40,
  /** Of one kind. */
  pieces: 200,
  /** Kinds of bars, of plates, … */
  kinds: 100,
} as const;

/** What the lifter owns. Plain data: it is stored as it is, in settings and in the journal. */
export interface Gear {
  /** The unit that this gear is thought of in. */
  readonly unit: Unit;
  /** The first bar is the one used when an exercise names none. */
  readonly bars: readonly Bar[];
  readonly plates: readonly PlateKind[];
  /** Fixed dumbbells: the mass of one, and how many of that mass are owned (two for a pair). */
  readonly dumbbells: readonly { readonly stamped: Quantity; readonly count: number }[];
  readonly handles: readonly DumbbellHandle[];
  readonly stacks: readonly Stack[];
  /** Can plates be hung from the body (belt, vest)? */
  readonly belt: boolean;
  readonly bands: readonly Band[];
  /** Step of `free` loads: sandbags, kettlebells, anything else. */
  readonly freeStep: Quantity;
  /** Are there safeties (pins, straps, arms) for squat and bench? */
  readonly safeties: boolean;
  /** Missing where nobody said: then none of them is taken to be lacking. */
  readonly stations?: readonly Station[];
}

export const hasStation = ({ stations }: Gear, station: Station): boolean =>
  stations === undefined || stations.includes(station);

/** What one plate really weighs. */
export const plateQuantity = (plate: PlateKind): Quantity => plate.measured ?? plate.stamped;

/** Plates owned, the heaviest first, so that every list of plates is in the order of loading. */
export function platesOf(gear: Gear): readonly PlateKind[] {
  return [...gear.plates].sort((a, b) => massOf(plateQuantity(b)) - massOf(plateQuantity(a)));
}

/** Plates as they go on both ends of so many bars at once: a piece is one plate on each side of one bar. */
export function pairsOf(plates: readonly PlateKind[], bars: 1 | 2): readonly Piece[] {
  return plates.map((plate) => {
    const { amount, unit } = plateQuantity(plate);
    return { one: { amount: 2 * amount, unit }, count: Math.floor(plate.count / (2 * bars)) };
  });
}

/** Plates one by one, as they hang from a belt. */
export function singlesOf(plates: readonly PlateKind[]): readonly Piece[] {
  return plates.map((plate) => ({ one: plateQuantity(plate), count: plate.count }));
}

export const bandsOf = ({ bands }: Gear): readonly Piece[] =>
  bands.map(({ assistance }) => ({ one: assistance, count: 1 }));

/** The bar of that name, or the first one for null; undefined where it is not owned. */
export function barOf({ bars }: Gear, name: string | null): Bar | undefined {
  return name === null ? bars[0] : bars.find((bar) => bar.name === name);
}

/** Mass of the bar with both collars and nothing on it. */
export const emptyMass = (bar: Bar): Mass => plus(massOf(bar.mass), massOf(bar.collars));

export const handlesOf = ({ handles }: Gear, hands: 1 | 2): readonly DumbbellHandle[] =>
  handles.filter(({ count }) => count >= hands);

export const fixedOf = ({ dumbbells }: Gear, hands: 1 | 2): readonly Mass[] =>
  dumbbells.filter(({ count }) => count >= hands).map(({ stamped }) => massOf(stamped));
