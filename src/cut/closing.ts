import type { Temporal } from 'temporal-polyfill';
import type { Mass } from '../training/mass.ts';
import { daysBetween, startMass } from './cut-start.ts';
import type { Evidence } from './evidence.ts';
import type { LiftKept } from './kept.ts';
import { workDone } from './work-done.ts';

/** A whole cut, looked back on. */
export interface ClosingReport {
  readonly from: Temporal.PlainDate;
  /** Its last day, included. */
  readonly until: Temporal.PlainDate;
  readonly weeks: number;
  /** Trend at both ends; null where it is not known. */
  readonly body: { readonly then: Mass; readonly now: Mass } | null;
  readonly sessions: number;
  readonly planned: number;
  readonly lifts: readonly ClosedLift[];
}

interface ClosedLift {
  readonly kept: Extract<LiftKept, { state: 'known' }>;
  /** Work sets a week, mean of these weeks. */
  readonly setsAWeek: number;
  /** Beyond what the 90 % interval of the estimate leaves open. */
  readonly went: 'held' | 'gained' | 'lost';
}

/**
 * What a cut came to, from its first day to the day `end`; null outside one. That day is one of it
 * where it was trained on for the cut.
 */
export function closingOf(evidence: Evidence, end = evidence.today): ClosingReport | null {
  const { cutFrom: from, past, lifts, program } = evidence;
  if (!from) return null;
  const isTrained = past.sessions.some(
    ({ aim = 'cut', date, setsDone }) => aim === 'cut' && setsDone > 0 && date.equals(end),
  );
  const until = isTrained ? end : end.subtract({ days: 1 });
  const weeks = Math.max(1, Math.round((daysBetween(from, until) + 1) / 7));
  const { sessions } = workDone(past, from, until, program.daysPerWeek);
  const lastPlanned = from.add({ days: 7 * weeks - 1 });
  const { planned } = workDone(past, from, lastPlanned, program.daysPerWeek);
  const sets = new Map<string, number>();
  for (const { date, exercise, sets: done } of past.results) {
    if (daysBetween(from, date) < 0 || daysBetween(date, until) < 0) continue;
    sets.set(exercise.lift, (sets.get(exercise.lift) ?? 0) + done.length);
  }
  const [then, now] = [startMass(from, past.bodyMassOn), past.bodyMassOn(end)];
  return {
    from,
    until,
    weeks,
    body: then !== null && now !== null ? { then, now } : null,
    sessions,
    planned,
    lifts: lifts.flatMap((kept) =>
      kept.state === 'known'
        ? [
            {
              kept,
              setsAWeek: (sets.get(kept.lift) ?? 0) / weeks,
              went: kept.low > 1 ? 'gained' : kept.high < 1 ? 'lost' : 'held',
            },
          ]
        : [],
    ),
  };
}
