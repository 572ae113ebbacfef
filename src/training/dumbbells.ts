import type { DumbbellHandle, Gear, PlateKind } from './gear.ts';
import { type Mass, massOf, minus } from './mass.ts';
import { handlesOf } from './own-pieces.ts';
import { sideFor } from './plates.ts';

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
