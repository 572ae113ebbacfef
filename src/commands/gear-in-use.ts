import { openLifter } from '../lifter/open-lifter.ts';
import type { Gear } from '../training/gear.ts';
import type { Unit } from '../training/mass.ts';
import type { Call } from './call.ts';

/** The lifter's gear, or a usual home gym, and the unit of bare loads: the program's. */
export function gearInUse({ ports, global }: Call): { readonly gear: Gear; readonly unit: Unit } {
  const lifter = openLifter(ports, global);
  return { gear: lifter.gear(), unit: lifter.unit() };
}
