import { existsSync, readdirSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { Temporal } from 'temporal-polyfill';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { demoHistory } from '../../src/lifter/demo.ts';
import { reviewOf } from '../../src/lifter/look-back.ts';
import { AHome } from './a-home.ts';
import { lifterOf } from './a-session.ts';
import { withDemoWeeks } from './demo-weeks.ts';

const DAY = Temporal.PlainDate.from('2026-11-25');

describe('the demo', () => {
  let home: AHome;
  beforeAll(() => {
    home = new AHome();
  });
  afterAll(() => home.throwAway());

  test('runs a command on invented weeks, says so, and takes the folder away', async () => {
    const { status, out, err } = await home.run('demo', 'review');
    expect(status).toBe(0);
    expect(out).toMatch(/Strength kept/);
    const [folder = ''] = /\S*holdfast-demo-\w+/.exec(err) ?? [];
    expect(err).toMatch(/^A demo: twelve invented weeks/);
    expect(folder).not.toBe('');
    expect(existsSync(folder)).toBe(false);
  });

  test('takes options of the command and of the program wherever they stand', async () => {
    const { out } = await home.run('--json', 'demo', 'review', '--weeks', '2');
    expect((JSON.parse(out) as { weeks: unknown[] }).weeks).toHaveLength(2);
  });

  test('touches nothing of the lifter’s own', async () => {
    await home.run('demo', 'weigh', '79');
    expect(existsSync(home.data)).toBe(false);
    expect(existsSync(home.config)).toBe(false);
    const { err } = await home.run('history');
    expect(err).toContain('No results yet');
  });

  test('takes no data folder, and is not nested', async () => {
    expect(await home.run('demo', '--data', home.data, 'review')).toMatchObject({
      status: 2,
      err: expect.stringContaining('takes no --data'),
    });
    const { status, err } = await home.run('demo', 'demo');
    expect([status, err]).toEqual([2, expect.stringContaining('This is the demo already.')]);
  });

  test('ends with the status of the command, and leaves no folder behind even then', async () => {
    // Other tests make demos of their own at the same time.
    vi.stubEnv('TMPDIR', home.folder);
    const before = demoFolders();
    expect((await home.run('demo', 'reviev')).status).toBe(2);
    expect(demoFolders()).toEqual(before);
    vi.unstubAllEnvs();
  });
});

const demoFolders = () => readdirSync(tmpdir()).filter((name) => name.startsWith('holdfast-demo-'));

describe('the story of the demo', () => {
  let home: AHome;
  beforeAll(() => {
    home = new AHome();
    withDemoWeeks(home);
  });
  afterAll(() => home.throwAway());

  test('is the same whenever it is told, whatever day it is', () => {
    const program = lifterOf(home).program();
    const moved = demoHistory(program, DAY.add({ days: 3 }), 60);
    const told = demoHistory(program, DAY, 60);
    const sets = (files: typeof told) =>
      files
        .flat()
        .flatMap((event) => (event.type === 'set-done' ? [[event.load, event.count]] : []));
    expect(sets(moved)).toEqual(sets(told));
    expect(demoHistory(program, DAY, 60)).toEqual(told);
  });

  test('is read without a fault, ends at the present day, and misses a week', () => {
    const lifter = lifterOf(home);
    const { sessions, weighIns, unreadable, closed } = lifter.journal().history();
    expect(unreadable).toEqual([]);
    expect(sessions).toHaveLength(3 * 11);
    expect(sessions.every(({ foreign, how }) => !foreign && how === 'closed')).toBe(true);
    const first = sessions[0]?.date ?? DAY;
    const last = sessions.at(-1)?.date ?? DAY;
    expect(last.until(DAY, { largestUnit: 'days' }).days).toBeLessThanOrEqual(2);
    expect(first.until(DAY, { largestUnit: 'days' }).days).toBe(83);
    const gaps = sessions.slice(1).map(({ date }, at) => {
      return (sessions[at]?.date ?? date).until(date, { largestUnit: 'days' }).days;
    });
    expect(Math.max(...gaps)).toBeGreaterThanOrEqual(9);
    expect(weighIns.length).toBeGreaterThan(50);
    expect(closed().flatMap(({ notes }) => notes)).toHaveLength(2);
  });

  test('shows what there is to show: loss as planned, strength that holds, advice to take', () => {
    const { evidence, verdict } = reviewOf(lifterOf(home), 12);
    const rate = evidence.rate?.now;
    expect(rate?.kind).toBe('known');
    if (rate?.kind !== 'known') return;
    // Helms 2014: 0.5–1 % of body weight a week.
    expect(rate.percentAWeek).toBeGreaterThan(0.5);
    expect(rate.percentAWeek).toBeLessThan(1);
    expect(evidence.kept?.share).toBeGreaterThan(0.95);
    const slipping = new Set(
      evidence.exercises.flatMap(({ slip, exercise }) => (slip ? [exercise.lift.key] : [])),
    );
    expect(slipping.size).toBe(0);
    const changes = [verdict.headline, ...verdict.below].flatMap(({ changes }) => changes);
    expect(changes.length).toBeGreaterThan(0);
  });
});
