import type { Problem } from '../text/problem.ts';
import type { Gear } from './gear.ts';
import { quantityText } from './mass.ts';

/** What may well be right in a list of gear, but will surprise: one problem each. */
export function gearSurprises({ plates }: Gear): Problem[] {
  return plates
    .filter(({ count }) => count % 2 === 1)
    .map(({ stamped, count }) => ({
      what: `There ${count === 1 ? 'is 1 plate' : `are ${count} plates`} of ${quantityText(stamped)}.`,
      why: 'One of them has no partner, so it never goes on a bar.',
      fix: 'Correct the number if you own another; one plate can still hang from a belt.',
    }));
}
