import { group } from 'd3-array';
import type { Temporal } from 'temporal-polyfill';
import type { Program } from '../program/program.ts';
import type { Result, SessionDone } from '../progression/past.ts';
import type { Unit } from '../training/mass.ts';
import { countsText, loadsText } from './history-text.ts';

/** One entry of the calendar. */
export type CalendarEntry =
  | {
      readonly kind: 'done';
      /** Id of the session. */
      readonly id: string;
      /** Epoch milliseconds. */
      readonly start: number;
      readonly end: number;
      readonly title: string;
      readonly lines: readonly string[];
    }
  | {
      readonly kind: 'ahead';
      readonly date: Temporal.PlainDate;
      readonly title: string;
      readonly lines: readonly string[];
    };

/**
 * Training days as an iCalendar object by RFC 5545. Ids are stable, so importing a newer export
 * replaces entries in place of doubling them: a session has its own, a planned day that of its date.
 * @param stamp when the calendar was made, epoch milliseconds
 */
export function calendarText(entries: readonly CalendarEntry[], stamp: number): string {
  const lines = [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//holdfast//training log//EN',
    'CALSCALE:GREGORIAN',
    ...entries.flatMap((entry) => eventLines(entry, stamp)),
    'END:VCALENDAR',
  ];
  return lines.map((line) => `${folded(line)}\r\n`).join('');
}

function eventLines(entry: CalendarEntry, stamp: number): string[] {
  const when =
    entry.kind === 'done'
      ? [`DTSTART:${utc(entry.start)}`, `DTEND:${utc(Math.max(entry.end, entry.start + 60_000))}`]
      : [
          `DTSTART;VALUE=DATE:${basic(entry.date)}`,
          `DTEND;VALUE=DATE:${basic(entry.date.add({ days: 1 }))}`,
        ];
  const id = entry.kind === 'done' ? `session-${entry.id}` : `day-${basic(entry.date)}`;
  return [
    'BEGIN:VEVENT',
    `UID:${escaped(id)}@holdfast`,
    `DTSTAMP:${utc(stamp)}`,
    ...when,
    `SUMMARY:${escaped(entry.title)}`,
    ...(entry.lines.length > 0 ? [`DESCRIPTION:${escaped(entry.lines.join('\n'))}`] : []),
    // A plan keeps no hour free; a session that was done took its time.
    `TRANSP:${entry.kind === 'done' ? 'OPAQUE' : 'TRANSPARENT'}`,
    'END:VEVENT',
  ];
}

/** RFC 5545, 3.3.11: backslash, semicolon, comma and line breaks; other controls are not allowed. */
const escaped = (text: string): string =>
  text
    .replace(/[\\;,]/g, (found) => `\\${found}`)
    .replace(/\r\n|\r|\n/g, '\\n')
    .replace(/[\u0000-\u0008\u000b-\u001f\u007f]/g, '');

const utc = (ms: number): string =>
  new Date(Math.floor(ms / 1000) * 1000).toISOString().replace(/[-:]|\.\d+/g, '');

const basic = (date: Temporal.PlainDate): string => date.toString().replaceAll('-', '');

const encoder = new TextEncoder();

/** RFC 5545, 3.1: lines of at most 75 octets, continued after a space, no character torn apart. */
function folded(line: string): string {
  const parts: string[] = [];
  let part = '';
  let octets = 0;
  for (const character of line) {
    const size = encoder.encode(character).length;
    if (octets + size > 75) {
      parts.push(part);
      part = ' ';
      octets = 1;
    }
    part += character;
    octets += size;
  }
  return [...parts, part].join('\r\n');
}

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

/** A training day to come. */
interface DayAhead {
  readonly date: Temporal.PlainDate;
  /** Name of the program's day. */
  readonly day: string;
}

/** Weekdays, Monday 1, that spread so many sessions over a week. Common practice. */
const SPREAD: readonly (readonly number[])[] = [
  [],
  [1],
  [1, 4],
  [1, 3, 5],
  [1, 2, 4, 5],
  [1, 2, 3, 5, 6],
  [1, 2, 3, 4, 5, 6],
  [1, 2, 3, 4, 5, 6, 7],
];

/** The lifter's usual weekdays are read from so many days. */
const USUAL_DAYS = 28;

/**
 * Training days for so many weeks: the program's days in turn from the one that is due, on the
 * weekdays that the lifter trained on in the last four weeks, else spread over the week.
 * @param from the first date that is good for training
 */
export function daysAhead(
  program: Program,
  sessions: readonly SessionDone[],
  due: string,
  from: Temporal.PlainDate,
  weeks: number,
): DayAhead[] {
  const weekdays = usualWeekdays(sessions, from, program.daysPerWeek);
  const first = Math.max(
    0,
    program.days.findIndex(({ name }) => name === due),
  );
  const dates = [...Array(weeks * 7).keys()]
    .map((days) => from.add({ days }))
    .filter((date) => weekdays.includes(date.dayOfWeek));
  return dates.map((date, at) => ({
    date,
    day: program.days[(first + at) % program.days.length]?.name ?? due,
  }));
}

function usualWeekdays(
  sessions: readonly SessionDone[],
  from: Temporal.PlainDate,
  count: number,
): readonly number[] {
  const times = new Map<number, number>();
  for (const { date, setsDone } of sessions) {
    const ago = date.until(from, { largestUnit: 'days' }).days;
    if (setsDone === 0 || ago < 0 || ago > USUAL_DAYS) continue;
    times.set(date.dayOfWeek, (times.get(date.dayOfWeek) ?? 0) + 1);
  }
  const usual = [...times].sort((a, b) => b[1] - a[1] || a[0] - b[0]).slice(0, count);
  return usual.length < count ? (SPREAD[count] ?? []) : usual.map(([weekday]) => weekday);
}
