import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { RehearseJson } from '../../src/commands/rehearse-schema.ts';
import { AHome } from './a-home.ts';

let home: AHome;
beforeEach(() => {
  home = new AHome();
  home.writeSettings({ cautions: 'read', weightAdvice: 'yes' });
});
afterEach(() => home.throwAway());

const rehearsal = async (...args: string[]): Promise<RehearseJson> =>
  (await home.json('rehearse', '--draws', '2', ...args)) as unknown as RehearseJson;

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
      await home.run('rehearse', '--draws', '1', '--seed', '5', '--json'),
      await home.run('rehearse', '--draws', '1', '--seed', '5', '--json'),
      await home.run('rehearse', '--draws', '1', '--seed', '6', '--json'),
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
      'Back squat needs a bar, and your gear has none: it asks for another lift when it is due.',
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
    const { status, out, err } = await home.run('rehearse', '--draws', '3', '--weeks', '6');
    expect([status, err]).toEqual([0, '']);
    for (const line of out.split('\n')) expect([...line].length, line).toBeLessThanOrEqual(80);
    for (const part of ['Three days · 6 weeks', 'kept %', '┤', 'Back squat', 'Strength: ']) {
      expect(out).toContain(part);
    }
    expect(out).toContain('not a forecast');
    // Strength kept to a tenth of a percent, the range of the lifters to a whole one.
    expect(out).toMatch(/^ *6 +3 .* \d+\.\d +\d+–\d+ *$/m);
    const [, low, high] = /^ *6 +3 .* (\d+)–(\d+) *$/m.exec(out) ?? [];
    const json = await rehearsal('--draws', '3', '--weeks', '6');
    expect(Number(low)).toBeCloseTo(json.kept_low * 100, -0.31);
    expect(Number(high)).toBeCloseTo(json.kept_high * 100, -0.31);
    expect(out).toMatch(/^ +last .* \d+\.\d$/m);
    expect(out).toMatch(/Strength: \d+\.\d % \(range \d+\.\d to \d+\.\d\)/);
    expect(out).toMatch(/Body weight at the end: \d+\.\d kg\./);
  });

  it('tells in JSON what it prints in words', async () => {
    const args = ['--weeks', '3', '--loss', '1', '--minutes', '45'];
    const { weeks, muscles, ...told } = await rehearsal(...args);
    const { out } = await home.run('rehearse', '--draws', '2', ...args);
    const text = out.replace(/\s+/g, ' ');
    expect(told).toMatchObject({ schema: 1, unit: 'kg', lifter: 'trained', seed: 1, loss: 1 });
    expect(told).toMatchObject({ cut_to_minutes: 45, compared: null, left_out: [] });
    // Words have a tenth of a percent, JSON a hundredth: what lies between two tenths may go either way.
    const isPrinted = (share: number, words: string | undefined) =>
      expect(Math.abs(Number(words) - share * 100)).toBeLessThan(0.06);
    const ends = /Strength: ([\d.]+) % \(range ([\d.]+) to ([\d.]+)\) kept at the end/.exec(text);
    isPrinted(told.kept, ends?.[1]);
    isPrinted(told.kept_low, ends?.[2]);
    isPrinted(told.kept_high, ends?.[3]);
    expect(text).toContain(`about ${told.minutes} min, ${told.longest_minutes} in the longest`);
    expect(text).toContain(`at the end: ${weeks.at(-1)?.body_weight} kg.`);
    expect(weeks.map(({ week, from }) => `${week} ${from}`)).toEqual([
      '1 2026-11-30',
      '2 2026-12-07',
      '3 2026-12-14',
    ]);
    for (const { week, sessions, minutes, kept: share, exercises, hard_sets } of weeks) {
      const moves = exercises.flatMap((each) => each.moves);
      const counted = ['start', 'up', 'hold', 'ease', 'return']
        .map((move) => moves.filter((each) => each === move).length)
        .filter((count) => count > 0);
      const most = Math.max(...Object.values(hard_sets));
      const cells = [week, sessions, minutes, ...counted, most];
      isPrinted(share, new RegExp(` ${cells.join(' ')} ([\\d.]+) `).exec(text)?.[1]);
    }
    for (const { name, done, reserve, kept: share } of weeks.at(-1)?.exercises ?? []) {
      const row = new RegExp(`${name} first .*? last [^×]*× ${done.join(', ')} ([\\d.]+)`);
      isPrinted(share, row.exec(text)?.[1]);
      expect(reserve, name).toHaveLength(done.length);
    }
    // Every week is judged by 6 to 10 sets of every muscle that is trained directly.
    const shown = muscles.map(({ muscle, mean, least, most, judged }) => {
      expect(least <= mean && mean <= most).toBe(true);
      expect(judged).toBe(mean < 6 ? 'too-little' : mean > 10 ? 'too-much' : 'inside');
      return [muscle.replaceAll('-', ' '), mean.toFixed(1)];
    });
    const bars = [...out.matchAll(/^([a-z ]+?) +[█▌ ░]+│ +([\d.]+)$/gm)];
    expect(bars.map(([, muscle, mean]) => [muscle, mean])).toEqual(shown);
  });

  it('names weeks under the plot at even steps from the first on', async () => {
    const { out } = await home.run('rehearse', '--draws', '1', '--weeks', '16');
    const named = [...(/^ +week 1 .*$/m.exec(out)?.[0] ?? '').matchAll(/week (\d+)/g)].map(
      ([, week]) => Number(week),
    );
    const step = (named[1] ?? 0) - 1;
    expect(step).toBeGreaterThan(1);
    expect(named).toEqual(named.map((_, at) => 1 + at * step));
    expect(16 - (named.at(-1) ?? 0)).toBeLessThan(step);
  });

  it('tells a range over lifters, and how many of them keep their strength', async () => {
    const { draws, kept, kept_low, kept_high, draws_that_keep } = await rehearsal('--weeks', '4');
    expect(draws).toBe(2);
    expect(kept_low).toBeLessThanOrEqual(kept);
    expect(kept_high).toBeGreaterThanOrEqual(kept);
    expect(draws_that_keep).toBeLessThanOrEqual(2);
    const { out } = await home.run('rehearse', '--draws', '2', '--weeks', '4');
    expect(out).toMatch(/of\s+2\s+lifters\s+keep\s+97\s+%/);
    // The load of the first week and of the last.
    expect(out).toMatch(/Back squat +first .*\n +last /);
  });

  it('plays two rates, or two programs, with the same lifters side by side', async () => {
    const args = ['rehearse', '--draws', '3', '--weeks', '8', '--lifter', 'lean', '--compare'];
    const { out } = await home.run(...args, '0.3', '1.2');
    expect(out).toMatch(/0\.3 % a week +1\.2 % a week/);
    expect(out).toMatch(/0\.3 % a week keeps \d\.\d points of strength more\s+\(standard error/);
    const json = (await home.json(...args, '0.3', '1.2')) as unknown as RehearseJson;
    expect(json.compared?.difference).toBeLessThan(0);
    const same = (await home.json(...args, 'three-day', 'three-day')) as unknown as RehearseJson;
    expect(same.compared).toMatchObject({ difference: 0, standard_error: 0 });
  });

  it('plays no loss for who must not be led through one', async () => {
    home.writeSettings({ cautions: 'read', weightAdvice: 'no' });
    const { loss, weeks } = await rehearsal('--weeks', '2');
    expect(loss).toBe(0);
    expect(weeks.at(-1)?.body_weight).toBeCloseTo(80, 0);
    const { status, err } = await home.run('rehearse', '--loss', '0.5');
    expect(status).toBe(2);
    expect(err).toContain('No loss of weight is played');
  });

  it.each([
    [['--weeks', '0'], '--weeks'],
    [['--weeks', 'many'], '--weeks'],
    [['--loss', '9'], '--loss'],
    [['--loss', '3'], 'a case for a doctor'],
    [['--loss', '1.5', '--weeks', '40'], 'lead from 80 kg to 44 kg'],
    [['--lifter', 'giant'], 'novice, trained, lean'],
    [['--compare', '0.5'], 'one name'],
    [['--loss', '-1'], '--loss'],
    [['--seed', '1.5'], '--seed'],
  ])('refuses %s in a sentence', async (args, named) => {
    const { status, out, err } = await home.run('rehearse', ...args);
    expect([status, out]).toEqual([2, '']);
    expect(err).toContain(named);
  });
});
