import type { Temporal } from 'temporal-polyfill';
import { replacedBy } from '../cut/weigh-in-doubt.ts';
import type { Journal } from '../journal/disk/journal.ts';
import type { WeighIn } from '../journal/history.ts';
import { type Mass, massText, type Unit } from '../training/mass.ts';

/**
 * Records a weigh-in; a reading of the same day that cannot be right beside it is taken out. Gives
 * the ids of all that was recorded, and what was taken out.
 */
export function keepWeighIn(journal: Journal, mass: Mass, on: Temporal.PlainDate) {
  const replaced = replacedBy(mass, on, journal.history().weighIns);
  const events = [
    journal.record({ type: 'weighed', mass, on: on.toString() }),
    ...replaced.map(({ id: of }) => journal.record({ type: 'deleted', of })),
  ];
  return { ids: events.map(({ id }) => id), replaced };
}

/** Empty where nothing was replaced. */
export const replacedWords = (replaced: readonly WeighIn[], unit: Unit): string =>
  replaced.map(({ mass }) => `It replaces the ${massText(mass, unit)} of the same day.`).join(' ');
