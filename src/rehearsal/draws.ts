import type { Program } from '../program/program.ts';
import type { Reason } from '../training/rule.ts';
import {
  LIFTER_KINDS,
  LIFTER_MODEL,
  type LifterKindName,
  type LifterModel,
} from './lifter-model.ts';
import { gearMissingIn } from './play-session.ts';
import { type RehearsalOptions, rehearse } from './rehearse.ts';
import { type SeededRandom, seededRandom } from './seeded-random.ts';
import { type RehearsalVerdict, verdictOf } from './verdict-of.ts';
import { type RehearsedWeek, weeksOf } from './weeks-of.ts';

/** One lifter drawn, and the program played with them. */
export interface Draw {
  readonly model: LifterModel;
  readonly weeks: readonly RehearsedWeek[];
  readonly verdict: RehearsalVerdict;
  /** Why lifts were not trained: what the gear cannot load. */
  readonly missing: readonly Reason[];
}

/** Lifters to draw. */
export interface Lifters {
  readonly kind: LifterKindName;
  /** Null where it is not known. */
  readonly own: OwnGrowth | null;
}

/** Seeds of the draws of one seed lie in a range of their own. */
const SEEDS = 1009;

/** Plays a program with the `at`-th lifter of a seed: the same one, and the same luck, for every program. */
export function drawAt(
  program: Program,
  options: Omit<RehearsalOptions, 'model'>,
  { kind, own }: Lifters,
  at: number,
): Draw {
  const seed = options.seed * SEEDS + at;
  const model = drawModel(kind, seededRandom(seed), own);
  const rehearsal = rehearse(program, { ...options, model, seed });
  const weeks = weeksOf(program, rehearsal, options.from);
  const missing = rehearsal.sessions.flatMap(({ state }) => gearMissingIn(state.prescription));
  return { model, weeks, verdict: verdictOf(program, weeks), missing };
}

/** The draw in the middle by what is kept; of an even number the lower one. */
export function middleOf(draws: readonly Draw[]): Draw {
  const found = byKept(draws)[Math.floor((draws.length - 1) / 2)];
  if (!found) throw new Error('There is no draw.');
  return found;
}

const byKept = (draws: readonly Draw[]): readonly Draw[] =>
  draws.toSorted((a, b) => a.verdict.kept - b.verdict.kept);

/** A value of each draw, of one at least, as a range: without the tenth at either end. */
export function rangeOf(values: readonly number[]): readonly [low: number, high: number] {
  const out = Math.floor(values.length / 10);
  const left = values.toSorted((a, b) => a - b).slice(out, values.length - out);
  return [left[0]!, left.at(-1)!];
}

/** What the second keeps more than the first, as a share, with the standard error over draws. */
export function differenceOf(
  first: readonly Draw[],
  second: readonly Draw[],
): { readonly mean: number; readonly error: number } {
  const each = first
    .slice(0, second.length)
    .map(({ verdict }, at) => second[at]!.verdict.kept - verdict.kept);
  const count = each.length;
  const mean = each.reduce((sum, value) => sum + value, 0) / count;
  const variance =
    each.reduce((sum, value) => sum + (value - mean) ** 2, 0) / Math.max(1, count - 1);
  return { mean, error: Math.sqrt(variance / count) };
}

/** Printed 95 % intervals (Hellard 2006, J Sports Sci 24(5):509–520, nine swimmers). */
const PRINTED = { fitnessDays: [17, 59], fatigueDays: [6, 32] } as const;

/** What is ours is drawn from within this share of what it is. Ours. */
const OURS = 0.3;
const DRAWN_AROUND = ['trained', 'halfSets', 'setFatigue', 'manySets', 'deficitCost'] as const;

/** How much a lifter's own strength grew a week of late, and its standard error. */
export interface OwnGrowth {
  readonly mean: number;
  readonly error: number;
}

/** One lifter of a kind: time constants from their printed intervals, our own numbers from around what they are. */
export function drawModel(
  kind: LifterKindName,
  random: SeededRandom,
  own: OwnGrowth | null = null,
): LifterModel {
  const { changes, growthSpread } = LIFTER_KINDS[kind];
  const model: LifterModel = { ...LIFTER_MODEL, ...changes };
  const within = ([low, high]: readonly [number, number]): number => {
    const drawn = (low + high) / 2 + ((high - low) / (2 * 1.96)) * random.normal();
    return Math.max(low, Math.min(high, drawn));
  };
  const around = Object.fromEntries(
    DRAWN_AROUND.map((name) => [name, model[name] * (1 + OURS * (2 * random.uniform() - 1))]),
  );
  const [mean, error] = own ? [own.mean, own.error] : [model.growth, growthSpread];
  return {
    ...model,
    ...around,
    fitnessDays: within(PRINTED.fitnessDays),
    fatigueDays: within(PRINTED.fatigueDays),
    growth: mean + error * random.normal(),
  };
}
