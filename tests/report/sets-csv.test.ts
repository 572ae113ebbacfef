import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Result, SessionDone } from '../../src/progression/past.ts';
import { importCsv } from '../../src/report/import-csv.ts';
import { weighInKey } from '../../src/report/import-json.ts';
import { SET_COLUMNS } from '../../src/report/set-columns.ts';
import { setsCsv, weighInsCsv } from '../../src/report/sets-csv.ts';
import { kilograms, micrograms, pounds } from '../../src/training/mass.ts';
import { day, LIFTS, madePast, madeResult, madeSession } from '../cut/made.ts';

const results = [
  madeResult({ lift: LIFTS.squat, on: '2026-11-20', load: 80, counts: [6, 5, 5] }),
  madeResult({
    lift: LIFTS.raise,
    on: '2026-11-20',
    load: 8,
    counts: [14, 5, 4],
    style: 'cluster',
    range: [12, 15],
    asked: 5,
    finished: true,
  }),
  madeResult({
    lift: LIFTS.pullUp,
    on: '2026-11-24',
    load: -20,
    counts: [8, 7],
    asked: 3,
    pain: true,
  }),
];
const sessions = [madeSession('2026-11-20'), madeSession('2026-11-24', { how: 'abandoned' })];
const pastOf = (made: readonly Result[], done: readonly SessionDone[] = []) =>
  madePast(made, null, { sessions: done });
const none = {
  sessions: new Set<string>(),
  weighIns: new Set<string>(),
  waists: new Set<string>(),
  until: day('2027-01-01'),
};
const text = setsCsv(pastOf(results, sessions), 'kg');

describe('sets as comma-separated values', () => {
  it('has one row a set, as a reference parser reads it', () => {
    const rows = parse(text, { columns: true }) as Record<string, string>[];
    expect(rows).toHaveLength(8);
    expect(rows[0]).toMatchObject({
      session: 's-2026-11-20',
      date: '2026-11-20',
      lift: 'back-squat',
      trains: 'glutes:1 quads:1 hamstrings:0.5',
      set: '1',
      role: 'straight',
      load: '80',
      unit: 'kg',
      count: '6',
      reserve: '1',
      // Brzycki 1993: 80 kg × 36 ÷ (37 − 7), six reps and one in reserve.
      e1rm: '96',
    });
    expect(rows.map(({ role }) => role)).toEqual([
      'straight',
      'straight',
      'straight',
      'lead',
      'mini',
      'mini',
      'straight',
      'straight',
    ]);
    expect(rows[6]).toMatchObject({
      load: '-20',
      pain: 'yes',
      finished: 'no',
      closed: 'no',
      exercise: '1',
    });
  });

  it('documents every column, each under one name', () => {
    const names = SET_COLUMNS.map(({ name }) => name);
    expect(new Set(names).size).toBe(names.length);
    expect(SET_COLUMNS.every(({ holds }) => holds.length > 0)).toBe(true);
  });

  it('keeps masses exact in either unit', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -500_000_000_000, max: 500_000_000_000 }),
        fc.constantFrom('kg' as const, 'lb' as const),
        (count, unit) => {
          const [result] = results;
          if (!result) throw new Error('made above');
          const set = {
            id: 'made:1',
            load: micrograms(count),
            count: 5,
            reserve: null,
            entered: 'typed' as const,
          };
          const written = setsCsv(pastOf([{ ...result, sets: [set] }]), unit);
          const facts = importCsv(written, none).sessions[0]?.facts ?? [];
          expect(facts.find(({ type }) => type === 'set-done')).toMatchObject({ load: count });
        },
      ),
      { numRuns: 200 },
    );
  });
});

describe('the import of sets', () => {
  it('gives back what was done: loads, counts, reserves, pain and ends', () => {
    const { sessions: read, known } = importCsv(text, none);
    expect(known).toBe(0);
    expect(read.map(({ session, start }) => [session, start])).toEqual(
      sessions.map(({ session, start }) => [session, start]),
    );
    const types = read.map(({ facts }) => facts.map(({ type }) => type));
    expect(types).toEqual([
      [
        'session-opened',
        'set-done',
        'set-done',
        'set-done',
        'set-done',
        'set-done',
        'set-done',
        'cluster-ended',
        'session-closed',
      ],
      [
        'session-opened',
        'set-done',
        'set-done',
        'pain-marked',
        'exercise-skipped',
        'session-closed',
      ],
    ]);
    expect(read[0]?.facts[4]).toEqual({
      type: 'set-done',
      exercise: 1,
      role: 'lead',
      index: 0,
      load: kilograms(8),
      count: 14,
      reserve: 1,
      entered: 'typed',
    });
    expect(read[0]?.facts[7]).toMatchObject({ type: 'cluster-ended', reason: 'fewer-reps' });
    expect(read[1]?.facts.at(-1)).toMatchObject({ how: 'as-it-is' });
  });

  it('rebuilds the exercise as it was prescribed, as far as the columns tell', () => {
    const opened = importCsv(text, none).sessions[0]?.facts[0];
    if (opened?.type !== 'session-opened') throw new Error('a session begins with its opening');
    for (const [at, exercise] of opened.prescription.exercises.entries()) {
      const made = results[at]?.exercise;
      expect(exercise).toMatchObject({ ...made, rest: { from: 0, to: 0 } });
    }
    expect(opened.prescription).toMatchObject({
      program: 'Lean spring',
      day: 'A',
      date: '2026-11-20',
      aim: 'cut',
    });
  });

  it('imports nothing twice', () => {
    const again = importCsv(text, { ...none, sessions: new Set(['s-2026-11-20']) });
    expect(again.sessions.map(({ session }) => session)).toEqual(['s-2026-11-24']);
    expect(again.known).toBe(1);
  });

  it('keeps the local date of a session, by the smallest shift from Greenwich that does', () => {
    const [made] = results;
    const midnight = Date.UTC(2026, 10, 20);
    const zoneAt = (start: number): number => {
      const [session] = importCsv(setsCsv(pastOf([{ ...made!, start }]), 'kg'), none).sessions;
      return session!.zone;
    };
    const dateAt = (start: number, zone: number): string =>
      new Date(start + zone * 60_000).toISOString().slice(0, 10);
    const start = fc.integer({ min: midnight - 14 * 3_600_000, max: midnight + 38 * 3_600_000 });
    fc.assert(
      fc.property(start, (at) => {
        const zone = zoneAt(at);
        expect(dateAt(at, zone)).toBe('2026-11-20');
        if (zone !== 0) expect(dateAt(at, zone - Math.sign(zone))).not.toBe('2026-11-20');
      }),
      { numRuns: 100 },
    );
    // 07:30 in Auckland is still the 19th in Greenwich; the day's first and last instants are of the day.
    const minute = 60_000;
    const day = 24 * 60 * minute;
    expect(
      [-330 * minute, -1, 0, day - 1, day, day + minute].map((ms) => zoneAt(midnight + ms)),
    ).toEqual([330, 1, 0, 0, -1, -2]);
  });

  it.each([
    [
      'count',
      'many',
      /Row 2, column count: found "many", expected a whole number from 0 to 10000\./,
    ],
    ['date', '2026-13-01', /Row 2, column date: found "2026-13-01", expected a date/],
    ['move', 'leap', /column move: found "leap", expected start, up, hold, ease, return\./],
    ['trains', 'wings:1', /column trains: "wings:1" is no muscle with its share/],
    ['load', '9999', /column load: found "9999", expected a mass up to 1000 kg\./],
  ])('says where it found a bad %s', (column, bad, message) => {
    const at = SET_COLUMNS.findIndex(({ name }) => name === column);
    const [head = '', first = '', ...rest] = text.split('\r\n');
    const cells = first.split(',');
    cells[at] = bad;
    expect(() => importCsv([head, cells.join(','), ...rest].join('\r\n'), none)).toThrow(message);
  });

  it('refuses a file of another kind', () => {
    expect(() => importCsv('a,b\r\n1,2\r\n', none)).toThrow(/has no column session, start/);
  });
});

describe('weigh-ins as comma-separated values', () => {
  const weighIns = [
    { date: day('2026-11-20'), mass: kilograms(82.4) },
    { date: day('2026-11-21'), mass: pounds(181.2) },
  ];

  it('come back exactly, and none twice', () => {
    const written = weighInsCsv(weighIns, 'lb');
    expect(importCsv(written, none).weighIns).toEqual(
      weighIns.map(({ date, mass }) => ({ on: date.toString(), mass })),
    );
    const known = new Set([weighInKey('2026-11-20', kilograms(82.4))]);
    const again = importCsv(written, { ...none, weighIns: known });
    expect(again).toMatchObject({ weighIns: [{ on: '2026-11-21' }], known: 1 });
  });
});
