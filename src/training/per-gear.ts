import type { Gear } from './gear.ts';

/**
 * What `make` makes out of gear and a need, made once for each need as long as the gear lives.
 * Gear is never changed in place, so that what was made stays true.
 */
export function perGear<Need, Made>(
  make: (gear: Gear, need: Need) => Made,
  keyOf: (need: Need) => string,
): (gear: Gear, need: Need) => Made {
  const known = new WeakMap<Gear, Map<string, { readonly made: Made }>>();
  return (gear, need) => {
    const ofGear = known.get(gear) ?? new Map<string, { readonly made: Made }>();
    known.set(gear, ofGear);
    const key = keyOf(need);
    const found = ofGear.get(key) ?? { made: make(gear, need) };
    ofGear.set(key, found);
    return found.made;
  };
}
