import { describe, expect, it } from 'vitest';
import * as z from 'zod';
import type { JournalEvent } from '../../src/journal/records.ts';
import { historyExportSchema, historyJson } from '../../src/report/history-json.ts';
import { importJson } from '../../src/report/import-json.ts';
import { lengthOf } from '../../src/training/length.ts';
import { kilograms } from '../../src/training/mass.ts';
import { day, LIFTS, madeResult, madeSession } from '../cut/made.ts';

const at = { wall: Date.UTC(2026, 10, 20, 17), up: null, boot: null };
const weighed = (id: string, kg: number): JournalEvent => ({
  type: 'weighed',
  id,
  at,
  zone: 0,
  on: '2026-11-20',
  mass: kilograms(kg),
});
const closed = (id: string): JournalEvent => ({
  type: 'session-closed',
  how: 'finished',
  id,
  at,
  zone: 0,
});

const document = historyJson(
  {
    results: [madeResult({ lift: LIFTS.squat, on: '2026-11-20', load: 80, counts: [6, 5, 5] })],
    sessions: [madeSession('2026-11-20')],
    decisions: [],
    bodyMassOn: () => null,
    weighIns: [{ id: 'w1:1', date: day('2026-11-20'), mass: kilograms(82.4), at: 0 }],
    waists: [{ id: 'w1:2', date: day('2026-11-20'), length: lengthOf(86, 'cm') }],
    events: [weighed('w1:1', 82.4), weighed('w1:2', 82.1), closed('s1:1')],
  },
  'kg',
  day('2026-11-25'),
);
const text = JSON.stringify(document);
const readEvent = (value: unknown) => value as JournalEvent;
const none = {
  events: new Set<string>(),
  sessions: new Set<string>(),
  weighIns: new Set<string>(),
  until: Number.POSITIVE_INFINITY,
};

describe('the whole history as JSON', () => {
  it('is what its schema says', () => {
    expect(historyExportSchema.parse(JSON.parse(text))).toEqual(document);
    expect(document.sessions[0]?.exercises[0]?.sets[0]).toEqual({
      load: 80,
      count: 6,
      reserve: 1,
      entered: 'typed',
      // Brzycki 1993: 80 kg × 36 ÷ (37 − 7), six reps and one in reserve.
      e1rm: 96,
    });
  });

  it('has a JSON Schema for other programs', () => {
    const schema = z.toJSONSchema(historyExportSchema, { target: 'draft-7', io: 'input' });
    expect(Object.keys(schema.properties ?? {})).toEqual(Object.keys(document));
  });

  it('gives every event back under its own id and file', () => {
    const { files, known, unread } = importJson(text, readEvent, none);
    expect(files.map(({ file, events }) => [file, events.map(({ id }) => id)])).toEqual([
      ['w1', ['w1:1', 'w1:2']],
      ['s1', ['s1:1']],
    ]);
    expect([known, unread]).toEqual([0, 0]);
  });

  it('imports nothing twice, not even from a file that holds an event twice', () => {
    const twice = JSON.stringify({ ...document, events: [...document.events, ...document.events] });
    const { files, known } = importJson(twice, readEvent, { ...none, events: new Set(['w1:1']) });
    expect(files.flatMap(({ events }) => events.map(({ id }) => id))).toEqual(['w1:2', 's1:1']);
    expect(known).toBe(4);
  });

  it('leaves a session alone that came in by another way', () => {
    const opened = { type: 'session-opened', session: 'a', id: 's1:0', at: { wall: 0 } };
    const held = JSON.stringify({ ...document, events: [opened, ...document.events] });
    const { files } = importJson(held, readEvent, { ...none, sessions: new Set(['a']) });
    expect(files.map(({ file }) => file)).toEqual(['w1']);
  });

  it('counts what it cannot read and keeps it out', () => {
    const { files, unread } = importJson(
      text,
      (value) => {
        const event = value as JournalEvent;
        return event.id === 'w1:2' ? null : event;
      },
      none,
    );
    expect(files[0]?.events).toHaveLength(1);
    expect(unread).toBe(1);
  });

  it.each([
    ['{"schema":1', /not JSON, or it was cut short/],
    ['[]', /no history that holdfast exported: the document/],
    [JSON.stringify({ ...document, schema: 2 }), /exported by a newer version of holdfast/],
    [JSON.stringify({ ...document, schema: 'x' }), /no history that holdfast exported: schema/],
  ])('refuses %.20s', (bad, message) => {
    expect(() => importJson(bad, readEvent, none)).toThrow(message);
  });
});
