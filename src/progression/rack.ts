import type { Gear } from '../training/gear.ts';
import type { Loading } from '../training/lift.ts';
import { type Loads, loadsFor, nextAbove, nextBelow } from '../training/loads.ts';
import { type Mass, micrograms, NO_MASS, share } from '../training/mass.ts';
import { systemLoad } from '../training/strength.ts';
import { LIMITS } from './limits.ts';

/**
 * The loads that the lifter can make for a lift, and what is really lifted with each. The load of
 * a body weight lift is its setting (added − assistance); shares and estimates act on the system
 * load.
 */
export interface Rack {
  readonly loads: Loads;
  /** Null for a body weight lift before the first weigh-in. */
  readonly system: (load: Mass) => Mass | null;
  /** The load with which so many micrograms are really lifted, rounded down. */
  readonly setting: (system: number) => Mass;
}

/** What decides the loads of an exercise. */
export interface LoadedBy {
  readonly loading: Loading;
  readonly hands: 1 | 2;
  readonly bodyShare: number | null;
  readonly bar: string | null;
  readonly step: Mass | null;
}

/** What an exercise can be loaded with at a body weight of `body`. */
export function rackFor(
  { loading, hands, bodyShare, bar, step }: LoadedBy,
  gear: Gear,
  body: Mass | null,
): Rack {
  const loads = loadsFor(gear, { loading, hands, bar, step });
  if (loading !== 'bodyweight') {
    return { loads, system: (load) => load, setting: (system) => micrograms(Math.floor(system)) };
  }
  const moved = bodyShare ?? 1;
  const ofBody = body === null ? NO_MASS : share(body, moved);
  return {
    // Of a hold no share is known, and no band holds a plank up.
    loads: bodyShare === null || moved < LIMITS.assistedShare ? unassisted(loads) : loads,
    system: (load) => systemLoad(load, body, moved),
    setting: (system) => micrograms(Math.floor(system - ofBody)),
  };
}

/** Without the loads that a band would make lighter than the body. */
const unassisted = (loads: Loads): Loads => ({
  ...loads,
  atOrBelow: (wish) => (wish < NO_MASS ? null : loads.atOrBelow(wish)),
  atOrAbove: (wish) => loads.atOrAbove(micrograms(Math.max(wish, NO_MASS))),
  lightest: NO_MASS,
});

/** The first loadable load at least 1 % above `load`; without a body weight simply the next. */
export function stepAbove({ loads, system, setting }: Rack, load: Mass): Mass | null {
  const lifted = system(load);
  const next = nextAbove(loads, load);
  if (lifted === null || next === null) return next;
  const wish = setting(lifted * (1 + LIMITS.smallestStep));
  return wish > next ? loads.atOrAbove(wish) : next;
}

/**
 * The loadable load at or below a share of `load`; null when there is none. Without a body weight
 * it is the next lighter one.
 */
export function shareBelow(
  { loads, system, setting }: Rack,
  load: Mass,
  factor: number,
): Mass | null {
  const lifted = system(load);
  return lifted === null ? nextBelow(loads, load) : loads.atOrBelow(setting(lifted * factor));
}

/** How much heavier `b` is than `a`, as a share of what is really lifted; null without a body weight. */
export function stepShare({ system }: Rack, a: Mass, b: Mass): number | null {
  const [from, to] = [system(a), system(b)];
  return from === null || to === null || from <= 0 ? null : to / from - 1;
}

/** The wish itself where it is loadable, else the nearest below, else the lightest there is. */
export function madeLoadable({ loads }: Rack, wish: Mass): Mass {
  return loads.atOrBelow(wish) ?? loads.lightest;
}
