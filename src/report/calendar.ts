import type { Temporal } from 'temporal-polyfill';

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
