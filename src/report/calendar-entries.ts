import { group } from 'd3-array';
import type { Result, SessionDone } from '../progression/past.ts';
import type { Unit } from '../training/mass.ts';
import type { CalendarEntry } from './calendar.ts';
import type { DayAhead } from './days-ahead.ts';
import { countsText, loadsText } from './history-text.ts';

/** Training days done, with what was lifted, and days ahead, as entries of a calendar. */
export function calendarEntries(
  sessions: readonly SessionDone[],
  results: readonly Result[],
  ahead: readonly DayAhead[],
  program: string,
  unit: Unit,
): CalendarEntry[] {
  const bySession = group(results, ({ session }) => session);
  const done = sessions
    .filter(({ setsDone }) => setsDone > 0)
    .map(({ session, start, end, day, program: name }): CalendarEntry => {
      const lines = (bySession.get(session) ?? []).map(
        (result) => `${result.exercise.name} ${loadsText(result, unit)}: ${countsText(result)}`,
      );
      return { kind: 'done', id: session, start, end, title: `Strength: ${name}, ${day}`, lines };
    });
  const planned = ahead.map(
    ({ date, day }): CalendarEntry => ({
      kind: 'ahead',
      date,
      title: `Strength: ${program}, ${day}`,
      lines: [],
    }),
  );
  return [...done, ...planned];
}
