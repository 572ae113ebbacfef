import {
  type Band,
  bandsOf,
  barOf,
  type DumbbellHandle,
  type Gear,
  handlesOf,
  type PlateKind,
  plateQuantity,
  platesOf,
  singlesOf,
} from './gear.ts';
import type { Loading } from './lift.ts';
import { type Mass, massOf, minus, NO_MASS } from './mass.ts';
import { type LoadedBar, loadBar, type PlateChange, plateChange, sideFor } from './plates.ts';
import { pieceSums } from './sums-of-pieces.ts';

/** What an exercise is loaded on. */
export interface LoadedOn {
  readonly loading: Loading;
  readonly hands: 1 | 2;
  /** Name of the bar; null for the first one owned. */
  readonly bar: string | null;
  /** Loads by a step of the program's own say nothing about plates. */
  readonly step: Mass | null;
}

/** Something that plates go onto. */
interface Carrier {
  /** `bar`, `short bar`, `handles`, `belt`. */
  readonly name: string;
  /** Plates of one side of a bar or end of a handle, the innermost first; all of those on the belt. */
  readonly plates: readonly PlateKind[];
  /** How many plates are owned for each one in `plates`: 2 on a bar, 4 on two handles, 1 on the belt. */
  readonly each: number;
  /** Mass of the empty handle: another one is another thing. */
  readonly handle: Mass | null;
  /** What pulls or holds up, of the belt and of bands alone. */
  readonly bands?: readonly Band[];
}

/** Everything that has plates on it now. Plain data, worked out from the sets of a session in order. */
export type Equipment = readonly Carrier[];

export const NOTHING_LOADED: Equipment = [];

/** How an implement is made up for a load, from what is on it now. */
export interface SetUp {
  readonly on: 'bar' | 'handles' | 'belt' | 'bands' | 'nothing';
  /** The bar and what will be on it; null for anything else. */
  readonly bar: LoadedBar | null;
  /** What will be on one side or end; on the belt all of it. */
  readonly plates: readonly PlateKind[];
  readonly bands: readonly Band[];
  /** Those that are in use before. */
  readonly bandsBefore: readonly Band[];
  /** In the order in which plates come off and go on; neither where it is as it should be. */
  readonly change: PlateChange;
  /** What has to give up all its plates first: there are not enough of them for both. */
  readonly strip: readonly string[];
  readonly after: Equipment;
}

/**
 * How the lifter's gear makes a load from what is loaded now, with the fewest plates, and of
 * several such ways the one for which the fewest are handled. Null where plates do not matter or
 * the load cannot be made.
 */
export function setUp(need: LoadedOn, load: Mass, gear: Gear, now: Equipment): SetUp | null {
  if (need.step !== null) return null;
  switch (need.loading) {
    case 'barbell': {
      const bar = barOf(gear, need.bar);
      const onNow = platesOnBar(gear, need.bar, now);
      const loaded =
        bar && loadBar(gear, need.bar, load, { bar, side: onNow, total: massOf(bar.mass) });
      return loaded
        ? withPlates(
            gear,
            now,
            { name: loaded.bar.name, plates: loaded.side, each: 2, handle: null },
            loaded,
          )
        : null;
    }
    case 'dumbbell': {
      if (fixedDumbbell(gear, need.hands, load)) return null;
      const before = now.find(({ name }) => name === 'handles');
      const handle = gear.handles.find(({ mass }) => massOf(mass) === before?.handle);
      const onNow = handle && before ? { handle, side: before.plates, total: load } : null;
      const loaded = loadHandle(gear, need.hands, load, onNow);
      if (!loaded) return null;
      return withPlates(gear, now, {
        name: 'handles',
        plates: loaded.side,
        each: 2 * need.hands,
        handle: massOf(loaded.handle.mass),
      });
    }
    case 'bodyweight': {
      const worn = bodyGearFor(gear, load);
      if (!worn) return null;
      const { plates, bands } = worn;
      const belt = { name: 'belt', plates, each: 1, handle: null, bands };
      const made = withPlates(gear, now, belt);
      return bands.length > 0 ? { ...made, on: 'bands', bands } : made;
    }
    case 'band': {
      const bands = bandsFor(gear, load);
      if (!bands) return null;
      const pulled = { name: 'bands', plates: [], each: 1, handle: null, bands };
      return { ...withPlates(gear, now, pulled), on: 'bands', bands };
    }
    default:
      return null;
  }
}

/** Plates of one side of a bar (the first one for null), the innermost first. */
export const platesOnBar = (gear: Gear, bar: string | null, now: Equipment): readonly PlateKind[] =>
  platesOn(now, barOf(gear, bar)?.name ?? '');

const platesOn = (now: Equipment, carrier: string): readonly PlateKind[] =>
  now.find(({ name }) => name === carrier)?.plates ?? [];

function withPlates(
  gear: Gear,
  now: Equipment,
  wanted: Carrier,
  bar: LoadedBar | null = null,
): SetUp {
  const before = now.find(({ name }) => name === wanted.name);
  const same = before && before.each === wanted.each && before.handle === wanted.handle;
  const others = now.filter(({ name, plates }) => name !== wanted.name && plates.length > 0);
  const bandsOnly = now.filter(
    ({ name, plates, bands = [] }) =>
      name !== wanted.name && plates.length === 0 && bands.length > 0,
  );
  const strip = [
    // One handle for two hands, or another pair of handles: what was on the first has to go.
    ...(before && !same && before.plates.length > 0 ? [before.name] : []),
    ...(isEnough(gear, [...others, wanted]) ? [] : others.map(({ name }) => name)),
  ];
  const from = same ? before.plates : [];
  const on = wanted.name === 'handles' || wanted.name === 'belt' ? wanted.name : 'bar';
  return {
    on: wanted.plates.length === 0 && from.length === 0 && on === 'belt' ? 'nothing' : on,
    bar,
    plates: wanted.plates,
    bands: [],
    bandsBefore: before?.bands ?? [],
    change:
      on === 'belt'
        ? hungAnew(from, wanted.plates)
        : plateChange({ side: from }, { side: wanted.plates }),
    strip,
    after: [...others.filter(({ name }) => !strip.includes(name)), ...bandsOnly, wanted],
  };
}

/** Does the lifter own as many plates as all of these carry together? */
function isEnough(gear: Gear, carriers: Equipment): boolean {
  return gear.plates.every(
    (kind) =>
      carriers.reduce(
        (sum, { plates, each }) =>
          sum + each * plates.filter((plate) => isSame(plate, kind)).length,
        0,
      ) <= kind.count,
  );
}

/** On a belt no plate is behind another. */
function hungAnew(from: readonly PlateKind[], to: readonly PlateKind[]): PlateChange {
  const left = [...to];
  const off = from.filter((plate) => {
    const at = left.findIndex((other) => isSame(other, plate));
    if (at < 0) return true;
    left.splice(at, 1);
    return false;
  });
  return { off, on: left };
}

const isSame = (a: PlateKind, b: PlateKind): boolean =>
  a.stamped.unit === b.stamped.unit &&
  a.stamped.amount === b.stamped.amount &&
  massOf(plateQuantity(a)) === massOf(plateQuantity(b));

/** What the body carries, or is held up by. */
export interface BodyGear {
  /** On the belt, the heaviest first. */
  readonly plates: readonly PlateKind[];
  readonly bands: readonly Band[];
}

/**
 * What makes the setting of a body weight lift (added − assistance): the fewest plates on the
 * belt, or the fewest bands. Null where the setting cannot be made.
 */
export function bodyGearFor(gear: Gear, setting: Mass): BodyGear | null {
  if (setting < 0) {
    const bands = bandsFor(gear, minus(NO_MASS, setting));
    return bands && { plates: [], bands };
  }
  const kinds = gear.belt ? platesOf(gear) : [];
  const [counts] = pieceSums(singlesOf(kinds)).fewest(setting);
  return counts
    ? { plates: kinds.flatMap((kind, at) => Array<PlateKind>(counts[at]!).fill(kind)), bands: [] }
    : null;
}

/** The fewest bands that come to exactly `pull` together; null where none do. */
function bandsFor(gear: Gear, pull: Mass): readonly Band[] | null {
  const [counts] = pieceSums(bandsOf(gear)).fewest(pull);
  return counts ? gear.bands.filter((_, at) => counts[at]) : null;
}

/** A dumbbell handle and what is on it; two for two hands, both alike. */
export interface LoadedHandle {
  readonly handle: DumbbellHandle;
  /** Plates of one end, the heaviest first. */
  readonly side: readonly PlateKind[];
  /** Handle and both ends: what one hand holds. */
  readonly total: Mass;
}

/**
 * Handles (as many as hands) loaded to exactly `total` each, with the fewest plates. Null where
 * that cannot be made.
 */
export function loadHandle(
  gear: Gear,
  hands: 1 | 2,
  total: Mass,
  onNow: LoadedHandle | null = null,
): LoadedHandle | null {
  const ways = handlesOf(gear, hands).flatMap((handle) => {
    const from = onNow && massOf(onNow.handle.mass) === massOf(handle.mass) ? onNow.side : [];
    const side = sideFor(gear, hands, minus(total, massOf(handle.mass)), from);
    return side ? [{ handle, side, total }] : [];
  });
  return ways.sort((a, b) => a.side.length - b.side.length)[0] ?? null;
}

/** The fixed dumbbells owned of exactly this mass, as many as hands; null where there are none. */
export function fixedDumbbell(
  { dumbbells }: Gear,
  hands: 1 | 2,
  total: Mass,
): Gear['dumbbells'][number] | null {
  return (
    dumbbells.find(({ stamped, count }) => count >= hands && massOf(stamped) === total) ?? null
  );
}
