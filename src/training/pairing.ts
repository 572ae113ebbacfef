import type { Problem } from '../text/problem.ts';
import type { Gear } from './gear.ts';
import { directMuscles, type Lift, MUSCLES } from './lift.ts';

/** What two lifts share that wants rest, so that their sets do not alternate. */
export type PairClash = 'muscles' | 'grip' | 'lower-back' | 'bar' | 'cluster';

/** What is looked at of a lift in a pair. */
export type Paired = Pick<Lift, 'name' | 'trains' | 'pattern' | 'kind' | 'loading'> & {
  readonly style: 'straight' | 'cluster';
  /** Null: the first bar that is owned. */
  readonly bar: string | null;
};

/**
 * Why two lifts should not alternate, the weightiest reason first; empty where they may. That
 * opposed muscles keep the work in about half the time: Robbins 2010, JSCR 24:2873–2882, from
 * memory; what is kept apart here is common practice.
 */
export function clashesOf(a: Paired, b: Paired): readonly PairClash[] {
  const shared = directMuscles(a.trains).some((muscle) => directMuscles(b.trains).includes(muscle));
  // Two presses or two pulls share what helps in both.
  const inCommon = MUSCLES.reduce(
    (sum, muscle) => sum + Math.min(a.trains[muscle] ?? 0, b.trains[muscle] ?? 0),
    0,
  );
  const heavy = a.kind === 'compound' && b.kind === 'compound';
  const isCluster = a.style === 'cluster' || b.style === 'cluster';
  const found: readonly (readonly [PairClash, boolean])[] = [
    ['bar', a.loading === 'barbell' && b.loading === 'barbell' && a.bar === b.bar],
    ['cluster', isCluster && shared],
    ['muscles', heavy && (shared || inCommon >= 1)],
    ['grip', heavy && tiresGrip(a) && tiresGrip(b)],
    ['lower-back', heavy && tiresLowerBack(a) && tiresLowerBack(b)],
  ];
  return found.flatMap(([clash, is]) => (is ? [clash] : []));
}

const PULLS: ReadonlySet<string> = new Set(['horizontal-pull', 'vertical-pull']);

const tiresGrip = ({ pattern, trains }: Paired): boolean =>
  PULLS.has(pattern) || (trains.forearms ?? 0) > 0;

const tiresLowerBack = ({ trains, loading }: Paired): boolean =>
  loading !== 'stack' && (trains['lower-back'] ?? 0) > 0;

/** Of each clash, what is to be said after "A and B …". */
export const CLASH_WORDS: Readonly<Record<PairClash, string>> = {
  bar: 'are loaded on one bar, which would be changed after every set',
  cluster: 'train the same muscles, and a cluster leaves them no rest',
  muscles: 'are both heavy for the same muscles, so neither would rest',
  grip: 'both tire the grip, which would not rest',
  'lower-back': 'both load the lower back, which would not rest',
};

/** The exercises of a day by turns: those with one word together, each other one alone, in order. */
export function turnsOf<One extends { readonly pair?: string | undefined }>(
  day: readonly One[],
): readonly (readonly One[])[] {
  const turns: One[][] = [];
  for (const one of day) {
    const turn = one.pair && turns.find(([first]) => first?.pair === one.pair);
    if (turn) turn.push(one);
    else turns.push([one]);
  }
  return turns;
}

/** The exercises of a day whose sets alternate with those of one of them. */
export const partnersIn = <One extends { readonly pair?: string | undefined }>(
  day: readonly One[],
  one: One,
): readonly One[] =>
  (turnsOf(day).find((turn) => turn.includes(one)) ?? []).filter((other) => other !== one);

/**
 * The day with its straight sets alternating where they can, two and two: each with the next one that
 * leaves it its rest. While one rests the other works (Robbins 2010, from memory; which ones: common
 * practice). Who has a word keeps it, who finds no partner has none.
 */
export function inTurn<One extends Pick<Paired, 'style'> & { readonly pair?: string | undefined }>(
  day: readonly One[],
  gear: Pick<Gear, 'dumbbells'>,
  asPaired: (one: One) => Paired,
): (One & { readonly pair?: string | undefined })[] {
  const paired = day.map(asPaired);
  const mayAlternate = (a: Paired, b: Paired): boolean =>
    clashesOf(a, b).length === 0 && !shareHandles(a, b, gear);
  const words = day.map(({ pair }) => pair);
  const free = [...'abcdefghijklmnopqrstuvwxyz'].filter((word) => !words.includes(word));
  const isOpen = (at: number) => words[at] === undefined && day[at]?.style === 'straight';
  for (const [at, one] of paired.entries()) {
    if (!isOpen(at)) continue;
    const other = paired.findIndex(
      (each, index) => index > at && isOpen(index) && mayAlternate(one, each),
    );
    if (other === -1) continue;
    const word = free.shift();
    words[at] = word;
    words[other] = word;
  }
  return day.map((one, at) => {
    const pair = words[at];
    return pair === undefined ? one : { ...one, pair };
  });
}

/**
 * Would two dumbbell lifts go by one pair of handles, loaded anew after every set? Ours: whoever owns
 * fixed dumbbells has one for each.
 */
const shareHandles = (
  a: Pick<Lift, 'loading'>,
  b: Pick<Lift, 'loading'>,
  { dumbbells }: Pick<Gear, 'dumbbells'>,
): boolean => a.loading === 'dumbbell' && b.loading === 'dumbbell' && dumbbells.length === 0;

/** The first reason why some of these should not alternate; null where all may. */
export function pairClash(lifts: readonly Paired[]): Problem | null {
  for (const [at, a] of lifts.entries()) {
    for (const b of lifts.slice(at + 1)) {
      const [clash] = clashesOf(a, b);
      if (clash) return { what: `${a.name} and ${b.name} ${CLASH_WORDS[clash]}.` };
    }
  }
  return null;
}
