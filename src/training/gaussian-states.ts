/** Places in the state, each with its factor: the others count nothing. */
export type StateRow = readonly (readonly [place: number, factor: number])[];

/** Mean and variance of a sum of quantities, one of each for every variant. */
export interface Outlook {
  readonly mean: Float64Array;
  readonly variance: Float64Array;
}

/**
 * Gaussian states of a few quantities, dense, changed in place: the Kalman filter one elementary
 * step at a time, for several variants of one model. What differs between variants is noise alone,
 * so every step is the same for all. Every transition is a product of `add`, `scale` and `copy`, so
 * none costs more than a row of the covariance.
 */
export class GaussianStates {
  readonly size: number;
  variants: number;
  /** Variant by variant, as is all that follows. */
  private mean: Float64Array;
  /** Covariance, row by row up to the diagonal: it is symmetric, and half of it is half the work. */
  private covariance: Float64Array;
  private spread: Float64Array;
  private outlook: Outlook;
  private density: Float64Array;
  /** One more than the last quantity that was set: those from here on are nothing and are passed over. */
  private used = 0;

  constructor(size: number, variants: number) {
    this.size = size;
    this.variants = variants;
    this.mean = new Float64Array(size * variants);
    this.covariance = new Float64Array(triangle(size) * variants);
    this.spread = new Float64Array(size * variants);
    this.outlook = { mean: new Float64Array(variants), variance: new Float64Array(variants) };
    this.density = new Float64Array(variants);
  }

  /** Makes a quantity independent of all others, with this mean and these variances. */
  reset(i: number, mean: number, variance: ArrayLike<number>): void {
    this.use(i);
    this.scale(i, 0);
    for (let v = 0; v < this.variants; v += 1) this.mean[v * this.size + i] = mean;
    this.disturb(i, i, variance);
  }

  /** `state[to] += factor · state[from]`; the two differ. */
  add(to: number, from: number, factor: number): void {
    const { size, variants, covariance, mean, used } = this;
    for (let v = 0; v < variants; v += 1) {
      const [first, at] = [v * size, v * triangle(size)];
      mean[first + to] = (mean[first + to] ?? 0) + factor * (mean[first + from] ?? 0);
      const whole = at + placeOf(to, to);
      const both = covariance[at + placeOf(to, from)] ?? 0;
      const own = covariance[at + placeOf(from, from)] ?? 0;
      covariance[whole] = (covariance[whole] ?? 0) + factor * (2 * both + factor * own);
      for (let j = 0; j < used; j += 1) {
        if (j === to) continue;
        const target = at + placeOf(to, j);
        covariance[target] =
          (covariance[target] ?? 0) + factor * (covariance[at + placeOf(from, j)] ?? 0);
      }
    }
  }

  /** `state[i] *= factor`. */
  scale(i: number, factor: number): void {
    const { size, variants, covariance, mean, used } = this;
    for (let v = 0; v < variants; v += 1) {
      mean[v * size + i] = factor * (mean[v * size + i] ?? 0);
      for (let j = 0; j < used; j += 1) {
        const at = v * triangle(size) + placeOf(i, j);
        covariance[at] = (i === j ? factor * factor : factor) * (covariance[at] ?? 0);
      }
    }
  }

  /** `state[to] = state[from]`; the two differ. */
  copy(to: number, from: number): void {
    this.use(to);
    const { size, variants, covariance, mean, used } = this;
    for (let v = 0; v < variants; v += 1) {
      const at = v * triangle(size);
      mean[v * size + to] = mean[v * size + from] ?? 0;
      for (let j = 0; j < used; j += 1)
        covariance[at + placeOf(to, j)] = covariance[at + placeOf(from, j === to ? from : j)] ?? 0;
    }
  }

  /** Adds noise: to the covariance of `i` and `j`, both ways. */
  disturb(i: number, j: number, variance: ArrayLike<number>): void {
    const { size, variants, covariance } = this;
    const step = triangle(size);
    for (let v = 0, at = placeOf(i, j); v < variants; v += 1, at += step)
      covariance[at] = (covariance[at] ?? 0) + (variance[v] ?? 0);
  }

  /**
   * Kalman's update with one scalar, `value = row · state + noise` of these variances, with the row
   * that {@link along} was asked about last; several observations of one time are taken one after
   * the other (univariate treatment: Durbin & Koopman 2012, §6.4). Gives the log densities of the
   * value before, in a list that the next call overwrites.
   */
  learn(value: number, variance: ArrayLike<number>): Float64Array {
    const { size, variants, mean, covariance, spread, density, outlook, used } = this;
    for (let v = 0; v < variants; v += 1) {
      const total = (outlook.variance[v] ?? 0) + (variance[v] ?? 0);
      const innovation = value - (outlook.mean[v] ?? 0);
      density[v] = -0.5 * (Math.log(2 * Math.PI * total) + innovation ** 2 / total);
      const first = v * size;
      let at = v * triangle(size);
      for (let i = 0; i < used; i += 1) {
        const gain = (spread[first + i] ?? 0) / total;
        mean[first + i] = (mean[first + i] ?? 0) + gain * innovation;
        for (let j = 0; j <= i; j += 1, at += 1)
          covariance[at] = (covariance[at] ?? 0) - gain * (spread[first + j] ?? 0);
      }
    }
    return density;
  }

  /** Mean and variance of `row · state`, in lists that the next call overwrites. */
  along(row: StateRow): Outlook {
    const { size, variants, mean, covariance, spread, outlook, used } = this;
    spread.fill(0);
    outlook.mean.fill(0);
    outlook.variance.fill(0);
    for (const [j, factor] of row) {
      for (let v = 0; v < variants; v += 1) {
        const first = v * size;
        outlook.mean[v] = (outlook.mean[v] ?? 0) + factor * (mean[first + j] ?? 0);
        let at = v * triangle(size) + triangle(j);
        for (let i = 0; i < used; i += 1) {
          spread[first + i] = (spread[first + i] ?? 0) + factor * (covariance[at] ?? 0);
          at += i < j ? 1 : i + 1;
        }
      }
    }
    for (const [j, factor] of row)
      for (let v = 0; v < variants; v += 1)
        outlook.variance[v] = (outlook.variance[v] ?? 0) + factor * (spread[v * size + j] ?? 0);
    return outlook;
  }

  /** Goes on with these variants alone; one that is named twice goes on as two. */
  keep(kept: readonly number[]): void {
    const of = (list: Float64Array, length: number) => {
      const left = new Float64Array(length * kept.length);
      kept.forEach((v, at) => {
        left.set(list.subarray(v * length, (v + 1) * length), at * length);
      });
      return left;
    };
    this.mean = of(this.mean, this.size);
    this.covariance = of(this.covariance, triangle(this.size));
    this.variants = kept.length;
    this.spread = new Float64Array(this.size * kept.length);
    this.outlook = {
      mean: new Float64Array(kept.length),
      variance: new Float64Array(kept.length),
    };
    this.density = new Float64Array(kept.length);
  }

  private use(i: number): void {
    this.used = Math.max(this.used, i + 1);
  }
}

/** Entries of the first rows of a covariance. */
const triangle = (rows: number): number => (rows * (rows + 1)) / 2;

const placeOf = (i: number, j: number): number => (i < j ? triangle(j) + i : triangle(i) + j);
