import { GaussianStates, type Outlook, type StateRow } from '../training/gaussian-states.ts';
import type { Setting } from './strength-model.ts';

/** A quantity with its error, in logarithms: `mean` 0 of a change is none, −0.02 two percent less. */
export interface Estimated {
  readonly mean: number;
  /** Standard deviation. */
  readonly error: number;
}

/** Something that may have come since the last session: a disturbance of a quantity, and its odds. */
export interface Event {
  readonly place: number;
  /** Standard deviation. */
  readonly spread: number;
  readonly odds: number;
}

/** What of each setting does not change: variances. */
interface Variances {
  readonly shared: Float64Array;
  readonly own: Float64Array;
  readonly slope: Float64Array;
  readonly form: Float64Array;
  readonly luck: Float64Array;
}

/**
 * The settings of the model side by side, and what may have come in each: states, and how likely the
 * results have made them. The likeliest go on in several ways where something may have come; those
 * that the results have made a hundred times less likely than the best are not carried on: they only
 * cost time.
 */
export class Variants {
  readonly states: GaussianStates;
  private each: Variances;
  private logLikelihood: Float64Array;

  /** So many quantities, under each of these settings. */
  constructor(size: number, settings: readonly Setting[]) {
    this.states = new GaussianStates(size, settings.length);
    this.each = variancesOf(settings);
    this.logLikelihood = new Float64Array(settings.length);
  }

  /** Of each variant, in the order of the states. */
  get variances(): Variances {
    return this.each;
  }

  /** The same variance for each. */
  alike(variance: number): Float64Array {
    return new Float64Array(this.states.variants).fill(variance);
  }

  /** How much each counts; one in all. */
  weights(): Float64Array {
    const best = Math.max(...this.logLikelihood);
    const weights = this.logLikelihood.map((each) => Math.exp(each - best));
    const total = weights.reduce((sum, weight) => sum + weight, 0);
    return weights.map((weight) => weight / total);
  }

  /** What all of them together say along a row of the state, where each has `more` variance. */
  mixed(row: StateRow, weights: Float64Array, more?: Float64Array): Estimated {
    return mixture(this.states.along(row), weights, more);
  }

  /** Takes log densities, or log odds, of what was seen. */
  count(density: Float64Array): void {
    for (let v = 0; v < density.length; v += 1)
      this.logLikelihood[v] = (this.logLikelihood[v] ?? 0) + (density[v] ?? 0);
  }

  /** The likeliest go on as they were, and once more as if each of these had come. */
  split(events: readonly Event[]): void {
    const { variants } = this.states;
    const likeliest = this.byLikelihood().slice(0, VARIANTS_SPLIT);
    this.goOnWith([...this.logLikelihood.keys(), ...events.flatMap(() => likeliest)]);
    events.forEach(({ place, spread, odds }, at) => {
      const from = variants + at * likeliest.length;
      const to = from + likeliest.length;
      this.states.disturb(place, place, this.alike(0).fill(spread ** 2, from, to));
      this.count(this.alike(0).fill(Math.log(odds), from, to));
    });
  }

  /** Leaves out the unlikely ones. */
  sieve(): void {
    if (this.states.variants <= VARIANTS_WITHOUT_SIEVE) return;
    const least = Math.max(...this.logLikelihood) - Math.log(100);
    const kept = this.byLikelihood()
      .slice(0, MOST_VARIANTS)
      .filter((v) => (this.logLikelihood[v] ?? 0) > least);
    if (kept.length < this.states.variants) this.goOnWith(kept);
  }

  private byLikelihood(): number[] {
    const { logLikelihood } = this;
    const of = (v: number) => logLikelihood[v] ?? 0;
    return [...logLikelihood.keys()].sort((a, b) => of(b) - of(a));
  }

  private goOnWith(kept: readonly number[]): void {
    const of = (list: Float64Array) => Float64Array.from(kept, (v) => list[v] ?? 0);
    this.states.keep(kept);
    this.logLikelihood = of(this.logLikelihood);
    const { shared, own, slope, form, luck } = this.each;
    this.each = {
      shared: of(shared),
      own: of(own),
      slope: of(slope),
      form: of(form),
      luck: of(luck),
    };
  }
}

/** What is carried on costs time: enough that none of these numbers changes what is told. */
const VARIANTS_WITHOUT_SIEVE = 2;
const VARIANTS_SPLIT = 2;
const MOST_VARIANTS = 24;

function variancesOf(settings: readonly Setting[]): Variances {
  const of = (spread: (setting: Setting) => number) =>
    Float64Array.from(settings, (setting) => spread(setting) ** 2);
  return {
    shared: of(({ shared }) => shared),
    own: of(({ own }) => own),
    slope: of(({ slope }) => slope),
    form: of(({ form }) => form),
    luck: of(({ luck }) => luck),
  };
}

/** Mean and standard deviation of a mixture. */
function mixture(
  { mean, variance }: Outlook,
  weights: Float64Array,
  more?: Float64Array,
): Estimated {
  let [centre, spread] = [0, 0];
  weights.forEach((weight, v) => {
    centre += weight * (mean[v] ?? 0);
  });
  weights.forEach((weight, v) => {
    const own = Math.max(0, variance[v] ?? 0) + (more?.[v] ?? 0);
    spread += weight * (own + ((mean[v] ?? 0) - centre) ** 2);
  });
  return { mean: centre, error: Math.sqrt(spread) };
}
