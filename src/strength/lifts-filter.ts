import { GaussianState, type StateRow } from '../training/gaussian-state.ts';
import type { SessionValue } from './session-seen.ts';
import { type Setting, STRENGTH_MODEL } from './strength-model.ts';

/** One session of a lift as the filter sees it, on a day counted from any origin. */
export interface Observed extends SessionValue {
  readonly day: number;
  readonly lift: string;
  readonly track: string;
  /** What the sets whose reserve was told say more than those that failed; null without both. */
  readonly toldMore: SessionValue | null;
}

export interface MeanAndVariance {
  readonly mean: number;
  readonly variance: number;
}

/** What one setting makes of a lifter, in logarithms. */
export interface Filtered {
  /** Of each lift: strength now, and strength now less that on the base day. */
  readonly lifts: ReadonlyMap<string, { level: MeanAndVariance; change: MeanAndVariance }>;
  /** The mean of the changes of these lifts. */
  readonly together: (lifts: readonly string[]) => MeanAndVariance;
  readonly logLikelihood: number;
}

/**
 * Places in the state: the slope that all lifts share, the form of these days, which passes, and
 * then of each lift its level and its base. The base is a copy of the level that stands still from
 * the day on that strength is compared with: what comes later tells about it, too (fixed-point
 * smoothing by a state made longer), so that the error of level − base is simply that of the state.
 */
const [SLOPE, FORM, TOLD, LIFTS] = [0, 1, 2, 3];
const levelOf = (lift: number): number => LIFTS + 2 * lift;
const baseOf = (lift: number): number => LIFTS + 2 * lift + 1;

/** Filters the sessions of a lifter's lifts together, under one setting. */
export class LiftsFilter {
  private readonly state: GaussianState;
  private readonly lifts: readonly string[];
  /** Tracks of a lift after its first lie apart by something of their own: the curve between reps and load is the lifter's. */
  private readonly tracks: ReadonlyMap<string, number>;
  private readonly begun = new Set<number>();
  /** So many sessions of a lift running were far from what was expected; negative: under it. */
  private readonly astray = new Map<number, number>();
  private readonly setting: Setting;
  private readonly baseDay: number;
  private baseStands = false;
  private day: number;
  /** Of the sessions taken. */
  logLikelihood = 0;

  constructor(sessions: readonly Observed[], setting: Setting, baseDay: number) {
    this.setting = setting;
    this.baseDay = baseDay;
    this.lifts = [...new Set(sessions.map(({ lift }) => lift))];
    this.tracks = tracksApart(sessions, levelOf(this.lifts.length));
    this.state = new GaussianState(levelOf(this.lifts.length) + this.tracks.size);
    this.day = sessions[0]?.day ?? 0;
    const { slopeSpread, trackSpread } = STRENGTH_MODEL;
    this.state.reset(SLOPE, 0, slopeSpread ** 2);
    this.state.reset(FORM, 0, setting.form ** 2);
    this.state.reset(TOLD, 0, STRENGTH_MODEL.toldBias ** 2);
    for (const place of this.tracks.values()) this.state.reset(place, 0, trackSpread ** 2);
  }

  /** Sessions are taken in order of day. */
  take(session: Observed): void {
    this.goTo(session.day);
    const lift = this.lifts.indexOf(session.lift);
    this.begin(lift, session.value);
    const own = this.tracks.get(session.track);
    const row: StateRow = [
      [levelOf(lift), 1],
      [FORM, 1],
      [TOLD, session.perToldRep],
      ...(own === undefined ? [] : [[own, 1] as const]),
    ];
    const variance = session.variance + this.setting.luck ** 2;
    const trusted = this.trust(lift, row, session.value, variance);
    this.logLikelihood += this.state.observe({
      row,
      value: session.value,
      variance: variance / trusted,
    });
    const more = session.toldMore;
    if (!more) return;
    const { value, variance: error, perToldRep } = more;
    this.logLikelihood += this.state.observe({ row: [[TOLD, perToldRep]], value, variance: error });
  }

  at(until: number): Filtered {
    this.goTo(until);
    const { state, lifts } = this;
    const change = (lift: number, share = 1): StateRow => [
      [levelOf(lift), share],
      [baseOf(lift), -share],
    ];
    return {
      lifts: new Map(
        lifts.map((key, lift) => [
          key,
          { level: state.along([[levelOf(lift), 1]]), change: state.along(change(lift)) },
        ]),
      ),
      together: (keys) =>
        state.along(keys.flatMap((key) => change(lifts.indexOf(key), 1 / keys.length))),
      logLikelihood: this.logLikelihood,
    };
  }

  /**
   * How far a session is trusted: a day far from what was expected has its luck widened (a step of
   * a Student filter). Three running are no bad days any more: the lift itself has made a step.
   */
  private trust(lift: number, row: StateRow, value: number, variance: number): number {
    const { tails, astray, astrayRunning, step } = STRENGTH_MODEL;
    const expected = this.state.along(row);
    const away = value - expected.mean;
    const far = away ** 2 / (expected.variance + variance);
    const side = far > astray ? Math.sign(away) : 0;
    const running = this.astray.get(lift) ?? 0;
    const now = side * running > 0 ? running + side : side;
    this.astray.set(lift, now);
    if (Math.abs(now) < astrayRunning) return Math.min(1, (tails + 1) / (tails + far));
    this.state.disturb(levelOf(lift), levelOf(lift), step ** 2);
    return 1;
  }

  private begin(lift: number, value: number): void {
    if (this.begun.has(lift)) return;
    this.begun.add(lift);
    this.state.reset(levelOf(lift), value, STRENGTH_MODEL.levelSpread ** 2);
    if (this.baseStands) this.state.copy(baseOf(lift), levelOf(lift));
  }

  private goTo(day: number): void {
    if (!this.baseStands && day >= this.baseDay) {
      this.advance(this.baseDay - this.day);
      for (const lift of this.begun) this.state.copy(baseOf(lift), levelOf(lift));
      this.baseStands = true;
      this.day = Math.max(this.day, this.baseDay);
    }
    this.advance(day - this.day);
    this.day = Math.max(this.day, day);
  }

  /**
   * So many days on: levels that wander, together and each by itself, along a slope that wanders,
   * too (Durbin & Koopman 2012, §3.2 and 3.8); form that passes.
   */
  private advance(days: number): void {
    if (days <= 0) return;
    const { state, setting } = this;
    const weeks = days / 7;
    const slope = setting.slope ** 2;
    const shared = setting.shared ** 2 * weeks + (slope * weeks ** 3) / 3;
    for (const lift of this.begun) {
      const level = levelOf(lift);
      state.add(level, SLOPE, weeks);
      state.disturb(level, level, setting.own ** 2 * weeks);
      state.disturb(level, SLOPE, (slope * weeks ** 2) / 2);
      for (const other of this.begun)
        if (other <= lift) state.disturb(level, levelOf(other), shared);
    }
    state.disturb(SLOPE, SLOPE, slope * weeks);
    state.disturb(TOLD, TOLD, STRENGTH_MODEL.toldBiasAWeek ** 2 * weeks);
    const left = Math.exp(-days / STRENGTH_MODEL.formDays);
    state.scale(FORM, left);
    state.disturb(FORM, FORM, setting.form ** 2 * (1 - left ** 2));
  }
}

function tracksApart(sessions: readonly Observed[], from: number): ReadonlyMap<string, number> {
  const firsts = new Map<string, string>();
  const tracks = new Map<string, number>();
  for (const { lift, track } of sessions) {
    const first = firsts.get(lift) ?? track;
    firsts.set(lift, first);
    if (track !== first && !tracks.has(track)) tracks.set(track, from + tracks.size);
  }
  return tracks;
}
