import type { Temporal } from 'temporal-polyfill';
import { localDate } from '../session/local-date.ts';
import type { Clock } from './clock.ts';

/** The lifter's calendar day now. */
export function localDay(clock: Clock): Temporal.PlainDate {
  const { wall } = clock.read();
  return localDate(wall, clock.zone(wall));
}
