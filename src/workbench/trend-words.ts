import type { Temporal } from 'temporal-polyfill';
import { rateOfLoss } from '../cut/rate-of-loss.ts';
import type { History } from '../journal/history.ts';
import { massText, type Unit } from '../training/mass.ts';

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
