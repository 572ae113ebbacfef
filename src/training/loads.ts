import {
  bandsOf,
  barOf,
  emptyMass,
  fixedOf,
  type Gear,
  handlesOf,
  pairsOf,
  platesOf,
  type Stack,
  singlesOf,
} from './gear.ts';
import type { Loading } from './lift.ts';
import {
  kilograms,
  type Mass,
  MICROGRAMS,
  massOf,
  micrograms,
  minus,
  NO_MASS,
  plus,
  pounds,
} from './mass.ts';
import { type Piece, pieceSums } from './sums-of-pieces.ts';

/** The loads that can be made for a lift. There is always at least one. */
export interface Loads {
  /** The heaviest load at or below `wish`; null under the lightest. */
  readonly atOrBelow: (wish: Mass) => Mass | null;
  /** The lightest load at or above `wish`; null above the heaviest. */
  readonly atOrAbove: (wish: Mass) => Mass | null;
  readonly lightest: Mass;
  /** Null where there is no end. */
  readonly heaviest: Mass | null;
}

/** What decides which loads can be made. */
export interface LoadNeed {
  readonly loading: Loading;
  /** Dumbbells held at once; the load is that of one. */
  readonly hands: 1 | 2;
  /** Name of the bar; null for the first one owned. */
  readonly bar: string | null;
  /** Loads go by this step in place of the gear. */
  readonly step: Mass | null;
  /** Name of the stack; without one every stack owned counts. */
  readonly stack?: string | null;
}

/**
 * The loads that can be made with what the lifter owns, exact. The load of a body weight lift is
 * its setting: 0, plates on the belt, or the assistance of bands as a negative mass. Where the
 * gear holds nothing for the lift (no such bar, no dumbbells), loads go by the gear's free step.
 */
export const loadsFor: (gear: Gear, need: LoadNeed) => Loads = perGear(
  madeFor,
  ({ loading, hands, bar, step, stack }) =>
    JSON.stringify([loading, hands, bar, step, stack ?? null]),
);

function madeFor(gear: Gear, need: LoadNeed): Loads {
  const owned = need.step === null ? MADE_BY[need.loading](gear, need) : [];
  if (owned.length > 0) return eitherOf(owned);
  const step = need.step ?? massOf(gear.freeStep);
  const by = step > 0 ? step : gear.unit === 'kg' ? kilograms(1) : pounds(1);
  const bar = need.loading === 'barbell' ? barOf(gear, need.bar) : undefined;
  if (bar) return steps(emptyMass(bar), by, 0);
  if (need.loading === 'bodyweight') return eitherOf([bandLoads(gear), steps(NO_MASS, by, 0)]);
  return steps(NO_MASS, by, 1);
}

const MADE_BY: Readonly<Record<Loading, (gear: Gear, need: LoadNeed) => readonly Loads[]>> = {
  barbell: (gear, { bar: name }) => {
    const bar = barOf(gear, name);
    return bar ? [sums(emptyMass(bar), pairsOf(platesOf(gear), 1))] : [];
  },
  dumbbell: (gear, { hands }) => [
    ...fixedOf(gear, hands).map((mass) => sums(mass, [])),
    ...handlesOf(gear, hands).map((handle) =>
      sums(massOf(handle.mass), pairsOf(platesOf(gear), hands)),
    ),
  ],
  stack: (gear, { stack: name }) =>
    gear.stacks.filter((stack) => !name || stack.name === name).map(stackLoads),
  bodyweight: (gear) => [
    bandLoads(gear),
    sums(NO_MASS, gear.belt ? singlesOf(platesOf(gear)) : []),
  ],
  band: (gear) => (gear.bands.length > 0 ? [bandPulls(gear)] : []),
  free: () => [],
};

/** `base` with every sum of the pieces on top. */
function sums(base: Mass, pieces: readonly Piece[]): Loads {
  const all = pieceSums(pieces);
  const onto = (sum: Mass | null): Mass | null => (sum === null ? null : plus(base, sum));
  return {
    atOrBelow: (wish) => onto(all.atOrBelow(minus(wish, base))),
    atOrAbove: (wish) => onto(all.atOrAbove(minus(wish, base))),
    lightest: base,
    heaviest: plus(base, all.largest),
  };
}

/** What any bands together pull with, one at least. */
function bandPulls(gear: Gear): Loads {
  const all = pieceSums(bandsOf(gear));
  const lightest = micrograms(Math.min(...gear.bands.map(({ assistance }) => massOf(assistance))));
  return {
    atOrBelow: (wish) => (wish < lightest ? null : all.atOrBelow(wish)),
    atOrAbove: (wish) => all.atOrAbove(micrograms(Math.max(wish, lightest))),
    lightest,
    heaviest: all.largest,
  };
}

/** No assistance, or that of any bands together, as a negative load. */
function bandLoads(gear: Gear): Loads {
  const all = pieceSums(bandsOf(gear));
  const less = (sum: Mass | null): Mass | null => (sum === null ? null : minus(NO_MASS, sum));
  return {
    atOrBelow: (wish) => less(all.atOrAbove(minus(NO_MASS, wish))),
    atOrAbove: (wish) => less(all.atOrBelow(minus(NO_MASS, wish))),
    lightest: minus(NO_MASS, all.largest),
    heaviest: NO_MASS,
  };
}

/** Whole numbers of steps on top of `base`, from `fewest` steps up to a load of `last`. */
function steps(base: Mass, step: Mass, fewest: 0 | 1, last: Mass | null = null): Loads {
  const by = exactStep(step);
  const at = (count: number): Mass => micrograms(base + Math.round(count * by));
  const first = at(fewest);
  const top = last === null ? null : at(Math.floor((last - base) / by));
  return {
    atOrBelow: (wish) => {
      if (wish < first) return null;
      return top !== null && wish >= top ? top : at(Math.floor((wish - base) / by));
    },
    atOrAbove: (wish) => {
      if (wish <= first) return first;
      // Half a microgram less, as that much may have been rounded away.
      return top !== null && wish > top ? null : at(Math.ceil((wish - 0.5 - base) / by));
    },
    lightest: first,
    heaviest: top,
  };
}

/** A quarter of a pound ends in half a microgram; eight steps of 1.25 lb are 10 lb all the same. */
function exactStep(step: Mass): number {
  const quarter = MICROGRAMS.lb / 4;
  const quarters = Math.round(step / quarter) * quarter;
  return Math.abs(quarters - step) <= 0.5 ? quarters : step;
}

function stackLoads({ lowest, step, highest }: Stack): Loads {
  const [first, by, last] = [massOf(lowest), massOf(step), massOf(highest)];
  return by > 0 && last > first ? steps(first, by, 0, last) : sums(first, []);
}

/** What any of several sets of loads can make. */
function eitherOf(all: readonly Loads[]): Loads {
  const [only] = all;
  if (only && all.length === 1) return only;
  const best = (found: readonly (Mass | null)[], pick: (...masses: number[]) => number) => {
    const masses = found.filter((mass) => mass !== null);
    return masses.length === 0 ? null : micrograms(pick(...masses));
  };
  const ends = all.map(({ heaviest }) => heaviest);
  return {
    atOrBelow: (wish) =>
      best(
        all.map((loads) => loads.atOrBelow(wish)),
        Math.max,
      ),
    atOrAbove: (wish) =>
      best(
        all.map((loads) => loads.atOrAbove(wish)),
        Math.min,
      ),
    lightest: micrograms(Math.min(...all.map(({ lightest }) => lightest))),
    heaviest: ends.includes(null) ? null : best(ends, Math.max),
  };
}

/** The lightest load above `mass`. */
export const nextAbove = (loads: Loads, mass: Mass): Mass | null =>
  loads.atOrAbove(micrograms(mass + 1));

/** The heaviest load below `mass`. */
export const nextBelow = (loads: Loads, mass: Mass): Mass | null =>
  loads.atOrBelow(micrograms(mass - 1));

/** Can exactly this be made? */
export const isLoadable = (loads: Loads, mass: Mass): boolean => loads.atOrBelow(mass) === mass;

/** The load nearest to `wish`, the lighter one of two that are equally near. */
export function nearest(loads: Loads, wish: Mass): Mass {
  const below = loads.atOrBelow(wish);
  const above = loads.atOrAbove(wish);
  if (below === null || above === null) return below ?? above ?? loads.lightest;
  return wish - below <= above - wish ? below : above;
}

/**
 * What `make` makes out of gear and a need, made once for each need as long as the gear lives.
 * Gear is never changed in place, so that what was made stays true.
 */
export function perGear<Need, Made>(
  make: (gear: Gear, need: Need) => Made,
  keyOf: (need: Need) => string,
): (gear: Gear, need: Need) => Made {
  const known = new WeakMap<Gear, Map<string, { readonly made: Made }>>();
  return (gear, need) => {
    const ofGear = known.get(gear) ?? new Map<string, { readonly made: Made }>();
    known.set(gear, ofGear);
    const key = keyOf(need);
    const found = ofGear.get(key) ?? { made: make(gear, need) };
    ofGear.set(key, found);
    return found.made;
  };
}
