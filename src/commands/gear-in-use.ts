import type { Gear } from '../training/gear.ts';
import type { Unit } from '../training/mass.ts';
import { openWorkbench } from '../workbench/open-workbench.ts';
import type { Call } from './call.ts';

/** The lifter's gear, or a usual home gym, and the unit of bare loads: the program's. */
export function gearInUse({ ports, global }: Call): { readonly gear: Gear; readonly unit: Unit } {
  const workbench = openWorkbench(ports, global);
  return { gear: workbench.gear(), unit: workbench.unit() };
}
