import { GaussianState, type Observation } from './gaussian-state.ts';
import { type Setting, STRENGTH_MODEL } from './strength-model.ts';

/** One set as the estimate sees it. */
export interface SetSeen {
  /** Log of the estimated one-repetition maximum, in any unit that stays the same. */
  readonly value: number;
  /** Variance of what was told. */
  readonly variance: number;
  /** 0 for the first set of the exercise. */
  readonly place: number;
}

/** One session of a lift, on a day counted from any origin. */
export interface SessionSeen {
  readonly day: number;
  readonly track: string;
  readonly sets: readonly SetSeen[];
}

interface MeanAndVariance {
  readonly mean: number;
  readonly variance: number;
}

/** What one setting makes of a lift, in logarithms. */
export interface Filtered {
  /** Strength now. */
  readonly level: MeanAndVariance;
  /** Strength now less that on the base day. */
  readonly change: MeanAndVariance;
  readonly logLikelihood: number;
}

/**
 * Places in the state. The base is a copy of the level that stands still from the day on that
 * strength is compared with: what comes later tells about it, too (fixed-point smoothing by a state
 * made longer), so that the error of level − base is simply that of the state. Tracks after the
 * first lie apart by something of their own: the curve between reps and load is the lifter's.
 */
const LEVEL: number = 0;
const [SLOPE, BASE, FALL, LUCK, TRACKS] = [1, 2, 3, 4, 5];

/**
 * Filters the sessions of one lift, in order of day, under one setting, and goes on to `until`.
 * The base follows the level up to `baseDay`, or the first session where that is later. Null
 * without a set.
 */
export function filterLift(
  sessions: readonly SessionSeen[],
  setting: Setting,
  baseDay: number,
  until: number,
): Filtered | null {
  const [first] = sessions;
  const start = first?.sets[0];
  if (!first || !start) return null;
  const tracks = [...new Set(sessions.map(({ track }) => track))];
  const state = startState(start.value, tracks.length);
  let [day, logLikelihood] = [first.day, 0];
  const goTo = (to: number) => {
    if (day < baseDay) advance(state, Math.min(to, baseDay) - day, true, setting);
    if (to > baseDay) advance(state, to - Math.max(day, baseDay), false, setting);
    day = Math.max(day, to);
  };
  for (const session of sessions) {
    goTo(session.day);
    logLikelihood += takeSession(state, session, tracks.indexOf(session.track), setting);
  }
  goTo(until);
  return {
    level: state.along(rowOf([LEVEL, 1])),
    change: state.along(rowOf([LEVEL, 1], [BASE, -1])),
    logLikelihood,
  };
}

function startState(value: number, tracks: number): GaussianState {
  const { levelSpread, slopeSpread, fall, fallSpread, trackSpread } = STRENGTH_MODEL;
  const state = new GaussianState(TRACKS + tracks - 1);
  state.reset(LEVEL, value, levelSpread ** 2);
  state.reset(SLOPE, 0, slopeSpread ** 2);
  state.reset(FALL, fall, fallSpread ** 2);
  for (let i = TRACKS; i < state.size; i += 1) state.reset(i, 0, trackSpread ** 2);
  state.copy(BASE, LEVEL);
  return state;
}

/** So many days on: a level that wanders and a slope that does (Durbin & Koopman 2012, §3.8). */
function advance(state: GaussianState, days: number, baseFollows: boolean, setting: Setting): void {
  if (days <= 0) return;
  const weeks = days / 7;
  const { level, slope } = setting;
  state.add(LEVEL, SLOPE, weeks);
  state.disturb(LEVEL, LEVEL, level ** 2 * weeks + (slope ** 2 * weeks ** 3) / 3);
  state.disturb(LEVEL, SLOPE, (slope ** 2 * weeks ** 2) / 2);
  state.disturb(SLOPE, SLOPE, slope ** 2 * weeks);
  if (baseFollows) state.copy(BASE, LEVEL);
}

/** Takes the sets of a session; a day far from what was expected has its luck widened (a step of a Student filter). */
function takeSession(
  state: GaussianState,
  session: SessionSeen,
  track: number,
  { luck }: Setting,
): number {
  const sets = session.sets.map(({ place, value, variance }): Observation => {
    const own = track > 0 ? [[TRACKS + track - 1, 1] as const] : [];
    return { row: rowOf([LEVEL, 1], [LUCK, 1], [FALL, -place], ...own), value, variance };
  });
  // A day has its own luck, whatever the last one had.
  state.reset(LUCK, 0, luck ** 2);
  const { tails } = STRENGTH_MODEL;
  const weight = (tails + 1) / (tails + strangeness(state, sets));
  if (weight < 1) state.reset(LUCK, 0, luck ** 2 / weight);
  return sets.reduce((sum, set) => sum + state.observe(set), 0);
}

/** Squared distance of the session's mean from what was expected, in its variances. */
function strangeness(state: GaussianState, sets: readonly Observation[]): number {
  const n = sets.length;
  const row = Array.from({ length: state.size }, (_, i) =>
    sets.reduce((sum, set) => sum + (set.row[i] ?? 0) / n, 0),
  );
  const expected = state.along(row);
  const value = sets.reduce((sum, set) => sum + set.value / n, 0);
  const noise = sets.reduce((sum, set) => sum + set.variance / n ** 2, 0);
  return (value - expected.mean) ** 2 / (expected.variance + noise);
}

function rowOf(...entries: readonly (readonly [place: number, value: number])[]): number[] {
  const row: number[] = [];
  for (const [place, value] of entries) row[place] = value;
  return row;
}
