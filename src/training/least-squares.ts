/** A straight line through points. */
export interface FittedLine {
  readonly slope: number;
  readonly intercept: number;
  /** Standard error of the slope; 0 with fewer than three points. */
  readonly slopeError: number;
  readonly interceptError: number;
  /** Standard error of the line's height at `x`. */
  readonly errorAt: (x: number) => number;
  /** Share of the variance that the line explains, 0 to 1. */
  readonly r2: number;
}

/**
 * The line with the least sum of squared vertical distances. Sums are taken about the means, which
 * keeps the digits that large values would lose. Points on one x have no slope: it is 0 there.
 * A point of weight w, 1 unless it says so, has a variance 1/w of that of the others.
 */
export function leastSquares(
  points: readonly (readonly [x: number, y: number, weight?: number])[],
): FittedLine {
  const count = points.length;
  const whole = points.reduce((sum, [, , weight = 1]) => sum + weight, 0);
  const mean = (of: 0 | 1): number =>
    count === 0 ? 0 : points.reduce((sum, point) => sum + (point[2] ?? 1) * point[of], 0) / whole;
  const [meanX, meanY] = [mean(0), mean(1)];
  let [xx, xy, yy] = [0, 0, 0];
  for (const [x, y, weight = 1] of points) {
    xx += weight * (x - meanX) ** 2;
    xy += weight * (x - meanX) * (y - meanY);
    yy += weight * (y - meanY) ** 2;
  }
  const slope = xx === 0 ? 0 : xy / xx;
  const intercept = meanY - slope * meanX;
  const residual = points.reduce(
    (sum, [x, y, weight = 1]) => sum + weight * (y - meanY - slope * (x - meanX)) ** 2,
    0,
  );
  const variance = count > 2 && xx > 0 ? residual / (count - 2) : 0;
  const errorAt = (x: number) =>
    xx > 0 ? Math.sqrt(variance * (1 / whole + (x - meanX) ** 2 / xx)) : 0;
  return {
    slope,
    intercept,
    slopeError: xx > 0 ? Math.sqrt(variance / xx) : 0,
    interceptError: errorAt(0),
    errorAt,
    r2: yy === 0 ? 1 : 1 - residual / yy,
  };
}
