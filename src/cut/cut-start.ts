import { Temporal } from 'temporal-polyfill';
import type { Program } from '../program/program.ts';
import type { SessionDone } from '../progression/past.ts';
import { dayNumber } from '../training/day-number.ts';
import type { Mass } from '../training/mass.ts';
import { CUT_LIMITS } from './cut-limits.ts';

/**
 * First day of the cut that the program is in: the day it names, else the first session under
 * `aim: cut` with none such in the 28 days before. A changed program file does not restart a cut.
 * Null outside a cut, before its first session, and once the last is longer ago than that. A session whose aim was not kept counts as
 * one of the present aim.
 */
export function cutStart(
  program: Pick<Program, 'aim' | 'cutFrom'>,
  sessions: readonly SessionDone[],
  today: Temporal.PlainDate,
): Temporal.PlainDate | null {
  if (program.aim !== 'cut') return null;
  if (program.cutFrom !== null) return Temporal.PlainDate.from(program.cutFrom);
  let start: Temporal.PlainDate | null = null;
  let last: Temporal.PlainDate | null = null;
  for (const { aim, date, setsDone } of sessions) {
    if ((aim ?? 'cut') !== 'cut' || setsDone === 0) continue;
    if (last === null || daysBetween(last, date) > CUT_LIMITS.endedAfterDays) start = date;
    last = date;
  }
  const hasEnded = last !== null && daysBetween(last, today) > CUT_LIMITS.endedAfterDays;
  return hasEnded ? null : start;
}

/** The trend on the first day of the cut, or the first within its first week. */
export function startMass(
  cutFrom: Temporal.PlainDate,
  bodyMassOn: (date: Temporal.PlainDate) => Mass | null,
): Mass | null {
  for (let day = 0; day <= CUT_LIMITS.waterDays; day += 1) {
    const found = bodyMassOn(cutFrom.add({ days: day }));
    if (found !== null) return found;
  }
  return null;
}

/** Whole days from `from` to `to`, negative when `to` is earlier. */
export const daysBetween = (from: Temporal.PlainDate, to: Temporal.PlainDate): number =>
  dayNumber(to) - dayNumber(from);
