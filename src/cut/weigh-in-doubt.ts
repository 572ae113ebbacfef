import type { Temporal } from 'temporal-polyfill';
import type { DatedMass } from '../journal/daily-mass.ts';
import { dayWords } from '../text/day-words.ts';
import {
  kilograms,
  type Mass,
  MICROGRAMS,
  massText,
  micrograms,
  type Unit,
} from '../training/mass.ts';
import { daysBetween } from './cut-start.ts';
import {
  doubtFix,
  isNear,
  type Nearness,
  type ReadingDoubt,
  readingsBefore,
} from './reading-doubt.ts';

/** An adult's body weight lies between these. Ours, wide. */
const LIKELY = { lowest: kilograms(30), highest: kilograms(300) } as const;

/** Ours. */
const NEAR: Nearness = { once: 0.05, aDay: 0.002, most: 0.25 };

/** Slips of the finger, the likeliest first: a lost or doubled decimal point, the other unit. */
const SLIPS: readonly number[] = [
  1 / 10,
  10,
  1 / 100,
  MICROGRAMS.lb / MICROGRAMS.kg,
  MICROGRAMS.kg / MICROGRAMS.lb,
];

/**
 * Asks about a reading that is far from the one before it (or, without one, far from any adult's
 * body weight), with what was probably meant: 824 after 82.6 was 82.4. Null for a likely reading,
 * and for one that agrees with those before an odd one. `earlier` may be in any order; only readings
 * of days before `date` count, for one of the same morning may be the very slip that this one puts
 * right.
 */
export function weighInDoubt(
  mass: Mass,
  date: Temporal.PlainDate,
  earlier: readonly DatedMass[],
  unit: Unit,
): ReadingDoubt<Mass> | null {
  const before = readingsBefore(earlier, date);
  return doubtBeside(before.reduce(levelsAfter, []), { mass, date }, unit);
}

/** The latest reading and, where that is far from those before it, the latest of these. */
export type Levels = readonly DatedMass[];

/** The levels once a later reading was kept; an odd one that was left again is none. */
export function levelsAfter([last, before]: Levels, reading: DatedMass): Levels {
  if (!last || !isNearTo(last, reading)) {
    if (before && isNearTo(before, reading)) return [reading];
    return last ? [reading, last] : [reading];
  }
  return before && !isNearTo(before, reading) ? [reading, before] : [reading];
}

/** {@link weighInDoubt}, beside the levels of the days before. */
export function doubtBeside(
  levels: Levels,
  { mass, date }: DatedMass,
  unit: Unit,
): ReadingDoubt<Mass> | null {
  const [last] = levels;
  const likely = (found: Mass): boolean =>
    last ? levels.some((each) => isNearTo(each, { mass: found, date })) : inLikelyRange(found);
  if (likely(mass)) return null;
  const slip = SLIPS.find((factor) => likely(micrograms(Math.round(mass * factor))));
  const meant = slip === undefined ? null : micrograms(Math.round(mass * slip));
  const found = massText(mass, unit);
  return {
    meant,
    problem: {
      what: last
        ? `${found} is far from the ${massText(last.mass, unit)} of ${dayWords(last.date)}.`
        : `${found} is an unlikely body weight.`,
      fix: doubtFix(found, meant === null ? null : massText(meant, unit)),
    },
  };
}

/** Readings of the same day that cannot both be right; the one said last counts, in their place. */
export function replacedBy<T extends DatedMass>(
  mass: Mass,
  date: Temporal.PlainDate,
  earlier: readonly T[],
): readonly T[] {
  return earlier.filter((each) => each.date.equals(date) && !isNear(NEAR, mass / each.mass, 0));
}

const isNearTo = (earlier: DatedMass, { mass, date }: DatedMass): boolean =>
  isNear(NEAR, mass / earlier.mass, daysBetween(earlier.date, date));

const inLikelyRange = (mass: Mass): boolean => mass >= LIKELY.lowest && mass <= LIKELY.highest;
