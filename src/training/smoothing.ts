/**
 * Exponentially weighted moving average: each value moves it by `lambda` (0 to 1) of the way.
 * One average for each value (NIST/SEMATECH e-Handbook 6.3.2.4).
 */
export function ewma(values: readonly number[], lambda: number, start: number): number[] {
  let average = start;
  return values.map((value) => {
    average += lambda * (value - average);
    return average;
  });
}

/** One reading of a slow quantity, on a day counted from any origin. */
export interface DayReading {
  readonly day: number;
  readonly value: number;
}

/** How much of the way to a new reading the trend goes in a day. Ours. */
const LAMBDA_A_DAY = 0.1;

/** For so many days from the first reading the trend is the mean of the readings so far. Ours. */
const STARTING_DAYS = 7;

/**
 * Trend of readings at uneven distances, one value for each reading: the mean of the readings so
 * far for 7 days, then `T += (1 − 0.9^days) · (reading − T)`, the EWMA with the days in between
 * counted. Readings are in order of day; a later reading never changes an earlier value.
 */
export function trend(readings: readonly DayReading[]): number[] {
  const first = readings[0]?.day ?? 0;
  let [level, sum, last] = [0, 0, first];
  return readings.map(({ day, value }, at) => {
    sum += value;
    const weight = 1 - (1 - LAMBDA_A_DAY) ** (day - last);
    level = day - first < STARTING_DAYS ? sum / (at + 1) : level + weight * (value - level);
    last = day;
    return level;
  });
}
