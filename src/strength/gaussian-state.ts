/** One scalar observation: `value = row · state + noise` of that variance. */
export interface Observation {
  readonly row: readonly number[];
  readonly value: number;
  readonly variance: number;
}

/**
 * A Gaussian state of a few quantities, dense, changed in place: the Kalman filter one elementary
 * step at a time. Every transition is a product of `add` and `copy`, so none costs more than a row
 * and a column of the covariance.
 */
export class GaussianState {
  readonly mean: Float64Array;
  readonly size: number;
  /** Covariance, row by row. */
  private readonly covariance: Float64Array;

  constructor(size: number) {
    this.size = size;
    this.mean = new Float64Array(size);
    this.covariance = new Float64Array(size * size);
  }

  /** Makes a quantity independent of all others, with this mean and variance. */
  reset(i: number, mean: number, variance: number): void {
    const { size, covariance } = this;
    for (let j = 0; j < size; j += 1) covariance[i * size + j] = covariance[j * size + i] = 0;
    this.mean[i] = mean;
    covariance[i * size + i] = variance;
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
    const { size, mean } = this;
    const spread = this.times(row);
    let [expected, total] = [0, variance];
    for (let i = 0; i < size; i += 1) {
      expected += (row[i] ?? 0) * (mean[i] ?? 0);
      total += (row[i] ?? 0) * (spread[i] ?? 0);
    }
    const innovation = value - expected;
    for (let i = 0; i < size; i += 1) {
      const gain = (spread[i] ?? 0) / total;
      mean[i] = (mean[i] ?? 0) + gain * innovation;
      for (let j = 0; j < size; j += 1) this.raise(i, j, -gain * (spread[j] ?? 0));
    }
    return -0.5 * (Math.log(2 * Math.PI * total) + innovation ** 2 / total);
  }

  /** Mean and variance of `row · state`. */
  along(row: readonly number[]): { mean: number; variance: number } {
    const spread = this.times(row);
    let [mean, variance] = [0, 0];
    for (let i = 0; i < this.size; i += 1) {
      mean += (row[i] ?? 0) * (this.mean[i] ?? 0);
      variance += (row[i] ?? 0) * (spread[i] ?? 0);
    }
    return { mean, variance: Math.max(0, variance) };
  }

  private times(row: readonly number[]): Float64Array {
    const { size, covariance } = this;
    const product = new Float64Array(size);
    for (let j = 0; j < size; j += 1) {
      const factor = row[j] ?? 0;
      if (factor === 0) continue;
      for (let i = 0; i < size; i += 1) {
        product[i] = (product[i] ?? 0) + factor * (covariance[i * size + j] ?? 0);
      }
    }
    return product;
  }

  private raise(i: number, j: number, by: number): void {
    const at = i * this.size + j;
    this.covariance[at] = (this.covariance[at] ?? 0) + by;
  }
}
