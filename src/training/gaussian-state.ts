/** Places in the state, each with its factor: the others count nothing. */
export type StateRow = readonly (readonly [place: number, factor: number])[];

/** One scalar observation: `value = row · state + noise` of that variance. */
export interface Observation {
  readonly row: StateRow;
  readonly value: number;
  readonly variance: number;
}

/**
 * A Gaussian state of a few quantities, dense, changed in place: the Kalman filter one elementary
 * step at a time. Every transition is a product of `add`, `scale` and `copy`, so none costs more
 * than a row and a column of the covariance.
 */
export class GaussianState {
  readonly mean: Float64Array;
  readonly size: number;
  /** Covariance, row by row. */
  private readonly covariance: Float64Array;
  private readonly spread: Float64Array;

  constructor(size: number) {
    this.size = size;
    this.mean = new Float64Array(size);
    this.covariance = new Float64Array(size * size);
    this.spread = new Float64Array(size);
  }

  /** Makes a quantity independent of all others, with this mean and variance. */
  reset(i: number, mean: number, variance: number): void {
    this.scale(i, 0);
    this.mean[i] = mean;
    this.covariance[i * this.size + i] = variance;
  }

  /** `state[to] += factor · state[from]`; the two differ. */
  add(to: number, from: number, factor: number): void {
    const { size, covariance, mean } = this;
    mean[to] = (mean[to] ?? 0) + factor * (mean[from] ?? 0);
    for (let j = 0; j < size; j += 1)
      this.raise(to, j, factor * (covariance[from * size + j] ?? 0));
    for (let j = 0; j < size; j += 1)
      this.raise(j, to, factor * (covariance[j * size + from] ?? 0));
  }

  /** `state[i] *= factor`. */
  scale(i: number, factor: number): void {
    const { size, covariance, mean } = this;
    mean[i] = factor * (mean[i] ?? 0);
    for (let j = 0; j < size; j += 1) {
      covariance[i * size + j] = factor * (covariance[i * size + j] ?? 0);
      covariance[j * size + i] = factor * (covariance[j * size + i] ?? 0);
    }
  }

  /** `state[to] = state[from]`. */
  copy(to: number, from: number): void {
    const { size, covariance, mean } = this;
    mean[to] = mean[from] ?? 0;
    for (let j = 0; j < size; j += 1) covariance[to * size + j] = covariance[from * size + j] ?? 0;
    for (let j = 0; j < size; j += 1) covariance[j * size + to] = covariance[j * size + from] ?? 0;
  }

  /** Adds noise: to the covariance of `i` and `j`, both ways. */
  disturb(i: number, j: number, variance: number): void {
    this.raise(i, j, variance);
    if (i !== j) this.raise(j, i, variance);
  }

  /**
   * Kalman's update with one scalar; several observations of one time are taken one after the other
   * (univariate treatment: Durbin & Koopman 2012, §6.4). Gives the log density of the value before.
   */
  observe({ row, value, variance }: Observation): number {
    const { size, mean, covariance } = this;
    const spread = this.times(row);
    let [expected, total] = [0, variance];
    for (const [i, factor] of row) {
      expected += factor * (mean[i] ?? 0);
      total += factor * (spread[i] ?? 0);
    }
    const innovation = value - expected;
    for (let i = 0; i < size; i += 1) {
      const gain = (spread[i] ?? 0) / total;
      if (gain === 0) continue;
      mean[i] = (mean[i] ?? 0) + gain * innovation;
      const at = i * size;
      for (let j = 0; j < size; j += 1)
        covariance[at + j] = (covariance[at + j] ?? 0) - gain * (spread[j] ?? 0);
    }
    return -0.5 * (Math.log(2 * Math.PI * total) + innovation ** 2 / total);
  }

  /** Mean and variance of `row · state`. */
  along(row: StateRow): { mean: number; variance: number } {
    const spread = this.times(row);
    let [mean, variance] = [0, 0];
    for (const [i, factor] of row) {
      mean += factor * (this.mean[i] ?? 0);
      variance += factor * (spread[i] ?? 0);
    }
    return { mean, variance: Math.max(0, variance) };
  }

  /** Covariance · row, in a list that the next call overwrites. */
  private times(row: StateRow): Float64Array {
    const { size, covariance, spread } = this;
    spread.fill(0);
    for (const [j, factor] of row) {
      const at = j * size;
      for (let i = 0; i < size; i += 1)
        spread[i] = (spread[i] ?? 0) + factor * (covariance[at + i] ?? 0);
    }
    return spread;
  }

  private raise(i: number, j: number, by: number): void {
    const at = i * this.size + j;
    this.covariance[at] = (this.covariance[at] ?? 0) + by;
  }
}
