import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import fc from 'fast-check';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { crc32 } from '../../src/journal/disk/crc32.ts';
import { readCsvText } from '../../src/report/csv-text.ts';
import { AHome } from './a-home.ts';
import { doSession, lifterOf, withTinyProgram } from './a-session.ts';

vi.setConfig({ testTimeout: 120_000 });

let home: AHome;
beforeEach(() => {
  home = new AHome();
  withTinyProgram(home);
});
afterEach(() => home.throwAway());

/** What no event of holdfast holds where something else stood. */
const ABSURD = [
  ...['2026-02-30', '9999-99-99', '', 'x'.repeat(30_000), '\u202e', '__proto__'],
  ...[-1, 0, 1e300, 9e8, 8.64e15 + 1, 0.1],
  ...[null, true, [], {}, Array.from({ length: 5000 }, () => 1)],
] as const;

/** Every place in a value that can be set to another one. */
function placesIn(value: unknown, way: readonly string[] = []): (readonly string[])[] {
  if (typeof value !== 'object' || value === null) return [way];
  return [
    ...(way.length > 0 ? [way] : []),
    ...Object.entries(value).flatMap(([name, inner]) => placesIn(inner, [...way, name])),
  ];
}

function withSet(value: unknown, [name, ...rest]: readonly string[], to: unknown): unknown {
  if (name === undefined) return to;
  const copy = Array.isArray(value) ? [...value] : { ...(value as object) };
  (copy as Record<string, unknown>)[name] = withSet(
    (value as Record<string, unknown>)[name],
    rest,
    to,
  );
  return copy;
}

const signed = (event: unknown): string => {
  const text = JSON.stringify(event);
  return `${crc32(Buffer.from(text)).toString(16).padStart(8, '0')} ${text}`;
};

const COMMANDS = [
  ['today'],
  ['review'],
  ['history'],
  ['history', 'back squat'],
  ['export', '--as', 'json'],
  ['export', '--as', 'csv'],
  ['gear'],
] as const;

test('one event with an absurd value stops nothing, and the file is named', async () => {
  doSession(home);
  const lifter = lifterOf(home);
  const journal = lifter.journal();
  journal.record({ type: 'gear-set', gear: lifter.gear() });
  journal.record({ type: 'weighed', mass: 80e9 as never, on: '2026-11-20' });
  const month = join(home.data, 'journal', '2026-11');
  const files = readdirSync(month).map((name) => join(month, name));
  const lines = files.flatMap((file) =>
    readFileSync(file, 'utf8')
      .trim()
      .split('\n')
      .map((line, at) => ({ file, at, event: JSON.parse(line.slice(9)) as object })),
  );
  const places = lines.flatMap((line) => placesIn(line.event).map((way) => ({ ...line, way })));
  await fc.assert(
    fc.asyncProperty(
      fc.constantFrom(...places),
      fc.constantFrom(...ABSURD),
      async ({ file, at, event, way }, absurd) => {
        const whole = readFileSync(file, 'utf8');
        const all = whole.trim().split('\n');
        all[at] = signed(withSet(event, way, absurd));
        writeFileSync(file, `${all.join('\n')}\n`);
        try {
          for (const command of COMMANDS) {
            const before = performance.now();
            const { status, err } = await home.run(...command);
            expect([0, 1, 2], `${command.join(' ')}: ${err}`).toContain(status);
            expect(performance.now() - before).toBeLessThan(2000);
          }
          const { status, out } = await home.run('doctor');
          expect([0, 1]).toContain(status);
          // Gear that was typed so is said to be wrong as gear.
          if (status === 1) expect(out).toMatch(new RegExp(`${basename(file)}|gear  as last set`));
        } finally {
          writeFileSync(file, whole);
        }
      },
    ),
    { numRuns: Number(process.env.BAD_EVENTS ?? 40) },
  );
});

const understoodIn = async (): Promise<string> => (await home.run('doctor')).out;

test.each([
  ['5000', '--sure'],
  ['99999lb', '--sure'],
  ['80', '--sure', '--date', '0001-01-01'],
  ['80', '--sure', '--date', '1899-12-31'],
])(
  'a weigh-in that the journal would not understand is refused, never called saved: %s',
  async (...words) => {
    expect((await home.run('weigh', ...words)).status).toBe(2);
    expect(await understoodIn()).not.toContain('does not understand');
  },
);

test('nothing is written that would not be understood when it is read again', () => {
  const journal = lifterOf(home).journal();
  const absurd = { type: 'weighed', mass: 5e12 as never, on: '2026-11-20' } as const;
  expect(() => journal.record(absurd)).toThrow(/Nothing was saved/);
  expect(readdirSync(home.folder)).not.toContain('data');
});

test('a table with an absurd cell is refused, or all of it is understood', async () => {
  doSession(home);
  const { out } = await home.run('export', '--as', 'csv');
  const [headings = [], ...rows] = readCsvText(out);
  const quoted = (cells: readonly unknown[]) => cells.map((cell) => `"${cell}"`).join(',');
  const absurd = [
    '-1',
    '0',
    '1e300',
    '9999',
    '0.1',
    '1200',
    '+275760-01-01T00:00:00Z',
    'x'.repeat(30_000),
  ];
  for (const [at, heading] of headings.entries()) {
    for (const cell of absurd) {
      const file = join(home.folder, 'changed.csv');
      const changed = rows.map((row) => row.with(at, cell));
      writeFileSync(file, [headings, ...changed].map(quoted).join('\n'));
      const data = join(home.folder, `${heading}-${absurd.indexOf(cell)}`);
      const { status, err } = await home.run('import', file, '--data', data);
      expect([0, 2], `${heading} ${cell.slice(0, 30)}: ${err}`).toContain(status);
      if (status === 2) continue;
      const doctor = await home.run('doctor', '--data', data);
      expect(doctor.out, `${heading} ${cell.slice(0, 30)}`).not.toContain('does not understand');
    }
  }
});
