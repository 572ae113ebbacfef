import { Temporal } from 'temporal-polyfill';
import { describe, expect, test } from 'vitest';
import { dateTicks } from '../../src/report/date-ticks.ts';
import { dateOfDay, dayNumber } from '../../src/training/day-number.ts';

const number = (day: string) => dayNumber(Temporal.PlainDate.from(day));
const labels = (from: string, to: string, most: number) =>
  dateTicks(number(from), number(to), most).map(({ label }) => label);

describe('dates under a plot', () => {
  test.each([
    ['every day', '2026-11-02', '2026-11-05', ['2 Nov', '3 Nov', '4 Nov', '5 Nov']],
    ['Mondays', '2026-11-04', '2026-12-01', ['9 Nov', '16 Nov', '23 Nov', '30 Nov']],
    ['every second Monday', '2026-11-02', '2026-12-30', ['9 Nov', '23 Nov', '7 Dec', '21 Dec']],
    ['months', '2026-09-02', '2027-02-15', ['Oct', 'Nov', 'Dec', '2027', 'Feb']],
    ['quarters', '2025-12-01', '2027-01-10', ['2026', 'Apr', 'Jul', 'Oct', '2027']],
    ['halves of years', '2024-01-01', '2026-06-30', ['2024', 'Jul', '2025', 'Jul', '2026']],
    ['years', '2021-03-01', '2026-06-30', ['2022', '2023', '2024', '2025', '2026']],
    ['every fifth year', '2001-01-01', '2026-06-30', ['2005', '2010', '2015', '2020', '2025']],
  ])('are %s', (_, from, to, wanted) => expect(labels(from, to, 5)).toEqual(wanted));

  test('by weeks are Mondays, whatever the day the plot begins on', () => {
    for (let day = 0; day < 28; day += 1) {
      for (const { at } of dateTicks(20_700 + day, 20_700 + day + 40, 6)) {
        expect(dateOfDay(at).dayOfWeek).toBe(1);
      }
    }
  });

  test('are none where there is room for none', () => {
    expect(labels('2026-11-02', '2026-11-05', 0)).toEqual([]);
  });
});
