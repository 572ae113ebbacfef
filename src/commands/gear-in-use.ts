import type { Gear } from '../training/gear.ts';
import { openRecords } from '../workbench/open-records.ts';
import type { Call } from './call.ts';

/** The lifter's gear, or a usual home gym in the program's unit. Only that needs the program read. */
export async function gearInUse({ ports, global }: Call): Promise<Gear> {
  const known = openRecords(ports, global).knownGear();
  if (known) return known;
  const { openWorkbench } = await import('../workbench/open-workbench.ts');
  return openWorkbench(ports, global).gear();
}
