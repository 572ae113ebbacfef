import fc from 'fast-check';
import { expect, it, vi } from 'vitest';
import { aimOf } from '../../src/session/aim.ts';
import { defaultGear } from '../../src/training/default-gear.ts';
import type { Gear } from '../../src/training/gear.ts';
import { type Mass, massOf, type Quantity } from '../../src/training/mass.ts';
import { phaseOf, placeOf } from '../../src/ui/phase.ts';
import { type Scene, scene } from './scene.ts';

const SESSIONS = Number(process.env.HOLDFAST_BARS ?? 40);
vi.setConfig({ testTimeout: 900_000 });

const kg = (amount: number): Quantity => ({ amount, unit: 'kg' });
const lb = (amount: number): Quantity => ({ amount, unit: 'lb' });

const plates = fc.constantFrom(
  [25, 20, 15, 10, 5, 2.5, 1.25].map(kg),
  [20, 10, 5, 2.5, 1.25, 0.5].map(kg),
  [45, 35, 25, 10, 5, 2.5].map(lb),
  [kg(20), kg(10), kg(5), kg(2.5), lb(10), lb(2.5)],
);

const gears = fc
  .record({
    plates: plates.chain((kinds) =>
      fc.tuple(
        ...kinds.map((stamped) =>
          fc.constantFrom(2, 4, 4, 6, 8).map((count) => ({ stamped, count })),
        ),
      ),
    ),
    collars: fc.constantFrom(0, 0.5, 2.5),
    short: fc.constantFrom(10, 12.5, 15),
    handle: fc.constantFrom(1.5, 2, 2.5),
  })
  .map(
    ({ plates: owned, collars, short, handle }): Gear => ({
      ...defaultGear('kg'),
      bars: [
        { name: 'bar', mass: kg(20), collars: kg(collars) },
        { name: 'short bar', mass: kg(short), collars: kg(0) },
      ],
      plates: owned,
      dumbbells: [],
      handles: [{ mass: kg(handle), count: 2 }],
      bands: [
        { name: 'light band', assistance: kg(8) },
        { name: 'heavy band', assistance: kg(20) },
      ],
      safeties: true,
    }),
  );

const LIFTS = [
  ['back-squat', '', 60],
  ['bench-press', '', 50],
  ['barbell-row', '\n        bar: short bar', 40],
  ['overhead-press', '\n        bar: short bar', 30],
  ['pull-up', '', 10],
  ['dip', '', -28],
  ['dumbbell-bench-press', '', 14],
] as const;

const programs = fc
  .uniqueArray(
    fc.record({
      lift: fc.constantFrom(...LIFTS),
      sets: fc.integer({ min: 1, max: 3 }),
      more: fc.integer({ min: 0, max: 40 }),
    }),
    { minLength: 2, maxLength: 4, selector: ({ lift }) => lift[0] },
  )
  .map((exercises) =>
    [
      'name: Bars',
      'unit: kg',
      'aim: maintain',
      'days_per_week: 1',
      'days:',
      '  - name: A',
      '    exercises:',
      ...exercises.map(
        ({ lift: [key, bar, start], sets, more }) =>
          `      - lift: ${key}\n        sets: ${sets}\n        reps: 5-8\n        start: ${start + more}${bar}`,
      ),
    ].join('\n'),
  );

/** Each set: lifted as it is, at the next load, or after another load was chosen. */
const acts = fc.array(
  fc.constantFrom('as it is', 'as it is', 'heavier', 'lighter', 'lighter', 'typed heavier'),
  { minLength: 30, maxLength: 30 },
);

/** A home gym that does what it is told, plate by plate, and owns no more plates than it owns. */
class PlayedGym {
  readonly #on = new Map<string, Quantity[]>();
  #bands: readonly string[] = [];
  constructor(readonly gear: Gear) {}

  obey(carrier: string, words: string): void {
    for (const order of words.replace(/ (a side|on the belt)(?=$|,)/g, '').split(', ')) {
      const [, stripped] = /^strip the (.*)$/.exec(order) ?? [];
      const [, off] = /^take off (.*)$/.exec(order) ?? [];
      const [, on] = /^put on (.*)$/.exec(order) ?? [];
      const [, how, names] = /^(use|add|without) (.*)$/.exec(order) ?? [];
      if (how && names) {
        this.#change(how, names.split(' and '));
        continue;
      }
      if (stripped) this.#on.set(stripped, []);
      for (const plate of off?.split(' + ') ?? []) this.#takeOff(carrier, this.#named(plate));
      for (const plate of on?.split(' + ') ?? []) this.#plates(carrier).push(this.#named(plate));
      if (!stripped && !off && !on) throw new Error(`Nobody understands "${order}".`);
    }
  }

  /** What lies in one hand or on the rack, in micrograms. */
  total(carrier: string, empty: number): number {
    const one = this.#plates(carrier).reduce((sum, plate) => sum + massOf(plate), 0);
    return empty + (carrier === 'belt' ? one : 2 * one);
  }

  /** What the bands pull with, in micrograms. */
  pull(): number {
    return this.gear.bands
      .filter(({ name }) => this.#bands.includes(name))
      .reduce((sum, { assistance }) => sum + massOf(assistance), 0);
  }

  #change(how: string, names: readonly string[]): void {
    const left = this.#bands.filter((name) => !names.includes(name));
    this.#bands = how === 'use' ? names : how === 'add' ? [...this.#bands, ...names] : left;
  }

  /** More plates of a kind on all bars, handles and the belt than are owned. */
  missing(hands: number): string[] {
    return this.gear.plates.flatMap(({ stamped, count }) => {
      let used = 0;
      for (const [carrier, on] of this.#on) {
        const each = carrier === 'belt' ? 1 : carrier === 'handles' ? 2 * hands : 2;
        used += each * on.filter((plate) => massOf(plate) === massOf(stamped)).length;
      }
      return used > count ? [`${used} of ${count} × ${stamped.amount} ${stamped.unit}`] : [];
    });
  }

  #plates(carrier: string): Quantity[] {
    const found = this.#on.get(carrier) ?? [];
    this.#on.set(carrier, found);
    return found;
  }

  /** From a bar only the outermost comes off. */
  #takeOff(carrier: string, plate: Quantity): void {
    const on = this.#plates(carrier);
    const at =
      carrier === 'belt' ? on.findIndex((each) => massOf(each) === massOf(plate)) : on.length - 1;
    const found = on[at];
    if (!found || massOf(found) !== massOf(plate)) {
      throw new Error(`${plate.amount} is not what comes off ${carrier}: ${JSON.stringify(on)}`);
    }
    on.splice(at, 1);
  }

  #named(word: string): Quantity {
    const [amount = '', unit] = word.split(' ');
    const found = this.gear.plates.find(
      ({ stamped }) => String(stamped.amount) === amount && (!unit || stamped.unit === unit),
    );
    if (!found) throw new Error(`No plate ${word} is owned.`);
    return found.stamped;
  }
}

/** Plays a day by its own instructions; gives how many loads were made. */
function play(at: Scene, gear: Gear, each: readonly string[]): number {
  const live = at.coach.begin();
  if ('what' in live) throw new Error(live.what);
  const gym = new PlayedGym(gear);
  let made = 0;
  for (const act of each) {
    const place = placeOf(phaseOf(live.state(), at.clock.read()));
    const exercise = place && live.state().exercises[place.exercise]?.prescribed;
    if (!place || !exercise) break;
    const near = at.coach.nearestLoads(exercise, aimOf(live.state(), place)?.load ?? (0 as Mass));
    const other = act === 'heavier' ? near.above : act === 'lighter' ? near.below : null;
    if (other !== null) {
      const by = at.coach.withLoad(exercise, other);
      live.send({ do: 'replace', exercise: place.exercise, by, because: 'other-load' });
    }
    const next = placeOf(phaseOf(live.state(), at.clock.read()));
    const wanted = next && live.state().exercises[next.exercise]?.prescribed;
    const load = next && aimOf(live.state(), next)?.load;
    if (!next || !wanted || load === null || load === undefined) break;
    const words = at.coach.madeUp(wanted, load);
    const carrier = carrierOf(wanted.loading, wanted.bar);
    if (words) {
      if (words.change) gym.obey(carrier, words.change);
      // A band takes from the body's weight, and nothing hangs from the belt then.
      const held = Math.max(load, 0);
      const told = `${wanted.name}: ${words.change}`;
      expect(gym.total(carrier, emptyOf(gear, carrier)), told).toBe(held);
      if (load < 0) expect(gym.pull(), told).toBe(-load);
      expect(gym.missing(wanted.hands)).toEqual([]);
      made += 1;
    }
    at.clock.pass(200_000);
    live.send({ do: 'start' });
    at.clock.pass(20_000);
    live.send({ do: 'put-down' });
    expect(live.state().loaded.at(-1)?.load).toBe(load);
  }
  at.lifter.journal().release();
  return made;
}

const carrierOf = (loading: string, bar: string | null): string =>
  loading === 'barbell' ? (bar ?? 'bar') : loading === 'dumbbell' ? 'handles' : 'belt';

function emptyOf(gear: Gear, carrier: string): number {
  const bar = gear.bars.find(({ name }) => name === carrier);
  if (bar) return massOf(bar.mass) + massOf(bar.collars);
  return carrier === 'handles' ? massOf(gear.handles[0]?.mass ?? kg(0)) : 0;
}

it('whoever does what the screen says has the load on the bar that it says', () => {
  let made = 0;
  fc.assert(
    fc.property(gears, programs, acts, (gear, program, each) => {
      made += play(scene({ gear, program, past: [] }), gear, each);
    }),
    { numRuns: SESSIONS },
  );
  expect(made).toBeGreaterThan(SESSIONS * 5);
});
