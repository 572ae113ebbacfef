import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { RehearseJson } from '../../src/commands/rehearse-schema.ts';
import { AHome } from './a-home.ts';

let home: AHome;
beforeEach(() => {
  home = new AHome();
});
afterEach(() => home.throwAway());

const rehearsal = async (...args: string[]): Promise<RehearseJson> =>
  (await home.json('rehearse', ...args)) as unknown as RehearseJson;

describe('holdfast rehearse', () => {
  it('plays twelve weeks from next Monday, losing 0.7 % a week in a cut', async () => {
    const { weeks, from, loss, kept, keeps_strength } = await rehearsal();
    expect(weeks).toHaveLength(12);
    expect([from, loss, keeps_strength]).toEqual(['2026-11-30', 0.7, true]);
    expect(kept).toBeGreaterThanOrEqual(0.97);
    // 80 kg before the first weigh-in; twelve weeks at 0.7 %: 80 × 0.993^12 = 73.5 kg.
    const [first, last] = [weeks[0]?.body_weight ?? 0, weeks.at(-1)?.body_weight ?? 0];
    expect(first).toBeGreaterThan(79.4);
    expect(last).toBeGreaterThan(73.4);
    expect(last).toBeLessThan(74.1);
  });

  it('gives the same for the same seed, and keeps nothing', async () => {
    const [one, again, other] = [
      await home.run('rehearse', '--seed', '5', '--json'),
      await home.run('rehearse', '--seed', '5', '--json'),
      await home.run('rehearse', '--seed', '6', '--json'),
    ];
    expect(one.out).toBe(again.out);
    expect(one.out).not.toBe(other.out);
    const { out } = await home.run('history', '--json');
    expect(out).not.toContain('rehearsal');
  });

  it('leaves out what the gear cannot load, and says so', async () => {
    await home.run('gear', '--bars', 'bar=0');
    const { left_out, weeks } = await rehearsal('--weeks', '2');
    expect(left_out).toContain(
      'Back squat needs a bar, and your gear has none: no load can be made.',
    );
    const loaded = weeks.flatMap(({ exercises }) => exercises).map(({ name }) => name);
    expect(loaded).toContain('Split squat');
    expect(loaded).not.toContain('Back squat');
    const { out } = await home.run('rehearse', '--weeks', '2');
    expect(out).toContain('! Back squat needs a bar');
  });

  it('loses more strength in a deeper deficit', async () => {
    const kept = async (loss: string) => (await rehearsal('--loss', loss)).kept;
    expect(await kept('1.5')).toBeLessThan(await kept('0.3'));
  });

  it('prints a plot, tables and conclusions that fit 80 columns', async () => {
    const { status, out, err } = await home.run('rehearse', '--weeks', '6');
    expect([status, err]).toEqual([0, '']);
    for (const line of out.split('\n')) expect([...line].length, line).toBeLessThanOrEqual(80);
    for (const part of ['Three days · 6 weeks', 'kept %', '┤', 'Back squat', 'Strength: ']) {
      expect(out).toContain(part);
    }
    expect(out).toContain('not a forecast');
  });

  it.each([
    [['--weeks', '0'], '--weeks'],
    [['--weeks', 'many'], '--weeks'],
    [['--loss', '9'], '--loss'],
    [['--loss', '-1'], '--loss'],
    [['--seed', '1.5'], '--seed'],
  ])('refuses %s in a sentence', async (args, named) => {
    const { status, out, err } = await home.run('rehearse', ...args);
    expect([status, out]).toEqual([2, '']);
    expect(err).toContain(named);
  });
});
