/** The share of a normal distribution below `z` standard deviations; error under 1.5e-7 (Abramowitz & Stegun 1964, 7.1.26). */
export function normalBelow(z: number): number {
  const x = Math.abs(z) / Math.SQRT2;
  const t = 1 / (1 + 0.3275911 * x);
  const series =
    t *
    (0.254829592 + t * (-0.284496736 + t * (1.421413741 + t * (-1.453152027 + t * 1.061405429))));
  const tail = (series * Math.exp(-x * x)) / 2;
  return z < 0 ? tail : 1 - tail;
}

/** Half the width of a 90 % interval, in standard deviations. */
export const HALF_OF_90 = 1.6449;
