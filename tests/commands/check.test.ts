import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { openCoach } from '../../src/lifter/open-coach.ts';
import { openLifter } from '../../src/lifter/open-lifter.ts';
import { AHome } from './a-home.ts';

let home: AHome;
beforeEach(() => {
  home = new AHome();
});
afterEach(() => home.throwAway());

const BENCH_ONLY = `name: Bench only
unit: kg
days:
  - name: A
    exercises:
      - lift: bench-press
        sets: 9
        reps: 5-8
`;

function file(text: string): string {
  const path = join(home.folder, 'plan.yaml');
  writeFileSync(path, text);
  return path;
}

test('a shipped program passes with advice, and not with --strict', async () => {
  const { status, out } = await home.run('check', 'three-day');
  expect(status).toBe(0);
  expect(out).toContain('0 errors, 2 pieces of advice.');
  expect((await home.run('check', 'three-day', '--strict')).status).toBe(1);
  await home.run('gear', '--safeties', 'yes');
  const strict = await home.run('check', 'three-day', '--strict');
  expect([strict.status, strict.out]).toEqual([0, expect.stringContaining('No findings')]);
});

// Three days of nine sets are 27 for the chest; more than half again over ten is an error (ours).
test('an error is named with its line and column, what would mend it, and exit 1', async () => {
  const path = file(BENCH_ONLY);
  const { status, out } = await home.run('check', path);
  expect(status).toBe(1);
  const text = out.replace(/\s+/g, ' ');
  expect(text).toContain(`${path}:6:9: error: 27 hard sets a week for the chest`);
  expect(text).toContain('Take 6 sets off, from Bench press.');
  expect(out).toMatch(/^chest +27 +3 +3 +#+/m);
});

test.each([34, 59, 60, 120])(
  'in %d columns every line fits, with bars where they tell anything',
  async (columns) => {
    home.columns = columns;
    const { out } = await home.run('check', file(`${BENCH_ONLY}accept:\n  push-pull: no\n`));
    const lines = out.split('\n').filter((line) => !line.includes('plan.yaml'));
    for (const line of lines) expect([...line].length, line).toBeLessThanOrEqual(columns);
    // Advice begins under the finding it belongs to.
    expect(out).toMatch(/^ {2}\S/m);
    expect(/^chest .*#/m.test(out)).toBe(columns >= 60);
  },
);

test('what the file accepts is quiet', async () => {
  const path = file(`${BENCH_ONLY}accept:\n  many-hard-sets: I know what I do\n`);
  const { status, out } = await home.run('check', path);
  expect(status).toBe(0);
  expect(out).toContain('Accepted: many-hard-sets, "I know what I do".');
  const found = (await home.json('check', path)).findings as readonly Record<string, unknown>[];
  const sets = found.filter(({ rule }) => rule === 'many-hard-sets');
  expect(sets.map(({ accepted }) => accepted)).toContain('I know what I do');
});

test('a file that cannot be read is exit 2', async () => {
  expect((await home.run('check', file('name: x\nunit: stone\n'))).status).toBe(2);
  expect((await home.run('check', 'no-such-program')).status).toBe(2);
});

test('an error stops a new session with a sentence', () => {
  const lifter = openLifter(home.ports(), { data: null, program: file(BENCH_ONLY) });
  const coach = openCoach(lifter, () => lifter.settings().settings);
  expect(coach.begin()).toMatchObject({ what: expect.stringContaining('27 hard sets') });
  expect(coach.live()).toBeNull();
  lifter.journal().release();
});
