import { GaussianStates, type Outlook } from './gaussian-states.ts';

/** One reading of body mass, over 0 in any unit, on a day counted from any origin. */
export interface DayReading {
  readonly day: number;
  readonly value: number;
}

/**
 * Standard deviations in logarithms, so 0.01 is one percent: of a reading (water, food and salt), of
 * what the mass wanders in a week, of what its weekly slope does in a week, and of the slope before
 * anything is known. Chosen on made courses with white noise, held against others with water that
 * lasts days, cycles, refeeds, gaps and changes of rate (`npm run figures`). Ours.
 */
const MODEL = { reading: 0.009, level: 0.002, slope: 0.0015, firstSlope: 0.006, tails: 4 } as const;

const [LEVEL, SLOPE] = [0, 1];

/** What a reading makes of the trend, and how far it is believed. */
export interface JudgedReading {
  /** Trend on its day. */
  readonly level: number;
  /** Over 0, up to 1: far from what was expected, a reading counts as this share of one. */
  readonly trust: number;
}

/**
 * Trend of body mass, one judgement for each reading: level and slope that both wander (local linear
 * trend; Durbin & Koopman 2012, §3.2), so that a steady loss is followed without lag. A reading far
 * from what was expected counts less (a step of a Student filter). Readings are in order of day; a
 * later one never changes an earlier value.
 */
export function judgedReadings(readings: readonly DayReading[]): JudgedReading[] {
  const [first] = readings;
  if (!first) return [];
  const state = new GaussianStates(2, 1);
  state.reset(LEVEL, Math.log(first.value), [MODEL.reading ** 2]);
  state.reset(SLOPE, 0, [MODEL.firstSlope ** 2]);
  let last = first.day;
  return readings.map(({ day, value }, at) => {
    if (at === 0) return { level: value, trust: 1 };
    advance(state, (day - last) / 7);
    last = day;
    const row = [[LEVEL, 1]] as const;
    const { mean, variance } = only(state.along(row));
    const own = MODEL.reading ** 2;
    const far = (Math.log(value) - mean) ** 2 / (variance + own);
    const trust = Math.min(1, (MODEL.tails + 1) / (MODEL.tails + far));
    state.learn(Math.log(value), [own / trust]);
    return { level: Math.exp(only(state.along(row)).mean), trust };
  });
}

/** The trend alone, one value for each reading. */
export const massTrend = (readings: readonly DayReading[]): number[] =>
  judgedReadings(readings).map(({ level }) => level);

function advance(state: GaussianStates, weeks: number): void {
  const slope = MODEL.slope ** 2;
  state.add(LEVEL, SLOPE, weeks);
  state.disturb(LEVEL, LEVEL, [MODEL.level ** 2 * weeks + (slope * weeks ** 3) / 3]);
  state.disturb(LEVEL, SLOPE, [(slope * weeks ** 2) / 2]);
  state.disturb(SLOPE, SLOPE, [slope * weeks]);
}

const only = ({ mean: [mean = 0], variance: [variance = 0] }: Outlook) => ({ mean, variance });
