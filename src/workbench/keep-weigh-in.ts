import type { Temporal } from 'temporal-polyfill';
import { rateOfLoss } from '../cut/rate-of-loss.ts';
import { replacedBy } from '../cut/weigh-in-doubt.ts';
import type { Journal } from '../journal/disk/journal.ts';
import type { History, WeighIn } from '../journal/history.ts';
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

/**
 * `Trend 79.4 kg, falling by 0.7 % a week (± 0.1).`; without the rate for who gets no advice on
 * weight, and null before the first weigh-in.
 */
export function trendWords(
  { weighIns, bodyMassOn }: Pick<History, 'weighIns' | 'bodyMassOn'>,
  on: Temporal.PlainDate,
  unit: Unit,
  weightAdvice: boolean,
): string | null {
  const trend = bodyMassOn(on);
  if (trend === null) return null;
  const words = `Trend ${massText(trend, unit, 1)}`;
  if (!weightAdvice) return `${words}.`;
  const rate = rateOfLoss({ weighIns, today: on, cutFrom: null, monthlyCycle: false, bodyMassOn });
  if (rate.kind === 'unknown') return `${words}.`;
  const direction = rate.percentAWeek >= 0 ? 'falling' : 'rising';
  return `${words}, ${direction} by ${Math.abs(rate.percentAWeek).toFixed(1)} % a week (± ${rate.standardError.toFixed(1)}).`;
}
