import { describe, expect, test } from 'vitest';
import { gearSchema } from '../../src/settings/gear-schema.ts';
import { gearProblems } from '../../src/training/check-gear.ts';
import { defaultGear } from '../../src/training/default-gear.ts';
import { isLoadable, loadsFor } from '../../src/training/loads.ts';
import { mass } from '../../src/training/mass.ts';

describe.each(['kg', 'lb'] as const)('gear to begin with, in %s', (unit) => {
  const gear = defaultGear(unit);
  const need = { loading: 'barbell', hands: 1, bar: null, step: null } as const;

  test('has nothing wrong with it, and can be stored', () => {
    expect(gearProblems(gear)).toEqual([]);
    expect(gearSchema().parse(gear)).toEqual(gear);
  });

  test('loads every usual step of a bar', () => {
    const [bar, step, most] = unit === 'kg' ? [20, 2.5, 200] : [45, 5, 400];
    const loads = loadsFor(gear, need);
    for (let load = bar; load <= most; load += step) {
      expect(isLoadable(loads, mass(load, unit))).toBe(true);
    }
  });

  test('has dumbbells, handles and plates in pairs, and a belt', () => {
    expect(gear.plates.map(({ count }) => count % 2)).toEqual(gear.plates.map(() => 0));
    for (const { count } of [...gear.dumbbells, ...gear.handles]) expect(count).toBe(2);
    expect(gear.belt).toBe(true);
  });

  test('assumes no safeties', () => {
    expect(gear.safeties).toBe(false);
  });
});
