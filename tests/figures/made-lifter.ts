import type { SeededRandom } from '../../src/rehearsal/seeded-random.ts';

/** How a lifter's strength truly goes. */
export type Course = 'holds' | 'loses slowly' | 'loses fast' | 'loses at once' | 'gains';

/** Log of strength after so many days, 0 on the first: −0.4 % and −0.9 % a week, −7 % in week six, +0.3 %. */
export const COURSES: Readonly<Record<Course, (day: number) => number>> = {
  holds: () => 0,
  'loses slowly': (day) => (-0.004 * day) / 7,
  'loses fast': (day) => (-0.009 * day) / 7,
  'loses at once': (day) => (day >= 40 ? Math.log(0.93) : 0),
  gains: (day) => (0.003 * day) / 7,
};

/** What is asked of a made lifter. */
export interface Asked {
  readonly lift: string;
  readonly day: number;
  readonly load: number;
  readonly aim: number;
  /** Reps in reserve that the lifter means to leave. */
  readonly leave: number;
  /** Sets of this exercise already done today. */
  readonly done: number;
  /** Goes on until a rep fails. */
  readonly fails?: boolean;
}

/** A lifter made for the figures. Shares no code with the estimate. */
export interface MadeLifter {
  /** What could truly be lifted once on a fresh, ordinary day. */
  readonly strength: (lift: string, day: number) => number;
  readonly set: (asked: Asked) => {
    readonly reps: number;
    readonly reserve: number | null;
    readonly failed?: boolean;
  };
}

const FIRST = 100;

/**
 * The first kind: days independent of each other, sets that fall by 2.5 %, reps told with an error
 * of about one that grows away from failure, Brzycki's line. The constants of the estimate may be
 * chosen on this one.
 */
export function plainLifter(course: Course, random: SeededRandom): MadeLifter {
  const days = new Map<string, number>();
  const luck = (key: string) => {
    const known = days.get(key) ?? 0.022 * random.normal();
    days.set(key, known);
    return known;
  };
  const strength = (_: string, day: number) => FIRST * Math.exp(COURSES[course](day));
  return {
    strength,
    set: ({ lift, day, load, aim, leave, done, fails }) => {
      const able = strength(lift, day) * Math.exp(luck(`${lift} ${day}`)) * 0.975 ** done;
      const toFailure = Math.max(0, 37 - (36 * load) / able);
      return fails ? failed(toFailure) : told(toFailure, aim, leave, random, 0);
    },
  };
}

/**
 * The second kind: constants and odds of the estimate were chosen on others of it, whose seeds are
 * from 2000 on. Good and bad spells (AR(1) over days, shared
 * by all lifts) on top of each day's luck, an illness, a curve and a fall from set to set of their
 * own, reserve told with a lasting bias, some sets unrated; lifts
 * drift apart by about a point where strength changes.
 */
export function moodyLifter(course: Course, random: SeededRandom): MadeLifter {
  const bias = -0.6 + 0.7 * random.normal();
  const fall = Math.max(0.005, 0.025 + 0.012 * random.normal());
  const ill = 20 + Math.floor(random.uniform() * 80);
  const spell: number[] = [];
  for (let day = 0, now = 0; day <= 300; day += 1) {
    now = 0.8 * now + 0.007 * random.normal();
    spell.push(now);
  }
  const curves = new Map<string, number>();
  const curve = (lift: string) => {
    const known = curves.get(lift) ?? 0.03 * Math.exp(0.2 * random.normal());
    curves.set(lift, known);
    return known;
  };
  const days = new Map<string, number>();
  const luck = (key: string) => {
    const known = days.get(key) ?? 0.018 * random.normal() * (random.uniform() < 0.06 ? 3 : 1);
    days.set(key, known);
    return known;
  };
  const drifts = new Map<string, number>();
  const drift = (lift: string) => {
    const known = drifts.get(lift) ?? (course === 'holds' ? 0 : 0.0006 * random.normal());
    drifts.set(lift, known);
    return known;
  };
  const strength = (lift: string, day: number) =>
    FIRST * Math.exp(COURSES[course](day) + (drift(lift) * day) / 7);
  return {
    strength,
    set: ({ lift, day, load, aim, leave, done, fails }) => {
      const sick = day >= ill && day < ill + 5 ? -0.06 : 0;
      const log = luck(`${lift} ${day}`) + (spell[day] ?? 0) + sick - fall * done;
      const able = strength(lift, day) * Math.exp(log);
      const toFailure = Math.max(0, 1 + Math.log(able / load) / curve(lift));
      if (fails) return failed(toFailure);
      const set = told(toFailure, aim, leave, random, bias);
      return random.uniform() < 0.1 ? { ...set, reserve: null } : set;
    },
  };
}

/**
 * The third kind: others of it were looked at beside the second when constants were chosen, so that
 * none helps only there. A slow wave of four weeks that all lifts
 * share, a weaker last day of the week, nights that are bad now and then, half of them ill for eight
 * days, sets that tire more and more, a curve that bends, and ratings that grow better over weeks.
 */
export function waywardLifter(course: Course, random: SeededRandom): MadeLifter {
  const phase = random.uniform() * 2 * Math.PI;
  const ill = random.uniform() < 0.5 ? 15 + Math.floor(random.uniform() * 85) : Infinity;
  const [bias, tiring] = [-1.2 * random.uniform(), 0.008 + 0.012 * random.uniform()];
  const fridays = -0.015 * random.uniform();
  const known = new Map<string, number>();
  const drawn = (key: string, draw: () => number) => {
    const value = known.get(key) ?? draw();
    known.set(key, value);
    return value;
  };
  const strength = (_: string, day: number) => FIRST * Math.exp(COURSES[course](day));
  return {
    strength,
    set: ({ lift, day, load, aim, leave, done, fails }) => {
      const night = drawn(`${day}`, () => (random.uniform() < 0.12 ? -0.04 : 0.005));
      const own = drawn(`${lift} ${day}`, () => 0.03 * (random.uniform() + random.uniform() - 1));
      const log =
        0.01 * Math.sin(phase + (day * 2 * Math.PI) / 28) +
        night +
        own +
        (day % 7 === 4 ? fridays : 0) +
        (day >= ill && day < ill + 8 ? -0.04 : 0) -
        tiring * done * (done + 1);
      const steep = drawn(lift, () => 0.031 + 0.006 * random.uniform());
      const over = Math.log((strength(lift, day) * Math.exp(log)) / load) / steep;
      // Bends: the reps that a lighter load allows grow faster than by the line.
      const toFailure = Math.max(0, 1 + over + 0.03 * over * Math.abs(over));
      return fails
        ? failed(toFailure)
        : told(toFailure, aim, leave, random, bias * Math.exp(-day / 60));
    },
  };
}

/**
 * The fourth kind, on which nothing was chosen: only half of the lifts go the course and
 * the others hold, spells are a lift's own, days are bad by much and good by little, reps grow with a
 * power of the load (one is worth about 2.5 %), and reserve is often told as 0, 2 or 4.
 */
export function unevenLifter(course: Course, random: SeededRandom): MadeLifter {
  const lifts: string[] = [];
  const goesAlong = (lift: string) => {
    if (!lifts.includes(lift)) lifts.push(lift);
    return lifts.indexOf(lift) % 2 === 0;
  };
  const known = new Map<string, number>();
  const drawn = (key: string, draw: () => number) => {
    const value = known.get(key) ?? draw();
    known.set(key, value);
    return value;
  };
  const spells = new Map<string, { day: number; now: number }>();
  const spell = (lift: string, day: number) => {
    const last = spells.get(lift) ?? { day, now: 0 };
    if (last.day === day) return last.now;
    const left = 0.85 ** (day - last.day);
    const now = left * last.now + 0.012 * Math.sqrt(1 - left ** 2) * random.normal();
    spells.set(lift, { day, now });
    return now;
  };
  const even = random.uniform();
  const strength = (lift: string, day: number) =>
    FIRST * Math.exp(COURSES[goesAlong(lift) ? course : 'holds'](day));
  return {
    strength,
    set: ({ lift, day, load, aim, leave, done, fails }) => {
      const bad = drawn(`${lift} ${day}`, () => 0.017 * (1 + Math.log(1 - random.uniform())));
      const log = bad + spell(lift, day) - 0.03 * Math.sqrt(done);
      const many = drawn(lift, () => 3.2 + random.uniform());
      const over = (strength(lift, day) * Math.exp(log)) / load;
      const toFailure = Math.max(0, 1 + many * (over ** 4 - 1));
      if (fails) return failed(toFailure);
      const { reps, reserve } = told(toFailure, aim, leave, random, -0.3);
      const evened = random.uniform() < even ? 2 * Math.round(reserve / 2) : reserve;
      return { reps, reserve: evened };
    },
  };
}

const failed = (toFailure: number) => ({
  reps: Math.floor(toFailure),
  reserve: 0,
  failed: true,
});

/** Ends at the aim, or where no more seems to be left than was to be left. */
function told(
  toFailure: number,
  aim: number,
  leave: number,
  random: SeededRandom,
  bias: number,
): { reps: number; reserve: number } {
  const most = Math.floor(toFailure);
  const left = (reps: number) => most - reps;
  const believed = (reps: number) => left(reps) * (1 + 0.25 * error) + bias + 0.6 * error;
  const error = random.normal();
  let reps = Math.min(aim, most);
  while (reps > 1 && believed(reps) < leave - 0.5 && left(reps) < leave + 3) reps -= 1;
  const reserve = Math.min(6, Math.max(0, Math.round(believed(reps))));
  return { reps, reserve };
}
