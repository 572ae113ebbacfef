import { nearestKey } from '../text/nearest.ts';
import type { Gear } from '../training/gear.ts';
import type { Lift } from '../training/lift.ts';
import { missingFor } from './check/rules/gear.ts';

/** What else lifts are called in gyms, by the words as they are said. */
const EVERYDAY_NAMES: Readonly<Record<string, readonly string[]>> = {
  'back-squat': ['barbell squat'],
  'bench-press': ['flat bench', 'chest press'],
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
 * before the rest.
 */
export function findLifts(
  lifts: ReadonlyMap<string, Lift>,
  query: string,
  gear: Gear,
): readonly Lift[] {
  const asked = wordsIn(query);
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

/** As gyms write for short. */
const ABBREVIATIONS: Readonly<Record<string, string>> = { db: 'dumbbell', bb: 'barbell' };

/** What a lift is called where nothing else is said. Common practice. */
const SHORT_NAMES: Readonly<Record<string, string>> = {
  squat: 'back-squat',
  bench: 'bench-press',
  press: 'overhead-press',
  row: 'barbell-row',
};

/** The lift of exactly this name, key, everyday or short name, in any case, of one or several; null where there is none. */
export function namedLift(lifts: ReadonlyMap<string, Lift>, name: string): Lift | null {
  const said = wordsIn(name)
    .map((word) => ABBREVIATIONS[word] ?? word)
    .join(' ');
  // Of several: squats, deadlifts.
  return saidAs(lifts, said) ?? saidAs(lifts, said.replace(/([^s])s$/, '$1'));
}

function saidAs(lifts: ReadonlyMap<string, Lift>, said: string): Lift | null {
  const short = lifts.get(SHORT_NAMES[said] ?? '');
  if (short) return short;
  const isSaid = (other: string) => wordsIn(other).join(' ') === said;
  const all = [...lifts.values()];
  return (
    all.find((lift) => isSaid(lift.key) || isSaid(lift.name)) ??
    all.find(({ key }) => (EVERYDAY_NAMES[key] ?? []).some(isSaid)) ??
    null
  );
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
