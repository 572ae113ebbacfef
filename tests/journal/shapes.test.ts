import { expect, test } from 'vitest';
import { EVENT_TYPES, readEvent } from '../../src/journal/read-event.ts';
import type { JournalEvent } from '../../src/journal/records.ts';
import { because } from '../../src/progression/rules/progression-rules.ts';
import { defaultGear } from '../../src/training/default-gear.ts';
import { kilograms } from '../../src/training/mass.ts';
import { cluster, play, prescription, straight } from '../session/a-session.ts';

/**
 * What may stand at each place of each kind of event, kept as text in `shapes.txt`: of the values
 * below those that are read there. A file of another program, or of a newer version, is full of them.
 */
const VALUES: readonly (readonly [string, unknown])[] = [
  ['nothing', undefined],
  ['null', null],
  ['yes', true],
  ['0', 0],
  ['2', 2],
  ['-1', -1],
  ['1.5', 1.5],
  ['2e12', 2e12],
  ['""', ''],
  ['"text"', 'text'],
  ['"2026-02-30"', '2026-02-30'],
  ['[]', []],
  ['[1, 2]', [1, 2]],
  ['[1, 2, 3]', [1, 2, 3]],
  ['["text"]', ['text']],
  ['{}', {}],
  ['{ a: null }', { a: null }],
  ['{ a: {} }', { a: {} }],
];

const STAMP = { id: 'file:1', at: { wall: Date.UTC(2026, 10, 25), up: 5, boot: 'boot' }, zone: 60 };
const place = { exercise: 0, role: 'straight', index: 0 } as const;
const rest = { from: 60, to: 90 };
const why = [because('up-in-range', { load: kilograms(80), numbers: [1, 2], since: '2026-11-20' })];
const last = { date: '2026-11-20', load: kilograms(80), counts: [8] };
const lift = {
  ...straight({ pair: 'a', warmsUp: true, testSet: true, hurts: ['knee'], why, last } as object),
  inProgram: { day: 'A', position: 0, lift: 'row' },
  reservePlanned: [1, 2],
  warmUp: [{ load: kilograms(40), reps: 5 }],
};
const day = {
  ...prescription(lift as never, cluster()),
  daysPerWeek: 3,
  short: { minutes: 30, cut: why },
  warnings: why,
};
const name = { name: 'a name' };
const mass = { amount: 20, unit: 'kg' as const };
const gear = {
  ...defaultGear('kg'),
  bars: [{ ...name, mass, collars: mass }],
  plates: [{ stamped: mass, count: 2 }],
  dumbbells: [{ stamped: mass, count: 2 }],
  handles: [{ mass, count: 2 }],
  stacks: [{ ...name, lowest: mass, step: mass, highest: mass }],
  bands: [{ ...name, assistance: mass }],
};
const session = play(prescription(straight())).state().session;

const FACTS: Readonly<Record<JournalEvent['type'], object>> = {
  'session-opened': { session, device: 'laptop', prescription: day },
  'set-started': place,
  'start-withdrawn': {},
  'set-done': { ...place, load: 8e10, count: 5, reserve: 1, failed: true, entered: 'typed' },
  'set-amended': { of: 'file:0', load: 8e10, count: 5, reserve: 1, failed: true },
  'sets-confirmed': { of: ['file:0'] },
  'set-skipped': place,
  'warm-ups-skipped': { exercise: 0 },
  'exercise-skipped': { exercise: 0 },
  'exercise-chosen': { exercise: 0 },
  paired: { exercises: [0, 1] },
  'pair-parted': { exercise: 0 },
  'set-added': { exercise: 0 },
  'day-shortened': {
    minutes: 30,
    exercises: [{ exercise: 0, sets: 2, rest }],
    pairs: [[0, 1]],
    restBetween: rest,
    cut: why,
  },
  'cluster-ended': { exercise: 0, reason: 'lifter' },
  'cluster-resumed': { exercise: 0 },
  'exercise-replaced': { exercise: 0, by: cluster(), because: 'other-lift' },
  'rest-changed': { by: 30 },
  paused: {},
  resumed: {},
  'pain-marked': { exercise: 0 },
  'note-written': { exercise: 0, text: 'a note' },
  undone: { of: 'file:0' },
  'session-closed': { how: 'finished' },
  'session-discarded': {},
  weighed: { mass: 8e10, on: '2026-11-25', sure: true },
  'waist-measured': { length: 860_000, on: '2026-11-25' },
  decided: { rule: 'a rule', answer: 'yes', subject: null },
  'gear-set': { gear },
  'kit-kept': { name: 'a kit', gear },
  deleted: { of: 'file:0' },
  imported: { of: ['file:0'] },
  'session-taken-over': { session, after: 'file:0', device: 'laptop' },
};

type Path = readonly (string | number)[];

/** Every place in a value, of a list its first item. */
function placesIn(value: unknown, at: Path = []): readonly Path[] {
  if (typeof value !== 'object' || value === null) return [at];
  const entries = Array.isArray(value) ? value.slice(0, 1).entries() : Object.entries(value);
  return [at, ...[...entries].flatMap(([key, one]) => placesIn(one, [...at, key]))];
}

function put(value: unknown, [key, ...more]: Path, odd: unknown): unknown {
  if (key === undefined) return odd;
  const inside = put((value as Record<string | number, unknown>)[key], more, odd);
  if (Array.isArray(value)) return value.with(Number(key), inside);
  return { ...(value as object), [key]: inside };
}

const isRead = (event: unknown): boolean => readEvent(event) !== null;

test('each kind of event is read', () => {
  expect(Object.keys(FACTS)).toEqual(EVENT_TYPES);
  for (const [type, fact] of Object.entries(FACTS)) {
    expect([type, isRead({ type, ...fact, ...STAMP })]).toEqual([type, true]);
  }
});

test('at each place only what can stand there is read', async () => {
  const told = (event: object, paths: readonly Path[]) =>
    paths.map((path) => {
      const fit = VALUES.filter(([, odd]) => isRead(put(event, path, odd)));
      return `  ${path.join('.')}: ${fit.map(([words]) => words).join(', ') || 'none of them'}`;
    });
  const stamped = { type: 'paused', ...STAMP };
  const lines = [
    'any',
    ...told(stamped, placesIn(stamped).slice(1)),
    ...Object.entries(FACTS).flatMap(([type, fact]) => [
      type,
      ...told({ type, ...fact, ...STAMP }, placesIn(fact).slice(1)),
    ]),
  ];
  await expect(`${lines.join('\n')}\n`).toMatchFileSnapshot('shapes.txt');
});
