import { Temporal } from 'temporal-polyfill';

/** The calendar day at an instant, `zone` minutes ahead of UTC: `2026-11-25`. */
export const localDay = (wall: number, zone: number): string =>
  Temporal.Instant.fromEpochMilliseconds(wall + zone * 60_000)
    .toZonedDateTimeISO('UTC')
    .toPlainDate()
    .toString();
