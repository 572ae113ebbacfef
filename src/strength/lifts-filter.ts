import type { GaussianStates, StateRow } from '../training/gaussian-states.ts';
import type { SessionValue } from './session-seen.ts';
import { type Setting, STRENGTH_MODEL } from './strength-model.ts';
import { type Estimated, Variants } from './variants.ts';

/** One session of a lift as the filter sees it, on a day counted from any origin. */
export interface Observed extends SessionValue {
  readonly day: number;
  readonly lift: string;
  readonly track: string;
  /** What the sets whose reserve was told say more than those that failed; null without both. */
  readonly toldMore: SessionValue | null;
}

/** What the sessions taken say, in logarithms, until more are taken. */
export interface Filtered {
  /** The lifts begun. */
  readonly lifts: readonly string[];
  /** Strength now of a lift begun. */
  readonly level: (lift: string) => Estimated;
  /** The mean over these lifts of strength now less that on the base day, once that has come. */
  readonly change: (lifts: readonly string[]) => Estimated;
  /** What a session of this track of a lift begun would tell now: as reserve is told, on a day with its form and luck. */
  readonly session: (lift: string, track: string) => Estimated;
}

/**
 * Places in the state: the slope that all lifts share, what all lifts have gained or lost together,
 * the form of these days, which passes, how reserve is told; then of each lift its own level, beside
 * what is shared, of some tracks what is their own, and last of each lift its base. The base is a
 * copy of the whole level that stands still from the day on that strength is compared with: what
 * comes later tells about it, too (fixed-point smoothing by a state made longer), so that the error
 * of level − base is simply that of the state.
 */
const [SLOPE, SHARED, FORM, TOLD, LIFTS] = [0, 1, 2, 3, 4];
const ownOf = (lift: number): number => LIFTS + lift;

/** A session as the state takes it. */
interface Step {
  readonly day: number;
  readonly lift: number;
  readonly row: StateRow;
  readonly value: number;
  readonly variance: number;
  readonly toldMore: SessionValue | null;
}

/**
 * Filters the sessions of a lifter's lifts together, under every setting of the model side by side.
 * Sessions are taken in order of day. On a day that is off, the likeliest go on in three ways: as
 * they were, as if all lifts had made a step, and as if form had; a lift that is far off by itself may
 * have made one of its own (multi-process models of class II: West &
 * Harrison 1997, ch. 12); what comes after tells which it was.
 */
export class LiftsFilter {
  private readonly variants: Variants;
  private readonly states: GaussianStates;
  private readonly lifts: readonly string[];
  private readonly tracks: ReadonlyMap<string, number>;
  private readonly steps: readonly Step[];
  /** Of each lift begun, the day of its latest session. */
  private readonly begun = new Map<number, number>();
  private readonly baseDay: number;
  private baseStands = false;
  private taken = 0;
  private lastTrained = Number.NEGATIVE_INFINITY;
  private day: number;
  /** Where the bases begin. */
  private readonly bases: number;

  constructor(sessions: readonly Observed[], settings: readonly Setting[], baseDay: number) {
    this.baseDay = baseDay;
    this.lifts = [...new Set(sessions.map(({ lift }) => lift))];
    const tracks = tracksApart(sessions, ownOf(this.lifts.length));
    this.tracks = tracks;
    this.steps = sessions.map((session) => stepOf(session, this.lifts, tracks));
    this.bases = ownOf(this.lifts.length) + tracks.size;
    this.variants = new Variants(this.bases + this.lifts.length, settings);
    this.states = this.variants.states;
    this.day = sessions[0]?.day ?? 0;
    const { slopeSpread, trackSpread, toldBias } = STRENGTH_MODEL;
    this.states.reset(SLOPE, 0, this.variants.alike(slopeSpread ** 2));
    this.states.reset(SHARED, 0, this.variants.alike(0));
    this.states.reset(FORM, 0, this.variants.variances.form);
    this.states.reset(TOLD, 0, this.variants.alike(toldBias ** 2));
    for (const place of tracks.values())
      this.states.reset(place, 0, this.variants.alike(trackSpread ** 2));
  }

  /** What the sessions up to the day `until` say of it. Days are asked for in their order. */
  at(until: number): Filtered {
    for (let next = this.steps[this.taken]; next && next.day <= until; ) {
      if (next.day > this.lastTrained) this.meetDay(next.day);
      this.take(next);
      this.taken += 1;
      next = this.steps[this.taken];
    }
    this.goTo(until);
    return this.told();
  }

  private told(): Filtered {
    const { lifts, variants, bases } = this;
    const weights = variants.weights();
    const along = (row: StateRow): Estimated => variants.mixed(row, weights);
    return {
      lifts: lifts.filter((_, lift) => this.begun.has(lift)),
      level: (lift) =>
        along([
          [SHARED, 1],
          [ownOf(lifts.indexOf(lift)), 1],
        ]),
      change: (wanted) => {
        const of = wanted.map((lift) => lifts.indexOf(lift));
        return along([
          [SHARED, 1],
          ...of.map((lift) => [ownOf(lift), 1 / of.length] as const),
          ...of.map((lift) => [bases + lift, -1 / of.length] as const),
        ]);
      },
      session: (lift, track) => {
        const row = rowOf(lifts.indexOf(lift), this.tracks.get(track), STRENGTH_MODEL.perToldRep);
        return variants.mixed(row, weights, variants.variances.luck);
      },
    };
  }

  private meetDay(day: number): void {
    this.variants.sieve();
    this.goTo(day);
    const weeks = weeksOfChance(this.lastTrained, day);
    this.lastTrained = day;
    if (this.farOff(this.today(day)) < STRENGTH_MODEL.off) return;
    const { jump, jumpsAWeek, dip, dipsAWeek } = STRENGTH_MODEL;
    this.variants.split([
      { place: SHARED, spread: jump, odds: jumpsAWeek * weeks },
      { place: FORM, spread: dip, odds: dipsAWeek * weeks },
    ]);
  }

  /** The sessions of this day whose lifts are known. */
  private today(day: number): Step[] {
    const today: Step[] = [];
    for (let at = this.taken; this.steps[at]?.day === day; at += 1) {
      const step = this.steps[at];
      if (step && this.begun.has(step.lift)) today.push(step);
    }
    return today;
  }

  /** How far the mean of these sessions is off what is expected of it, squared, in variances; 0 of none. */
  private farOff(sessions: readonly Step[]): number {
    const share = 1 / sessions.length;
    const expected = this.states.along(
      sessions.flatMap(({ row }) => row.map(([place, factor]) => [place, factor * share] as const)),
    );
    const value = sessions.reduce((sum, session) => sum + share * session.value, 0);
    const told = sessions.reduce((sum, { variance }) => sum + share ** 2 * variance, 0);
    return this.variants.weights().reduce((far, weight, v) => {
      const own = told + share * (this.variants.variances.luck[v] ?? 0);
      const away = value - (expected.mean[v] ?? 0);
      return far + (weight * away ** 2) / ((expected.variance[v] ?? 0) + own);
    }, 0);
  }

  private take(step: Step): void {
    const before = this.begun.get(step.lift);
    this.begun.set(step.lift, step.day);
    if (before === undefined) this.begin(step.lift, step.value);
    let trusted = this.trust(step);
    if (before !== undefined && trusted.far > STRENGTH_MODEL.offAlone) {
      const { jumpOfOne, jumpsAWeek } = STRENGTH_MODEL;
      const odds = jumpsAWeek * weeksOfChance(before, step.day);
      this.variants.split([{ place: ownOf(step.lift), spread: jumpOfOne, odds }]);
      trusted = this.trust(step);
    }
    this.variants.count(this.states.learn(step.value, trusted.noise));
    const more = step.toldMore;
    if (!more) return;
    this.states.along([[TOLD, more.perToldRep]]);
    this.variants.count(this.states.learn(more.value, this.variants.alike(more.variance)));
  }

  /**
   * How far a session is trusted: a lift far from what was expected has its luck widened (a step of a
   * Student filter). Gives the noise of each variant, and how far off it is, squared, in variances,
   * where it is nearest.
   */
  private trust({ row, value, variance }: Step): { noise: Float64Array; far: number } {
    const { tails } = STRENGTH_MODEL;
    const { states } = this;
    const { luck } = this.variants.variances;
    const noise = new Float64Array(states.variants);
    const expected = states.along(row);
    let nearest = Number.POSITIVE_INFINITY;
    for (let v = 0; v < states.variants; v += 1) {
      const own = variance + (luck[v] ?? 0);
      const away = value - (expected.mean[v] ?? 0);
      const far = away ** 2 / ((expected.variance[v] ?? 0) + own);
      noise[v] = own / Math.min(1, (tails + 1) / (tails + far));
      nearest = Math.min(nearest, far);
    }
    return { noise, far: nearest };
  }

  private begin(lift: number, value: number): void {
    this.states.reset(ownOf(lift), value, this.variants.alike(STRENGTH_MODEL.levelSpread ** 2));
    this.states.add(ownOf(lift), SHARED, -1);
    if (this.baseStands) this.setBase(lift);
    const late = this.day - this.baseDay;
    if (late > 0 && late <= STRENGTH_MODEL.baseReach) this.followBack(lift, late / 7);
  }

  /** A lift seen soon after the base day had its base on that day, so many weeks ago, not now. */
  private followBack(lift: number, weeks: number): void {
    const { states, bases } = this;
    const { variances } = this.variants;
    states.add(bases + lift, SLOPE, -weeks);
    const wandered = variances.shared.map(
      (shared, v) => weeks * (shared + (variances.own[v] ?? 0)),
    );
    states.disturb(bases + lift, bases + lift, wandered);
  }

  private setBase(lift: number): void {
    this.states.copy(this.bases + lift, ownOf(lift));
    this.states.add(this.bases + lift, SHARED, 1);
  }

  private goTo(day: number): void {
    if (!this.baseStands && day >= this.baseDay) {
      this.advance(this.baseDay - this.day);
      for (const lift of this.begun.keys()) this.setBase(lift);
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
    const { states } = this;
    const { variances } = this.variants;
    const weeks = days / 7;
    const times = (list: Float64Array, factor: number) => list.map((variance) => factor * variance);
    states.add(SHARED, SLOPE, weeks);
    states.disturb(SHARED, SHARED, times(variances.shared, weeks));
    states.disturb(SHARED, SHARED, times(variances.slope, weeks ** 3 / 3));
    states.disturb(SHARED, SLOPE, times(variances.slope, weeks ** 2 / 2));
    states.disturb(SLOPE, SLOPE, times(variances.slope, weeks));
    const own = times(variances.own, weeks);
    for (const lift of this.begun.keys()) states.disturb(ownOf(lift), ownOf(lift), own);
    states.disturb(TOLD, TOLD, this.variants.alike(STRENGTH_MODEL.toldBiasAWeek ** 2 * weeks));
    const left = Math.exp(-days / STRENGTH_MODEL.formDays);
    states.scale(FORM, left);
    states.disturb(FORM, FORM, times(variances.form, 1 - left ** 2));
  }
}

/** After a long time away much may have come; three weeks of it are enough to say so. */
const weeksOfChance = (from: number, to: number): number =>
  Math.max(1, Math.min(21, to - from)) / 7;

function stepOf(
  { day, lift, track, value, variance, perToldRep, toldMore }: Observed,
  lifts: readonly string[],
  tracks: ReadonlyMap<string, number>,
): Step {
  const at = lifts.indexOf(lift);
  const row = rowOf(at, tracks.get(track), perToldRep);
  return { day, lift: at, row, value, variance, toldMore };
}

/** What a session shows: the level, what passes, how reserve is told, and what is its track's own. */
const rowOf = (lift: number, track: number | undefined, perToldRep: number): StateRow => [
  [SHARED, 1],
  [ownOf(lift), 1],
  [FORM, 1],
  [TOLD, perToldRep],
  ...(track === undefined ? [] : [[track, 1] as const]),
];

/** Tracks of a lift after its first lie apart by something of their own: the curve between reps and load is the lifter's. */
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
