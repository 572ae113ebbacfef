import { GEAR_CHANGES, type GearPart } from '../training/change-gear.ts';
import type { Gear } from '../training/gear.ts';
import type { Call } from './call.ts';
import { GEAR_OPTIONS } from './gear-option-rows.ts';

/**
 * The gear with every option of the call applied; null where there is none.
 * @throws Refusal for what cannot be read
 */
export function changedGear(gear: Gear, options: Call['options']): Gear | null {
  const asked = Object.entries(GEAR_CHANGES).filter(([key]) => options[key] !== undefined);
  if (asked.length === 0) return null;
  return asked.reduce((now, [key, change]) => {
    const [option = key] = GEAR_OPTIONS[key as GearPart].flags.split(' ');
    return change(now, [options[key] ?? ''].flat().map(String), option);
  }, gear);
}
