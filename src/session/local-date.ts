import { Temporal } from 'temporal-polyfill';

/** The calendar day at an instant in epoch milliseconds, where local time is `zone` minutes ahead of UTC. */
export const localDate = (wall: number, zone: number): Temporal.PlainDate =>
  Temporal.Instant.fromEpochMilliseconds(wall + zone * 60_000)
    .toZonedDateTimeISO('UTC')
    .toPlainDate();
