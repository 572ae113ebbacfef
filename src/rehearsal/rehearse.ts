import { Temporal } from 'temporal-polyfill';
import { weekLack } from '../cut/week-lack.ts';
import type { DatedMass } from '../journal/daily-mass.ts';
import type { Program } from '../program/program.ts';
import { dueDay } from '../progression/due-day.ts';
import { LIGHTER_WEEK } from '../progression/lighter-week.ts';
import type { Decision, Past, Result, SessionDone } from '../progression/past.ts';
import { plannedSeconds } from '../progression/planned-seconds.ts';
import { prescribe } from '../progression/prescribe.ts';
import type { Prescription } from '../progression/prescription.ts';
import { shortDay } from '../progression/short-day.ts';
import type { SessionEvent } from '../session/events.ts';
import { resultsOf, sessionDoneOf } from '../session/results.ts';
import type { SessionState } from '../session/state.ts';
import type { Gear } from '../training/gear.ts';
import type { Shares } from '../training/lift.ts';
import type { Mass } from '../training/mass.ts';
import { ownPace } from '../training/set-clock.ts';
import { firstStrengths } from './first-strength.ts';
import { LIFTER_MODEL, type LifterModel } from './lifter-model.ts';
import { playSession } from './play-session.ts';
import { type SeededRandom, seededRandom } from './seeded-random.ts';
import {
  afterSession,
  newLifter,
  nextMorning,
  type SimulatedLifter,
  strengthShare,
  trueStrength,
} from './simulated-lifter.ts';
import { type BodyMassCourse, weighInCourse } from './weigh-ins.ts';

export interface RehearsalOptions {
  /** First day; sessions fall on the same days of every seven from it. */
  readonly from: Temporal.PlainDate;
  readonly weeks: number;
  /** % of body weight lost a week; 0 or less: none. */
  readonly loss: number;
  /** The same seed gives the same rehearsal. */
  readonly seed: number;
  readonly gear: Gear;
  readonly bodyMass: Mass;
  readonly model?: LifterModel;
  /** Strength of lifts where it is known: micrograms lifted once, or seconds held; by the lift's key. */
  readonly strengths?: ReadonlyMap<string, number>;
  /** What was trained before the first day; the rehearsal goes on from it. */
  readonly before?: Past;
  /** Days, counted from the first, on which nothing is trained: from the one to before the other. */
  readonly away?: readonly (readonly [from: number, before: number])[];
  /** Minutes that there are for each session; whole days where left out. */
  readonly minutes?: number;
  /** Minutes that local time is ahead of UTC. */
  readonly zone?: number;
}

/** A session of a rehearsal, with what the lifter could truly do on its day. */
export interface RehearsedSession {
  readonly date: Temporal.PlainDate;
  readonly events: readonly SessionEvent[];
  readonly state: SessionState;
  readonly done: SessionDone;
  readonly results: readonly Result[];
  /** True strength before the session of each lift in it: micrograms lifted once, or seconds held. */
  readonly able: ReadonlyMap<string, number>;
  readonly bodyMass: Mass;
}

export interface Rehearsal {
  readonly sessions: readonly RehearsedSession[];
  readonly past: Past;
  readonly weighIns: readonly DatedMass[];
  /** For each day: true strength ÷ that at the start, of every lift of the program. */
  readonly kept: readonly ReadonlyMap<string, number>[];
}

/** Days of the week with a session, by sessions a week: spread as far as they go. */
const TRAINING_DAYS: Readonly<Record<number, readonly number[]>> = {
  1: [0],
  2: [0, 3],
  3: [0, 2, 4],
  4: [0, 1, 3, 4],
  5: [0, 1, 2, 4, 5],
  6: [0, 1, 2, 3, 4, 5],
  7: [0, 1, 2, 3, 4, 5, 6],
};

/** Time of day at which the lifter trains. */
const STARTS = { hour: 17, minute: 30 } as const;

const DEVICE = 'rehearsal';

/**
 * Plays a program forward, day by day, with a simulated lifter, through the same progression and
 * the same sessions as a real lifter's. The same program and options always give the same.
 */
export function rehearse(program: Program, options: RehearsalOptions): Rehearsal {
  const { from, weeks, loss, seed, gear, bodyMass, model = LIFTER_MODEL } = options;
  const random = seededRandom(seed);
  const body = weighInCourse({ from, days: weeks * 7, start: bodyMass, loss }, model, random);
  const past = pastFrom(options, body);
  const lifts = liftsOf(program);
  const sessions: RehearsedSession[] = [];
  const kept: ReadonlyMap<string, number>[] = [];
  let lifter = newLifter(model, firstStrengths(program, bodyMass, options.strengths ?? new Map()));
  for (let day = 0; day < weeks * 7; day += 1) {
    if (day > 0) lifter = nextMorning(lifter, loss);
    kept.push(new Map(lifts.map(([key, trains]) => [key, strengthShare(lifter, trains)])));
    if (!trainsOn(day, program.daysPerWeek, options.away ?? [])) continue;
    const date = from.add({ days: day });
    const pace = ownPace(sessions.slice(-LATEST).map(paceSample));
    const session = play(program, past, { date, lifter, gear, body, random, options, pace });
    past.results.push(...session.results);
    past.sessions.push(session.done);
    sessions.push(session);
    lifter = afterSession(lifter, session.results);
  }
  return { sessions, past, weighIns: body.weighIns, kept };
}

/** So many of the latest sessions tell the pace, as they do in training. */
const LATEST = 20;

const paceSample = ({ state, done }: RehearsedSession) => ({
  planned: plannedSeconds(state.prescription, 1),
  took: (done.end - done.start) / 1000,
});

interface GrowingPast extends Past {
  readonly results: Result[];
  readonly sessions: SessionDone[];
  readonly decisions: Decision[];
}

function pastFrom({ from, before }: RehearsalOptions, body: BodyMassCourse): GrowingPast {
  return {
    results: [...(before?.results ?? [])],
    sessions: [...(before?.sessions ?? [])],
    decisions: [...(before?.decisions ?? [])],
    bodyMassOn: (date) =>
      before && Temporal.PlainDate.compare(date, from) < 0
        ? before.bodyMassOn(date)
        : body.trendOn(date),
  };
}

const liftsOf = (program: Program): readonly (readonly [string, Shares])[] =>
  program.days.flatMap(({ exercises }) =>
    exercises.map(({ lift }) => [lift.key, lift.trains] as const),
  );

function trainsOn(
  day: number,
  daysPerWeek: number,
  away: NonNullable<RehearsalOptions['away']>,
): boolean {
  const days = TRAINING_DAYS[Math.max(1, Math.min(7, daysPerWeek))] ?? [];
  return days.includes(day % 7) && !away.some(([start, before]) => day >= start && day < before);
}

interface Evening {
  readonly date: Temporal.PlainDate;
  readonly lifter: SimulatedLifter;
  readonly gear: Gear;
  readonly body: BodyMassCourse;
  readonly random: SeededRandom;
  readonly options: RehearsalOptions;
  /** What a session takes against what was planned, by the sessions so far. */
  readonly pace: number;
}

function play(program: Program, past: GrowingPast, evening: Evening): RehearsedSession {
  const { date, lifter, gear, body, random, options, pace } = evening;
  const { zone = 0 } = options;
  const wall = date.toZonedDateTime({ timeZone: 'UTC', plainTime: STARTS }).epochMilliseconds;
  const startsAt = { wall: wall - zone * 60_000, up: null, boot: null };
  const { day } = dueDay(program, past, date);
  const circumstances = { today: date, gear };
  const prescribed = (): Prescription => {
    const whole = prescribe(program, day, past, circumstances);
    if (options.minutes === undefined) return whole;
    const lacks = weekLack(program, past, date);
    return shortDay(whole, { minutes: options.minutes, pace, gear, lacks });
  };
  let prescription = prescribed();
  if (prescription.warnings.some(({ rule }) => rule === LIGHTER_WEEK)) {
    past.decisions.push({
      rule: LIGHTER_WEEK,
      answer: 'yes',
      subject: null,
      at: startsAt.wall,
      date,
    });
    prescription = prescribed();
  }
  const trueBodyMass = body.trueOn(date);
  const { events, state } = playSession({
    session: `${DEVICE}-${date.toString()}`,
    device: DEVICE,
    prescription,
    lifter,
    gear,
    bodyMass: body.trendOn(date),
    trueBodyMass,
    startsAt,
    zone,
    random,
  });
  const able = new Map(
    prescription.exercises.map((each) => [each.lift, trueStrength(lifter, each)]),
  );
  return {
    date,
    events,
    state,
    done: sessionDoneOf(state),
    results: resultsOf(state),
    able,
    bodyMass: trueBodyMass,
  };
}
