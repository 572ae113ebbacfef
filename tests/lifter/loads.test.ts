import { describe, expect, test } from 'vitest';
import { equipmentAfter, madeUp } from '../../src/lifter/gear.ts';
import { CATALOGUE } from '../../src/program/catalogue.ts';
import { rackFor, shareBelow, stepAbove } from '../../src/progression/rack.ts';
import { defaultGear } from '../../src/training/default-gear.ts';
import type { Gear } from '../../src/training/gear.ts';
import { KITS } from '../../src/training/kits.ts';
import type { Lift } from '../../src/training/lift.ts';
import { nextAbove } from '../../src/training/loads.ts';
import {
  kilograms,
  type Mass,
  massText,
  micrograms,
  pounds,
  type Unit,
} from '../../src/training/mass.ts';

/**
 * What each kind of load is made of, from the lightest up: what is really lifted of it, the steps from
 * it, and what is put on. Kept as text, so that no load moves unseen.
 */
const GYMS: Readonly<Record<string, readonly [Unit, Gear]>> = {
  'home-in-kg': ['kg', defaultGear('kg')],
  'home-in-lb': ['lb', defaultGear('lb')],
  ...Object.fromEntries(
    KITS.map(({ name, gear }) => [name.replaceAll(/[ ,]+/g, '-'), ['kg', gear('kg')] as const]),
  ),
  'small-things': [
    'kg',
    {
      ...defaultGear('kg'),
      stacks: [stack('pulldown', 5, 2.5, 40)],
      bars: [...defaultGear('kg').bars, { name: 'short bar', mass: kg(7.5), collars: kg(0.5) }],
      plates: [
        { stamped: kg(10), count: 2, measured: kg(9.9) },
        { stamped: kg(2.5), count: 4 },
        { stamped: { amount: 10, unit: 'lb' }, count: 2 },
        { stamped: kg(1.25), count: 1 },
      ],
      safeties: true,
    },
  ],
};

const LIFTS = ['back-squat', 'dumbbell-bench-press', 'dumbbell-row', 'lat-pulldown', 'pull-up'];
const OTHERS = ['push-up', 'plank', 'band-row', 'farmer-carry'];
const MOST = 9;

function kg(amount: number) {
  return { amount, unit: 'kg' } as const;
}

function stack(name: string, lowest: number, step: number, highest: number) {
  return { name, lowest: kg(lowest), step: kg(step), highest: kg(highest) };
}

function told(lift: Lift, gear: Gear, unit: Unit, body: Mass | null): readonly string[] {
  const need = { ...lift, bar: null, step: null };
  const rack = rackFor(need, gear, body);
  const words = (load: Mass | null) => (load === null ? '-' : massText(load, unit));
  const lines: string[] = [];
  let load: Mass | null = rack.loads.lightest;
  let loaded = equipmentAfter([], gear);
  for (let at = 0; load !== null && at < MOST; at += 1) {
    const system = rack.system(load);
    const on = madeUp(need, load, gear, unit, loaded);
    const parts = [
      `lifted ${words(system)}`,
      `set for it ${system === null ? '-' : words(rack.setting(system))}`,
      `up ${words(stepAbove(rack, load))}`,
      `at most 90 % ${words(shareBelow(rack, load, 0.9))}`,
      on ? `on ${on.words}; ${on.change ?? '-'}; ${on.digits}` : 'nothing on',
    ];
    lines.push(`  ${words(load)}: ${parts.join(', ')}`);
    loaded = equipmentAfter([{ exercise: need, load } as never], gear);
    load = nextAbove(rack.loads, load);
  }
  return lines;
}

describe('what is put on', () => {
  const squat = { ...CATALOGUE.get('back-squat')!, bar: null, step: null };
  const pullUp = { ...CATALOGUE.get('pull-up')!, bar: null, step: null };
  const at = (load: number) => ({ exercise: pullUp, load: kilograms(load) }) as never;

  test('names the unit of plates that is another than that of the load', () => {
    const gear = defaultGear('lb');
    const load = micrograms(2 * pounds(45) + pounds(45));
    expect(madeUp(squat, load, gear, 'lb')).toMatchObject({ words: '45 a side' });
    expect(madeUp(squat, load, gear, 'kg')).toMatchObject({
      words: '45 lb a side',
      change: 'put on 45 lb a side',
    });
  });

  test('says that the collars are on where the load counts them', () => {
    const [bar] = defaultGear('kg').bars;
    const gear = { ...defaultGear('kg'), bars: [{ ...bar!, collars: kg(5) }] };
    expect(madeUp(squat, kilograms(65), gear, 'kg')?.words).toBe('20 a side, collars on');
  });

  test('is a band that nobody has hung yet, then no change, then what changes of the bands', () => {
    const gear = {
      ...defaultGear('kg'),
      bands: [
        { name: 'light band', assistance: kg(10) },
        { name: 'heavy band', assistance: kg(35) },
      ],
    };
    const change = (load: number, ...before: number[]) =>
      madeUp(pullUp, kilograms(load), gear, 'kg', equipmentAfter(before.map(at), gear))?.change;
    expect(change(-35)).toBe('use heavy band');
    expect(change(-35, -35)).toBeNull();
    expect(change(-45, -35)).toBe('add light band');
    expect(change(-35, -45)).toBe('without light band');
    expect(change(-10, -35)).toBe('use light band');
    expect(change(-10, 10)).toBe('take off 10 on the belt, use light band');
    expect(change(10, -10)).toBe('put on 10 on the belt, without light band');
  });
});

test.each(Object.entries(GYMS))('%s', async (name, [unit, gear]) => {
  const texts = [...LIFTS, ...OTHERS].flatMap((key) => {
    const lift = CATALOGUE.get(key);
    if (!lift) return [];
    const bodies = lift.loading === 'bodyweight' ? [kilograms(80), null] : [kilograms(80)];
    return bodies.map((body) =>
      [
        `${key}${body === null ? ', body weight not known' : ''}`,
        ...told(lift, gear, unit, body),
      ].join('\n'),
    );
  });
  await expect(`${texts.join('\n\n')}\n`).toMatchFileSnapshot(`loads/${name}.txt`);
});
