import { group } from 'd3-array';
import type { Temporal } from 'temporal-polyfill';
import { shownStrength } from '../cut/shown-strength.ts';
import type { History } from '../journal/history.ts';
import type { JournalEvent } from '../journal/records.ts';
import type { Result } from '../progression/past.ts';
import { inUnit, type Mass, type Unit } from '../training/mass.ts';
import type { HistoryJson } from './history-schema.ts';

/** What of a history is exported. */
export type WholeHistory = Pick<
  History,
  'results' | 'sessions' | 'decisions' | 'weighIns' | 'bodyMassOn'
> & { readonly events: readonly JournalEvent[] };

/** A whole history as the document that {@link historySchema} describes. */
export function historyJson(
  history: WholeHistory,
  unit: Unit,
  today: Temporal.PlainDate,
): HistoryJson {
  const bySession = group(history.results, ({ session }) => session);
  return {
    schema: 1,
    kind: 'holdfast-history',
    made: today.toString(),
    unit,
    sessions: history.sessions.map((session) => ({
      id: session.session,
      start: new Date(session.start).toISOString(),
      end: new Date(session.end).toISOString(),
      date: session.date.toString(),
      program: session.program,
      day: session.day,
      closed: session.how === 'closed',
      exercises: (bySession.get(session.session) ?? []).map((result) =>
        exerciseJson(result, history.bodyMassOn, unit),
      ),
    })),
    weigh_ins: history.weighIns.map(({ date, mass }) => ({
      date: date.toString(),
      mass: inUnit(mass, unit),
    })),
    decisions: history.decisions.map(({ date, rule, answer, subject }) => ({
      date: date.toString(),
      rule,
      answer,
      subject,
    })),
    events: history.events.map((event) => ({ ...event })),
  };
}

type ExerciseJson = HistoryJson['sessions'][number]['exercises'][number];

function exerciseJson(result: Result, bodyMassOn: History['bodyMassOn'], unit: Unit): ExerciseJson {
  const { lift, name, track, style, counts, move } = result.exercise;
  const { finished, pain, lighter } = result;
  const sets = result.sets.map((set) => {
    const max = shownStrength(result, set, bodyMassOn);
    const { count, reserve, entered } = set;
    const e1rm = max === null ? null : Number(inUnit(max as Mass, unit).toFixed(2));
    return { load: inUnit(set.load, unit), count, reserve, entered, e1rm };
  });
  return { lift, name, track, style, counts, move, finished, pain, lighter, sets };
}
