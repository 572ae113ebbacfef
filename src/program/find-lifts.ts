import { nearestKey } from '../text/nearest.ts';
import type { Gear } from '../training/gear.ts';
import type { Lift } from '../training/lift.ts';
import { missingFor } from './check/rules/gear.ts';

/** What else lifts are called in gyms, by the words as they are said. */
const EVERYDAY_NAMES: Readonly<Record<string, readonly string[]>> = {
  'back-squat': ['barbell squat', 'high bar squat', 'low bar squat'],
  deadlift: ['conventional deadlift'],
  'dumbbell-shoulder-press': ['seated dumbbell press'],
  'bench-press': ['flat bench', 'flat bench press', 'chest press'],
  'overhead-press': ['military press', 'shoulder press', 'strict press', 'ohp'],
  'romanian-deadlift': ['rdl'],
  'dumbbell-romanian-deadlift': ['rdl'],
  'single-leg-romanian-deadlift': ['rdl'],
  'rear-foot-elevated-split-squat': ['bulgarian split squat'],
  'single-leg-squat': ['pistol squat'],
  'knees-forward-squat': ['sissy squat'],
  'triceps-extension': ['skull crusher', 'french press'],
  'overhead-triceps-extension': ['french press'],
  'dumbbell-side-raise': ['lateral raise', 'side lateral'],
  'cable-side-raise': ['lateral raise'],
  'machine-side-raise': ['lateral raise'],
  'band-side-raise': ['lateral raise'],
  'band-pulldown': ['lat pulldown'],
  'band-pushdown': ['triceps pressdown'],
  'dumbbell-rear-raise': ['rear delt fly', 'reverse fly', 'rear lateral'],
  'machine-rear-fly': ['reverse pec deck', 'rear delt machine'],
  'machine-fly': ['pec deck', 'butterfly'],
  'push-up': ['press-up'],
  'barbell-row': ['bent-over row'],
  'dead-stop-row': ['pendlay row'],
  'rotating-dumbbell-press': ['arnold press'],
  'back-extension': ['hyperextension'],
  'two-hand-carry': ['farmer walk', 'farmers carry'],
  'one-hand-carry': ['suitcase carry'],
  'anti-rotation-press': ['pallof press'],
  'lowering-pull-up': ['negative pull-up'],
  'sliding-leg-curl': ['slider leg curl'],
  'trap-bar-deadlift': ['hex bar deadlift'],
  'inverted-row': ['body row', 'australian pull-up'],
  'cable-pushdown': ['triceps pressdown'],
  'straight-arm-pulldown': ['cable pullover'],
};

const wordsIn = (text: string): readonly string[] =>
  text
    .toLowerCase()
    .split(/[^\p{L}\p{N}]+/u)
    .filter(Boolean);

/** How near a lift is to what was typed, 0 the nearest; null where it does not fit. */
function nearness(lift: Lift, asked: readonly string[]): number | null {
  const names = [`${lift.name} ${lift.key}`, ...(EVERYDAY_NAMES[lift.key] ?? [])];
  const fits = (text: string) => {
    const words = wordsIn(text);
    return asked.every((start) => words.some((word) => word.startsWith(start)));
  };
  const muscles = Object.keys(lift.trains).filter(
    (muscle) => lift.trains[muscle as keyof typeof lift.trains] === 1,
  );
  const at = names.findIndex(fits);
  // Who types a part of a muscle wants what trains it, whatever else begins so.
  if (at === 0) return fits(muscles.join(' ')) ? 0 : 1;
  if (at > 0) return 1;
  return fits([lift.name, lift.pattern, lift.loading, ...muscles].join(' ')) ? 2 : null;
}

/**
 * Lifts in which every word of the query begins a word of the name, an everyday name, or the
 * movement, the loading or a muscle trained directly: names before muscles, what the gear can do
 * before the rest. All for an empty query.
 */
export function findLifts(
  lifts: ReadonlyMap<string, Lift>,
  query: string,
  gear: Gear,
): readonly Lift[] {
  const asked = wordsIn(query);
  if (asked.length === 0 && query.trim() !== '') return [];
  return [...lifts.values()]
    .flatMap((lift) => {
      const near = nearness(lift, asked);
      const isAble = missingFor({ lift, step: null }, gear) === null;
      return near === null ? [] : [{ lift, rank: near * 2 + (isAble ? 0 : 1) }];
    })
    .sort((a, b) => a.rank - b.rank)
    .map(({ lift }) => lift);
}

/** The query with each word that begins no known word spelled like the nearest that does; null where one is near none. */
export function respelled(lifts: ReadonlyMap<string, Lift>, query: string): string | null {
  const known = new Set(
    [...lifts.values()].flatMap(({ key, name, trains }) =>
      [key, name, ...(EVERYDAY_NAMES[key] ?? []), ...Object.keys(trains)].flatMap(wordsIn),
    ),
  );
  const words = wordsIn(query).map((word) =>
    [...known].some((one) => one.startsWith(word)) ? word : nearestKey(word, known),
  );
  return words.length > 0 && words.every((word) => word !== null) ? words.join(' ') : null;
}

/** As gyms write for short, or in one word. */
const ABBREVIATIONS: Readonly<Record<string, string>> = {
  db: 'dumbbell',
  bb: 'barbell',
  ez: 'barbell',
  pullup: 'pull up',
  chinup: 'chin up',
  pushup: 'push up',
  situp: 'sit up',
  stepup: 'step up',
  skullcrusher: 'skull crusher',
};

/** What a lift is called where nothing else is said. Common practice. */
const SHORT_NAMES: Readonly<Record<string, string>> = {
  squat: 'back-squat',
  bench: 'bench-press',
  press: 'overhead-press',
  row: 'barbell-row',
};

/** Words that say what a lift is done with, and how the catalogue loads such a lift. */
const DONE_WITH: Readonly<Record<string, Lift['loading']>> = {
  barbell: 'barbell',
  dumbbell: 'dumbbell',
  band: 'band',
  cable: 'stack',
  machine: 'stack',
  weighted: 'bodyweight',
};

/**
 * The lift of exactly this name, key, everyday or short name, in any case, of one or several, with
 * what it is done with anywhere in it or not at all; null where there is none.
 */
export function namedLift(lifts: ReadonlyMap<string, Lift>, name: string): Lift | null {
  const said = saidWords(name);
  const found = saidAs([...lifts.values()], said);
  if (found) return found;
  for (const word of said.filter((each) => DONE_WITH[each])) {
    const rest = said.filter((each) => each !== word && each !== 'bar');
    const of = [...lifts.values()].filter(({ loading }) => loading === DONE_WITH[word]);
    const lift = saidAs(of, [word, ...rest]) ?? saidAs(of, rest);
    if (lift) return lift;
  }
  return null;
}

/** Words without plurals, possessives and what is written for short: squats, farmer's, DB. */
const saidWords = (text: string): readonly string[] =>
  wordsIn(text.replace(/['’]s?\b/g, ''))
    .map(single)
    .flatMap((word) => (ABBREVIATIONS[word] ?? word).split(' '));

const single = (word: string): string => word.replace(/(ch|sh)es$/, '$1').replace(/([^s])s$/, '$1');

function saidAs(lifts: readonly Lift[], said: readonly string[]): Lift | null {
  const words = said.join(' ');
  const short = lifts.find(({ key }) => key === SHORT_NAMES[words]);
  if (short) return short;
  const isSaid = (other: string) => saidWords(other).join(' ') === words;
  return (
    lifts.find((lift) => isSaid(lift.key) || isSaid(lift.name)) ??
    lifts.find(({ key }) => (EVERYDAY_NAMES[key] ?? []).some(isSaid)) ??
    null
  );
}

/**
 * Lifts that a name may mean: the one called so, else all that its words fit, of names alone before
 * muscles and movements.
 */
export function liftsMeant(
  lifts: ReadonlyMap<string, Lift>,
  name: string,
  gear: Gear,
): readonly Lift[] {
  const named = namedLift(lifts, name);
  return named ? [named] : findLifts(lifts, saidWords(name).join(' '), gear);
}

/** The lift that was most likely meant by words that fit none; null where nothing is near. */
export function nearestLift(lifts: ReadonlyMap<string, Lift>, query: string): Lift | null {
  const named = [...lifts.values()].flatMap((lift) =>
    [lift.key, lift.name, ...(EVERYDAY_NAMES[lift.key] ?? [])].map(
      (name) => [name.toLowerCase().replace(/\s+/g, '-'), lift] as const,
    ),
  );
  const near = nearestKey(
    query,
    named.map(([name]) => name),
  );
  return named.find(([name]) => name === near)?.[1] ?? null;
}
