import { Temporal } from 'temporal-polyfill';
import { dayAndMonth, monthWord } from '../text/day-words.ts';
import { dateOfDay, dayNumber } from '../training/day-number.ts';

export interface Tick {
  readonly at: number;
  readonly label: string;
}

type Step = { readonly unit: 'days' | 'months'; readonly count: number };

const STEPS: readonly Step[] = [
  ...[1, 2, 7, 14].map((count) => ({ unit: 'days', count }) as const),
  ...[1, 2, 3, 6, 12, 24, 60, 120].map((count) => ({ unit: 'months', count }) as const),
];

/**
 * At most `most` round dates between two day numbers, with labels: days (`3 Nov`, weeks begin on
 * Monday), months (`Nov`), and the year where one begins.
 */
export function dateTicks(from: number, to: number, most: number): Tick[] {
  for (const step of STEPS) {
    const ticks =
      step.unit === 'days' ? dayTicks(from, to, step.count) : monthTicks(from, to, step.count);
    if (ticks.length <= most) return ticks;
  }
  return [];
}

function dayTicks(from: number, to: number, count: number): Tick[] {
  // Day number 4 was Monday, 5 January 1970.
  const first = Math.ceil((from - 4) / count) * count + 4;
  const ticks: Tick[] = [];
  // More ticks than any axis has room for are never drawn: stop making them.
  for (let at = first; at <= to && ticks.length < 200; at += count) {
    ticks.push({ at, label: dayAndMonth(dateOfDay(at)) });
  }
  return ticks;
}

function monthTicks(from: number, to: number, count: number): Tick[] {
  const start = dateOfDay(Math.floor(from));
  const months = Math.floor((start.year * 12 + start.month - 1) / count) * count;
  const ticks: Tick[] = [];
  for (let month = months; ticks.length < 200; month += count) {
    const [year, index] = [Math.floor(month / 12), month % 12];
    const at = dayNumber(Temporal.PlainDate.from({ year, month: index + 1, day: 1 }));
    if (at > to) break;
    if (at >= from) ticks.push({ at, label: index === 0 ? String(year) : monthWord(index + 1) });
  }
  return ticks;
}
