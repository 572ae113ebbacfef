import { expect, test } from 'vitest';
import { equipmentAfter, madeUp } from '../../src/lifter/gear.ts';
import { CATALOGUE } from '../../src/program/catalogue.ts';
import { rackFor, shareBelow, stepAbove } from '../../src/progression/rack.ts';
import { defaultGear } from '../../src/training/default-gear.ts';
import type { Gear } from '../../src/training/gear.ts';
import { KITS } from '../../src/training/kits.ts';
import type { Lift } from '../../src/training/lift.ts';
import { nextAbove } from '../../src/training/loads.ts';
import { kilograms, type Mass, massText, type Unit } from '../../src/training/mass.ts';

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
    const on = madeUp(need, load, gear, loaded);
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
