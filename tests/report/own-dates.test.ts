import { expect, test } from 'vitest';
import { dateIn, dayFirstIn } from '../../src/report/own-table/own-dates.ts';

const LOCALES = ['en', 'en-GB', 'de', 'de-AT', 'fr', 'es', 'it', 'nl', 'pt'];

// CLDR, as Node ships it, writes the dates that are read back.
test.each(
  LOCALES.flatMap((locale) =>
    (['long', 'short'] as const).map((month) => [locale, month] as const),
  ),
)(
  'dates in %s with %s names of months are read, with the day of the week and without',
  (locale, month) => {
    for (const weekday of [undefined, 'long', 'short'] as const) {
      const write = new Intl.DateTimeFormat(locale, {
        ...(weekday && { weekday }),
        day: 'numeric',
        month,
        year: 'numeric',
        timeZone: 'UTC',
      });
      for (let at = 0; at < 12; at += 1) {
        const cell = write.format(Date.UTC(2026, at, 9 + at));
        const iso = new Date(Date.UTC(2026, at, 9 + at)).toISOString().slice(0, 10);
        expect(dateIn(cell, null)?.toString(), cell).toBe(iso);
      }
    }
  },
);

test.each([
  ['2. Okt. 2026', '2026-10-02'],
  ['2.Okt.2026', '2026-10-02'],
  ['02-Nov-26', '2026-11-02'],
  ['2nd November 2026', '2026-11-02'],
  ['Nov 2nd, 2026', '2026-11-02'],
  ['1er mars 2026', '2026-03-01'],
  ['20261102', '2026-11-02'],
  ['Mo, 2. November 2026, 18:30', '2026-11-02'],
])('%s is %s', (cell, iso) => {
  expect(dateIn(cell, null)?.toString()).toBe(iso);
});

test.each([
  'November 2026',
  '2 Nov',
  '46328',
  '31 Feb 2026',
  'Squat 3 2026',
  'Total 3/4/2026',
  '2 Foo 2026',
  '20261345',
])('%s is no date', (cell) => {
  expect(dateIn(cell, null)).toBeNull();
});

test('an order of day and month is seen behind a day of the week, too', () => {
  expect(dayFirstIn(['Mo 13/4/2026', '3/4/2026'])).toBe(true);
  expect(dayFirstIn(['Mon 4/13/2026 7:15'])).toBe(false);
  expect(dayFirstIn(['lun. 3/4/2026'])).toBe('both');
});
