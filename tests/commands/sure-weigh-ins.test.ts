import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { AHome } from './a-home.ts';

let home: AHome;
let other: AHome;
beforeEach(() => {
  home = new AHome();
  other = new AHome();
});
afterEach(() => {
  home.throwAway();
  other.throwAway();
});

/** What the one home exports, imported into the other. */
async function movedOver(...as: string[]) {
  const { out } = await home.run('export', ...as);
  const file = join(other.folder, 'moved');
  writeFileSync(file, out);
  return other.run('import', file);
}

const readings = async () =>
  ((await other.json('export', '--as', 'json')) as { weigh_ins: { mass: number }[] }).weigh_ins.map(
    ({ mass }) => mass,
  );

describe('a weigh-in that was said to be right', () => {
  beforeEach(async () => {
    await home.run('weigh', '83', '--date', '2026-11-24');
    expect((await home.run('weigh', '91')).status).toBe(1);
    expect((await home.run('weigh', '91', '--sure')).status).toBe(0);
  });

  test.each([
    ['json', ['--as', 'json']],
    ['csv', ['--as', 'csv', '--weigh-ins']],
  ])('stays so where an export in %s is imported', async (_, as) => {
    const { out } = await movedOver(...as);
    expect(out).not.toContain('unlikely');
    expect(await readings()).toEqual([83, 91]);
  });

  test('is asked about where a file of before it was kept tells it', async () => {
    const { out } = await home.run('export', '--as', 'csv', '--weigh-ins');
    const file = join(other.folder, 'old.csv');
    writeFileSync(file, out.replaceAll(/,[a-z]+\r?$/gm, ''));
    expect((await other.run('import', file)).out).toContain('1 unlikely weigh-in was left out');
    // Taken all the same it is said to be right, and stays so.
    await other.run('import', file, '--doubtful');
    expect((await other.run('export', '--as', 'csv', '--weigh-ins')).out).toContain('91,kg,yes');
  });
});

describe('one odd weigh-in of a day past, said to be right after the days around it were kept', () => {
  const around = [
    ['2026-11-19', '80'],
    ['2026-11-20', '80.2'],
    ['2026-11-23', '79.9'],
    ['2026-11-24', '79.7'],
    ['2026-11-25', '79.6'],
  ] as const;
  beforeEach(async () => {
    for (const [on, mass] of around) await home.run('weigh', mass, '--date', on);
    for (const [on, mass] of [
      ['2026-11-21', '70'],
      ['2026-11-22', '70.3'],
    ] as const)
      await home.run('weigh', mass, '--date', on, '--sure');
  });

  test.each([
    ['json', ['--as', 'json']],
    ['csv', ['--as', 'csv', '--weigh-ins']],
  ])('leaves those after it in where an export in %s is imported', async (_, as) => {
    const { out } = await movedOver(...as);
    expect(out).not.toContain('unlikely');
    expect(await readings()).toHaveLength(7);
  });

  test('is not what the next day is asked about beside', async () => {
    await home.run('weigh', '70', '--sure');
    home.wall += 86_400_000;
    expect((await home.run('weigh', '79.5')).status).toBe(0);
  });
});

test('a waist far from one of the same day replaces it, and says so', async () => {
  await home.run('weigh', '78', '--waist', '90');
  expect((await home.run('weigh', '--waist', '140')).out).toContain(
    'Saved: waist 140 cm on Wed 25 Nov 2026. It replaces the waist of 90 cm of the same day.',
  );
  expect((await home.run('export', '--as', 'csv', '--waists')).out).not.toContain(',90,');
});
