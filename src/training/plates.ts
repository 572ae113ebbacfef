import {
  type Bar,
  barOf,
  emptyMass,
  type Gear,
  type PlateKind,
  pairsOf,
  plateQuantity,
  platesOf,
} from './gear.ts';
import { loadsFor, perGear } from './loads.ts';
import { type Mass, massOf, minus } from './mass.ts';
import { pieceSums } from './sums-of-pieces.ts';

/** A bar and what is on it. */
export interface LoadedBar {
  readonly bar: Bar;
  /** Plates of one side, the heaviest first: the first is the innermost. */
  readonly side: readonly PlateKind[];
  /** Bar, collars and both sides. */
  readonly total: Mass;
}

/**
 * The bar (the first one for null) loaded to exactly `total`: with the fewest plates, and of
 * several such ways the one for which the fewest plates are handled from what is `onNow`; then the
 * one with the heaviest plates. Null where the bar is not owned or the total cannot be made.
 */
export function loadBar(
  gear: Gear,
  barName: string | null,
  total: Mass,
  onNow: LoadedBar | null = null,
): LoadedBar | null {
  const bar = barOf(gear, barName);
  if (!bar) return null;
  const from = onNow && onNow.bar.name === bar.name ? onNow.side : [];
  const side = sideFor(gear, 1, minus(total, emptyMass(bar)), from);
  return side && { bar, side, total };
}

const pairSums = perGear(
  (gear, bars: 1 | 2) => {
    const kinds = platesOf(gear);
    return { kinds, sums: pieceSums(pairsOf(kinds, bars)) };
  },
  (bars) => `${bars}`,
);

/** One side's plates for both sides of so many bars to weigh `plates`; null where that cannot be made. */
export function sideFor(
  gear: Gear,
  bars: 1 | 2,
  plates: Mass,
  from: readonly PlateKind[],
): readonly PlateKind[] | null {
  if (plates < 0) return null;
  const { kinds, sums } = pairSums(gear, bars);
  const sides = sums
    .fewest(plates)
    .map((counts) => counts.flatMap((count, at) => Array<PlateKind>(count).fill(kinds[at]!)));
  return sides.sort((a, b) => handled(from, a) - handled(from, b) || heavierFirst(a, b))[0] ?? null;
}

function heavierFirst(a: readonly PlateKind[], b: readonly PlateKind[]): number {
  const at = a.findIndex((plate, place) => plateMass(plate) !== plateMass(b[place]!));
  return at < 0 ? 0 : plateMass(b[at]!) - plateMass(a[at]!);
}

const plateMass = (plate: PlateKind): Mass => massOf(plateQuantity(plate));

/** What to do at one end of a bar. */
export interface PlateChange {
  /** In the order they come off: the outermost first. */
  readonly off: readonly PlateKind[];
  /** In the order they go on: the innermost first. */
  readonly on: readonly PlateKind[];
}

/**
 * What comes off and goes on at each end between two loads of one bar. A plate cannot come off
 * before those outside it do, so the same plate can be in both lists.
 */
export function plateChange(
  from: Pick<LoadedBar, 'side'> | null,
  to: Pick<LoadedBar, 'side'>,
): PlateChange {
  return changeOf(from?.side ?? [], to.side);
}

function changeOf(from: readonly PlateKind[], to: readonly PlateKind[]): PlateChange {
  const first = to.findIndex((plate, at) => !isSame(plate, from[at]));
  const stays = first < 0 ? to.length : first;
  return { off: from.slice(stays).reverse(), on: to.slice(stays) };
}

function handled(from: readonly PlateKind[], to: readonly PlateKind[]): number {
  const { off, on } = changeOf(from, to);
  return off.length + on.length;
}

function isSame(a: PlateKind, b: PlateKind | undefined): boolean {
  return (
    b !== undefined &&
    a.stamped.unit === b.stamped.unit &&
    a.stamped.amount === b.stamped.amount &&
    plateMass(a) === plateMass(b)
  );
}

/** A plate that has to come off again costs as much as so many that go on. Ours. */
const OFF_AGAIN = 3;

/**
 * What it costs at each end of the bar to go from one total to another, null being what is on it
 * now: a point for each plate put on, more for each taken off.
 */
export function platesHandled(
  gear: Gear,
  barName: string | null,
  now: readonly PlateKind[],
): (from: Mass | null, to: Mass) => number {
  const bar = barOf(gear, barName);
  return (from, to) => {
    const before = from === null ? now : (loadBar(gear, barName, from)?.side ?? []);
    const onNow = bar ? { bar, side: before, total: to } : null;
    const { off, on } = changeOf(before, loadBar(gear, barName, to, onNow)?.side ?? []);
    return OFF_AGAIN * off.length + on.length;
  };
}

/** The bar loaded to the nearest totals that can be made at or under, and at or over, a wish. */
export function nearestBelowAndAbove(
  gear: Gear,
  barName: string | null,
  wish: Mass,
): { readonly below: LoadedBar | null; readonly above: LoadedBar | null } {
  const need = { loading: 'barbell', hands: 1, bar: barName, step: null } as const;
  const loads = loadsFor(gear, need);
  const loaded = (total: Mass | null) => (total === null ? null : loadBar(gear, barName, total));
  return { below: loaded(loads.atOrBelow(wish)), above: loaded(loads.atOrAbove(wish)) };
}
