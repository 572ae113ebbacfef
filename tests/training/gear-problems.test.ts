import { expect, test } from 'vitest';
import { gearProblems, gearSurprises } from '../../src/training/check-gear.ts';
import { GEAR_LIMITS, type Gear } from '../../src/training/gear.ts';
import { kg, lb, plates, someGear } from './some-gear.ts';

const found = (changes: Partial<Gear>): string[] =>
  gearProblems(someGear(changes)).map(({ what }) => what);

test('gear that is right has no problems', () => {
  expect(found({ plates: plates(4, kg(20), lb(45), kg(0.5)) })).toEqual([]);
  expect(
    found({ stacks: [{ name: 'pulley', lowest: kg(5), step: kg(2.5), highest: kg(80) }] }),
  ).toEqual([]);
});

test('a plate without a partner is pointed out, and is no mistake', () => {
  const surprises = (count: number, stamped: ReturnType<typeof kg>) =>
    gearSurprises(someGear({ plates: plates(count, stamped) })).map(({ what }) => what);
  expect(surprises(3, kg(20))).toEqual(['There are 3 plates of 20 kg.']);
  expect(surprises(1, lb(45))).toEqual(['There is 1 plate of 45 lb.']);
  expect(surprises(0, kg(20))).toEqual([]);
  expect(found({ plates: plates(3, kg(20)) })).toEqual([]);
});

test('a mass of nothing or less is no mass', () => {
  expect(found({ plates: plates(2, kg(-20)) })).toEqual(['A plate weighs -20 kg.']);
  expect(found({ freeStep: kg(0) })).toEqual(['The step of free loads weighs 0 kg.']);
  expect(found({ bars: [{ name: 'bar', mass: kg(20), collars: kg(-1) }] })).toEqual([
    'The collars of the bar "bar" weighs -1 kg.',
  ]);
  expect(found({ bars: [{ name: 'bar', mass: kg(Number.NaN), collars: kg(0) }] })).toHaveLength(1);
});

test('a count is a whole number', () => {
  expect(found({ plates: plates(2.5, kg(20)) })).toEqual(['The number of plates of 20 kg is 2.5.']);
  expect(found({ handles: [{ mass: kg(2), count: -1 }] })).toEqual([
    'The number of handles of 2 kg is -1.',
  ]);
});

test('a plate far from its stamp was weighed or written wrong', () => {
  const measured = (amount: number) => [{ stamped: kg(20), count: 2, measured: kg(amount) }];
  expect(found({ plates: measured(20.4) })).toEqual([]);
  expect(found({ plates: measured(44) })).toEqual([
    'A plate stamped 20 kg is said to weigh 44 kg.',
  ]);
});

test('a stack reaches its highest load from its lowest', () => {
  const stack = (lowest: number, step: number, highest: number) => ({
    stacks: [{ name: 'pulley', lowest: kg(lowest), step: kg(step), highest: kg(highest) }],
  });
  expect(found(stack(5, 2.5, 80))).toEqual([]);
  expect(found(stack(5, 10, 80))).toHaveLength(1);
  expect(found(stack(80, 10, 5))).toEqual(['The stack "pulley" goes from 80 kg to 5 kg.']);
  expect(found(stack(5, 0, 80))).toHaveLength(1);
});

test('the same thing twice is one thing', () => {
  expect(found({ plates: plates(2, kg(20), kg(20)) })).toEqual([
    'The plate "20 kg" is listed more than once.',
  ]);
  const bar = { name: 'bar', mass: kg(20), collars: kg(0) };
  expect(found({ bars: [bar, { ...bar, mass: kg(15) }] })).toEqual([
    'The bar "bar" is listed more than once.',
  ]);
  const weighed = [
    { stamped: kg(20), count: 2 },
    { stamped: kg(20), count: 2, measured: kg(20.2) },
  ];
  expect(found({ plates: weighed })).toEqual([]);
});

test('every problem says what to do', () => {
  const gear = someGear({
    plates: [...plates(3, kg(20)), ...plates(2, kg(-1))],
    freeStep: kg(0),
  });
  const all = [...gearProblems(gear), ...gearSurprises(gear)];
  expect(all.length).toBe(3);
  for (const { fix } of all) expect(fix).toMatch(/\.$/);
});

test('more kinds than are kept are told as a mistake', () => {
  const kinds = Array.from({ length: GEAR_LIMITS.kinds + 1 }, (_, at) => kg(1 + at / 8));
  expect(found({ plates: plates(2, ...kinds) })).toEqual(['There are 101 kinds of plates.']);
  expect(found({ plates: plates(2, ...kinds.slice(1)) })).toEqual([]);
});
