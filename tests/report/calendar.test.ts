import fc from 'fast-check';
import ICAL from 'ical.js';
import { describe, expect, it } from 'vitest';
import { type CalendarEntry, calendarText } from '../../src/report/calendar.ts';
import { day } from '../cut/made.ts';

const STAMP = Date.UTC(2026, 10, 25, 12);
const START = Date.UTC(2026, 10, 25, 17, 40);
const done: CalendarEntry = {
  kind: 'done',
  id: 'a1',
  start: START,
  end: START + 52 * 60_000,
  title: 'Day A; squat, bench',
  lines: ['Back squat 80 kg: 6 5 5', 'Notes: C:\\home'],
};
const ahead: CalendarEntry = { kind: 'ahead', date: day('2026-11-27'), title: 'Day B', lines: [] };

const eventsOf = (text: string) =>
  new ICAL.Component(ICAL.parse(text))
    .getAllSubcomponents('vevent')
    .map((each) => new ICAL.Event(each));

describe('the calendar of training days', () => {
  it('is read by a reference library: times, whole days, texts and ids', () => {
    const [first, second] = eventsOf(calendarText([done, ahead], STAMP));
    expect(first?.summary).toBe('Day A; squat, bench');
    expect(first?.description).toBe('Back squat 80 kg: 6 5 5\nNotes: C:\\home');
    expect(first?.startDate.toJSDate().getTime()).toBe(START);
    expect(first?.endDate.toJSDate().getTime()).toBe(START + 52 * 60_000);
    expect(first?.uid).toBe('session-a1@holdfast');
    expect(second?.startDate.isDate).toBe(true);
    expect(second?.startDate.toString()).toBe('2026-11-27');
    expect(second?.endDate.toString()).toBe('2026-11-28');
    expect(second?.uid).toBe('day-20261127@holdfast');
  });

  it('has what RFC 5545 requires of a calendar and of an event', () => {
    const calendar = new ICAL.Component(ICAL.parse(calendarText([done, ahead], STAMP)));
    expect(calendar.getFirstPropertyValue('version')).toBe('2.0');
    expect(calendar.getFirstPropertyValue('prodid')).toBeTruthy();
    for (const event of calendar.getAllSubcomponents('vevent')) {
      for (const name of ['uid', 'dtstamp', 'dtstart']) {
        expect(event.getFirstPropertyValue(name)).toBeTruthy();
      }
    }
  });

  it('keeps an id for a session and a date, whenever it is made', () => {
    const ids = (stamp: number) =>
      eventsOf(calendarText([done, ahead], stamp)).map(({ uid }) => uid);
    expect(ids(STAMP)).toEqual(ids(STAMP + 86_400_000));
  });

  it('gives any text back, in lines of at most 75 octets that end in CRLF', () => {
    const text = fc.string({ unit: 'grapheme', minLength: 1, maxLength: 200 });
    fc.assert(
      fc.property(text, fc.array(text, { maxLength: 4 }), (title, lines) => {
        const written = calendarText([{ ...done, title, lines }], STAMP);
        expect(written.endsWith('\r\n')).toBe(true);
        for (const line of written.slice(0, -2).split('\r\n')) {
          expect(new TextEncoder().encode(line).length).toBeLessThanOrEqual(75);
          expect(line).not.toMatch(/[\r\n]/);
        }
        expect(eventsOf(written)[0]?.summary).toBe(title);
        if (lines.length > 0) expect(eventsOf(written)[0]?.description).toBe(lines.join('\n'));
      }),
      { numRuns: 150 },
    );
  });
});
