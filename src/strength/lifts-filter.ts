import { GaussianStates, type Outlook, type StateRow } from '../training/gaussian-states.ts';
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

/** A quantity with its error, in logarithms: `mean` 0 of a change is none, −0.02 two percent less. */
export interface Estimated {
  readonly mean: number;
  /** Standard deviation. */
  readonly error: number;
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

/** What of each setting does not change: variances. */
interface Variances {
  readonly shared: Float64Array;
  readonly own: Float64Array;
  readonly slope: Float64Array;
  readonly form: Float64Array;
  readonly luck: Float64Array;
}

/**
 * Filters the sessions of a lifter's lifts together, under every setting of the model side by side.
 * Sessions are taken in order of day. Settings that the results have made a hundred times less
 * likely than the best are not carried on: they only cost time.
 */
export class LiftsFilter {
  private readonly states: GaussianStates;
  private readonly lifts: readonly string[];
  private readonly tracks: ReadonlyMap<string, number>;
  private readonly steps: readonly Step[];
  private readonly begun = new Set<number>();
  private readonly baseDay: number;
  private variances: Variances;
  private logLikelihood: Float64Array;
  /** Of each lift and setting: so many of its sessions running were far from what was expected; negative: under it. */
  private astray: Int8Array;
  private noise: Float64Array;
  private baseStands = false;
  private taken = 0;
  private day: number;
  /** Where the bases begin. */
  private readonly bases: number;

  constructor(sessions: readonly Observed[], settings: readonly Setting[], baseDay: number) {
    this.baseDay = baseDay;
    this.lifts = [...new Set(sessions.map(({ lift }) => lift))];
    const tracks = tracksApart(sessions, ownOf(this.lifts.length));
    this.tracks = tracks;
    this.steps = sessions.map((session) => stepOf(session, this.lifts, tracks));
    this.variances = variancesOf(settings);
    this.noise = new Float64Array(settings.length);
    this.logLikelihood = new Float64Array(settings.length);
    this.astray = new Int8Array(this.lifts.length * settings.length);
    this.bases = ownOf(this.lifts.length) + tracks.size;
    this.states = new GaussianStates(this.bases + this.lifts.length, settings.length);
    this.day = sessions[0]?.day ?? 0;
    const { slopeSpread, trackSpread, toldBias } = STRENGTH_MODEL;
    this.states.reset(SLOPE, 0, this.alike(slopeSpread ** 2));
    this.states.reset(SHARED, 0, this.alike(0));
    this.states.reset(FORM, 0, this.variances.form);
    this.states.reset(TOLD, 0, this.alike(toldBias ** 2));
    for (const place of tracks.values()) this.states.reset(place, 0, this.alike(trackSpread ** 2));
  }

  /** What the sessions up to the day `until` say of it. Days are asked for in their order. */
  at(until: number): Filtered {
    for (let next = this.steps[this.taken]; next && next.day <= until; ) {
      this.take(next);
      this.taken += 1;
      if (this.taken % SESSIONS_BETWEEN_SIEVES === 0) this.sieve();
      next = this.steps[this.taken];
    }
    this.goTo(until);
    return this.told();
  }

  private told(): Filtered {
    const { lifts, states, bases } = this;
    const weights = weightsOf(this.logLikelihood);
    const along = (row: StateRow): Estimated => mixed(states.along(row), weights);
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
        return mixed(states.along(row), weights, this.variances.luck);
      },
    };
  }

  private take(step: Step): void {
    this.goTo(step.day);
    this.begin(step.lift, step.value);
    this.trust(step);
    this.count(this.states.learn(step.value, this.noise));
    const more = step.toldMore;
    if (!more) return;
    this.states.along([[TOLD, more.perToldRep]]);
    this.count(this.states.learn(more.value, this.alike(more.variance)));
  }

  private count(density: Float64Array): void {
    for (let v = 0; v < density.length; v += 1)
      this.logLikelihood[v] = (this.logLikelihood[v] ?? 0) + (density[v] ?? 0);
  }

  /**
   * How far a session is trusted: a day far from what was expected has its luck widened (a step of
   * a Student filter). Three running are no bad days any more: the lift itself has made a step.
   */
  private trust({ lift, row, value, variance }: Step): void {
    const { tails, astray, astrayRunning, step } = STRENGTH_MODEL;
    const { states, noise, variances } = this;
    const { variants } = states;
    const expected = states.along(row);
    let steps: Float64Array | null = null;
    for (let v = 0; v < variants; v += 1) {
      const own = variance + (variances.luck[v] ?? 0);
      const away = value - (expected.mean[v] ?? 0);
      const far = away ** 2 / ((expected.variance[v] ?? 0) + own);
      const side = far > astray ? Math.sign(away) : 0;
      const running = this.astray[lift * variants + v] ?? 0;
      const now = side * running > 0 ? running + side : side;
      this.astray[lift * variants + v] = now;
      if (Math.abs(now) < astrayRunning) {
        noise[v] = own / Math.min(1, (tails + 1) / (tails + far));
      } else {
        noise[v] = own;
        steps ??= new Float64Array(variants);
        steps[v] = step ** 2;
      }
    }
    if (!steps) return;
    states.disturb(ownOf(lift), ownOf(lift), steps);
    states.along(row);
  }

  private begin(lift: number, value: number): void {
    if (this.begun.has(lift)) return;
    this.begun.add(lift);
    this.states.reset(ownOf(lift), value, this.alike(STRENGTH_MODEL.levelSpread ** 2));
    this.states.add(ownOf(lift), SHARED, -1);
    if (this.baseStands) this.setBase(lift);
  }

  private setBase(lift: number): void {
    this.states.copy(this.bases + lift, ownOf(lift));
    this.states.add(this.bases + lift, SHARED, 1);
  }

  private goTo(day: number): void {
    if (!this.baseStands && day >= this.baseDay) {
      this.advance(this.baseDay - this.day);
      for (const lift of this.begun) this.setBase(lift);
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
    const { states, variances } = this;
    const weeks = days / 7;
    const times = (list: Float64Array, factor: number) => list.map((variance) => factor * variance);
    states.add(SHARED, SLOPE, weeks);
    states.disturb(SHARED, SHARED, times(variances.shared, weeks));
    states.disturb(SHARED, SHARED, times(variances.slope, weeks ** 3 / 3));
    states.disturb(SHARED, SLOPE, times(variances.slope, weeks ** 2 / 2));
    states.disturb(SLOPE, SLOPE, times(variances.slope, weeks));
    const own = times(variances.own, weeks);
    for (const lift of this.begun) states.disturb(ownOf(lift), ownOf(lift), own);
    states.disturb(TOLD, TOLD, this.alike(STRENGTH_MODEL.toldBiasAWeek ** 2 * weeks));
    const left = Math.exp(-days / STRENGTH_MODEL.formDays);
    states.scale(FORM, left);
    states.disturb(FORM, FORM, times(variances.form, 1 - left ** 2));
  }

  private sieve(): void {
    const { variants } = this.states;
    const least = Math.max(...this.logLikelihood) - Math.log(100);
    const kept = Array.from({ length: variants }, (_, v) => v).filter(
      (v) => (this.logLikelihood[v] ?? 0) > least,
    );
    if (kept.length === variants) return;
    const of = (list: Float64Array) => Float64Array.from(kept, (v) => list[v] ?? 0);
    this.states.keep(kept);
    this.logLikelihood = of(this.logLikelihood);
    this.noise = of(this.noise);
    const { shared, own, slope, form, luck } = this.variances;
    this.variances = {
      shared: of(shared),
      own: of(own),
      slope: of(slope),
      form: of(form),
      luck: of(luck),
    };
    this.astray = Int8Array.from(
      this.lifts.flatMap((_, lift) => kept.map((v) => this.astray[lift * variants + v] ?? 0)),
    );
  }

  private alike(variance: number): Float64Array {
    return new Float64Array(this.states.variants).fill(variance);
  }
}

const SESSIONS_BETWEEN_SIEVES = 12;

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

function variancesOf(settings: readonly Setting[]): Variances {
  const of = (spread: (setting: Setting) => number) =>
    Float64Array.from(settings, (setting) => spread(setting) ** 2);
  return {
    shared: of(({ shared }) => shared),
    own: of(({ own }) => own),
    slope: of(({ slope }) => slope),
    form: of(({ form }) => form),
    luck: of(({ luck }) => luck),
  };
}

function weightsOf(logLikelihood: Float64Array): Float64Array {
  const best = Math.max(...logLikelihood);
  const weights = logLikelihood.map((each) => Math.exp(each - best));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  return weights.map((weight) => weight / total);
}

/** Mean and standard deviation of a mixture, each part with `more` variance. */
function mixed({ mean, variance }: Outlook, weights: Float64Array, more?: Float64Array): Estimated {
  let [centre, spread] = [0, 0];
  weights.forEach((weight, v) => {
    centre += weight * (mean[v] ?? 0);
  });
  weights.forEach((weight, v) => {
    const own = Math.max(0, variance[v] ?? 0) + (more?.[v] ?? 0);
    spread += weight * (own + ((mean[v] ?? 0) - centre) ** 2);
  });
  return { mean: centre, error: Math.sqrt(spread) };
}
