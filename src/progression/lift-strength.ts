import type { Temporal } from 'temporal-polyfill';
import { setSeen } from '../strength/set-seen.ts';
import {
  estimateStrength,
  type LiftEstimate,
  type SessionSeen,
  type StrengthEstimate,
} from '../strength/strength-change.ts';
import { dayNumber } from '../training/day-number.ts';
import { reserveOf } from '../training/effort.ts';
import { systemLoad } from '../training/strength.ts';
import { foreignSessions } from './bout.ts';
import { LIMITS } from './limits.ts';
import type { Past, Result } from './past.ts';

/** What the results say of one lift. */
export interface LiftStrength extends LiftEstimate {
  /** Sessions that tell, up to the day asked for. */
  readonly sessions: number;
}

/** What the results say of all lifts. */
export interface Strengths extends Pick<StrengthEstimate, 'together'> {
  readonly lifts: ReadonlyMap<string, LiftStrength>;
}

/** The same results are asked about many times in one prescription: they are filtered once. */
const KNOWN = new WeakMap<Past['results'], Map<string, Strengths>>();

/**
 * Strength of every lift on the day `on`, and its change since the day `since`, by the lift's key.
 * Results after `on`, and those from more than 28 days before `since`, are not looked at; sessions
 * that do not count are left out (first ones, returns, pain, lighter weeks, foreign ones), and so
 * are body weight lifts before the first weigh-in.
 */
export function strengthOfLifts(
  past: Past,
  since: Temporal.PlainDate,
  on: Temporal.PlainDate,
): Strengths {
  const { results, bodyMassOn } = past;
  const key = `${dayNumber(since)} ${dayNumber(on)} ${results.length} ${bodyMassOn(on)}`;
  const known = KNOWN.get(results) ?? new Map<string, Strengths>();
  KNOWN.set(results, known);
  const found = known.get(key) ?? strengthAnew(past, dayNumber(since), dayNumber(on));
  known.set(key, found);
  return found;
}

/** Sessions that tell about strength: not the first ones, not after a layoff, none with pain. */
export function tells({ exercise, pain, lighter }: Result): boolean {
  return exercise.move !== 'start' && exercise.move !== 'return' && !pain && !lighter;
}

function strengthAnew(past: Past, since: number, on: number): Strengths {
  const foreign = foreignSessions(past);
  const lifts = new Map<string, SessionSeen[]>();
  for (const result of past.results) {
    const day = dayNumber(result.date);
    if (day > on || day < since - LIMITS.strengthDaysBefore) continue;
    if (!tells(result) || foreign.has(result.session)) continue;
    const session = sessionSeen(result, day, past.bodyMassOn);
    if (!session) continue;
    const { lift } = result.exercise;
    const of = lifts.get(lift);
    if (of) of.push(session);
    else lifts.set(lift, [session]);
  }
  const { lifts: estimates, together } = estimateStrength(lifts, since, on);
  return {
    together,
    lifts: new Map(
      [...estimates].map(([lift, estimate]) => [
        lift,
        { ...estimate, sessions: lifts.get(lift)?.length ?? 0 },
      ]),
    ),
  };
}

/** One session as the estimate sees it: straight sets, of a cluster the lead. Null where no set tells. */
function sessionSeen(
  { exercise, sets, date }: Result,
  day: number,
  bodyMassOn: Past['bodyMassOn'],
): SessionSeen | null {
  const work = exercise.style === 'cluster' ? sets.slice(0, 1) : sets;
  const seen = work.flatMap(({ load, count, reserve: entered }, place) => {
    const lifted =
      exercise.loading === 'bodyweight'
        ? systemLoad(load, bodyMassOn(date), exercise.bodyShare ?? 1)
        : load;
    if (lifted === null) return [];
    const timed = exercise.counts === 'seconds';
    const { reserve, assumed } = reserveOf(timed ? 0 : entered, exercise.reserve);
    const reps = timed ? count / LIMITS.secondsPerRep : count;
    const set = setSeen({ lifted, reps, reserve, assumed, place });
    return set ? [set] : [];
  });
  return seen.length === 0 ? null : { day, track: exercise.track, sets: seen };
}
