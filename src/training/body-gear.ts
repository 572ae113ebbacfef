import type { Band, Gear, PlateKind } from './gear.ts';
import { type Mass, minus, NO_MASS } from './mass.ts';
import { bandsOf, platesOf, singlesOf } from './own-pieces.ts';
import { pieceSums } from './piece-sums.ts';

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
    const [counts] = pieceSums(bandsOf(gear)).fewest(minus(NO_MASS, setting));
    return counts ? { plates: [], bands: gear.bands.filter((_, at) => counts[at]) } : null;
  }
  const kinds = gear.belt ? platesOf(gear) : [];
  const [counts] = pieceSums(singlesOf(kinds)).fewest(setting);
  return counts
    ? { plates: kinds.flatMap((kind, at) => Array<PlateKind>(counts[at]!).fill(kind)), bands: [] }
    : null;
}
