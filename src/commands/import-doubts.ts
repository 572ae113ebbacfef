import { group } from 'd3-array';
import { Temporal } from 'temporal-polyfill';
import { doubtBeside, type Levels, levelsAfter } from '../cut/weigh-in-doubt.ts';
import type { Lifter } from '../lifter/open-lifter.ts';
import { type Mass, massText } from '../training/mass.ts';

interface Weighed {
  readonly on: string;
  readonly mass: Mass;
  readonly sure?: boolean;
}

/**
 * Readings that the scales would ask about, each beside those before it, here or in the file; not
 * those that were said to be right when they were asked about.
 */
export function doubtfulOf<Each extends Weighed>(
  weighed: readonly Each[],
  lifter: Lifter,
): readonly Each[] {
  const here = lifter
    .journal()
    .history()
    .weighIns.map(({ date, mass }) => ({ on: date.toString(), mass, told: null }));
  const told = weighed.map((each) => ({ on: each.on, mass: each.mass, told: each }));
  const days = group([...here, ...told], ({ on }) => on);
  const doubtful: Each[] = [];
  let levels: Levels = [];
  for (const [on, of] of [...days].sort(([a], [b]) => (a < b ? -1 : 1))) {
    const date = Temporal.PlainDate.from(on);
    const before = levels;
    for (const { mass, told: each } of of) {
      const reading = { date, mass };
      if (each && !each.sure && doubtBeside(before, reading, lifter.unit())) doubtful.push(each);
      else levels = levelsAfter(levels, reading);
    }
  }
  return doubtful;
}

/** What is taken of the readings of a table, and what is left out; who takes doubtful ones has said that they are right. */
export function weighInsTaken(
  weighed: readonly Weighed[],
  lifter: Lifter,
  takesDoubtful: boolean,
): { readonly taken: readonly Weighed[]; readonly doubtful: readonly Weighed[] } {
  const doubtful = new Set(doubtfulOf(weighed, lifter));
  if (!takesDoubtful) {
    return { taken: weighed.filter((each) => !doubtful.has(each)), doubtful: [...doubtful] };
  }
  const taken = weighed.map((each) => (doubtful.has(each) ? { ...each, sure: true } : each));
  return { taken, doubtful: [] };
}

const MOST_NAMED = 5;

/** Which readings were left out, and how to take them all the same. */
export function doubtText(doubtful: readonly Weighed[], lifter: Lifter): readonly string[] {
  if (doubtful.length === 0) return [];
  const named = doubtful
    .slice(0, MOST_NAMED)
    .map(({ on, mass }) => `${massText(mass, lifter.unit())} on ${on}`);
  const more = doubtful.length > MOST_NAMED ? ' and more' : '';
  return [
    `${doubtful.length} unlikely ${doubtful.length === 1 ? 'weigh-in was' : 'weigh-ins were'} left out: ${named.join(', ')}${more}; --doubtful takes them too.`,
  ];
}
