import { Temporal } from 'temporal-polyfill';
import type { Clock } from './clock.ts';

/** The lifter's calendar day now. */
export function localDay(clock: Clock): Temporal.PlainDate {
  const { wall } = clock.read();
  return Temporal.Instant.fromEpochMilliseconds(wall + clock.zone(wall) * 60_000)
    .toZonedDateTimeISO('UTC')
    .toPlainDate();
}
