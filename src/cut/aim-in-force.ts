import type { Temporal } from 'temporal-polyfill';
import type { Aim, Program } from '../program/program.ts';
import type { Decision } from '../progression/past.ts';
import { CUT_LIMITS } from './cut-limits.ts';
import { daysBetween } from './cut-start.ts';

/** A yes to one of these begins a pause: two are proposed, the last is the lifter's own wish. */
const BEGINS: ReadonlySet<string> = new Set(['pause-cut', 'pause-cut-long', 'pause-wanted']);

/** These say that no cut is meant, or none any more: it rests until the lifter takes it up again. */
const RESTS: Readonly<Record<string, Decision['answer']>> = {
  'not-a-cut': 'no',
  'weight-stands-still': 'no',
  'goal-reached': 'yes',
  'cut-ended': 'yes',
};

/** A no to the first ends a pause, a yes to the second a rest. */
const ENDS: Readonly<Record<string, Decision['answer']>> = {
  'pause-in-force': 'no',
  'cut-at-rest': 'yes',
};

/** Ended for good, and not only at rest: asked at the goal, or the lifter's own word. */
const ENDED: ReadonlySet<string> = new Set(['goal-reached', 'cut-ended']);

export const isEnd = ({ why }: Pause): boolean => ENDED.has(why);

/** Days without a cut in the midst of one; both ends included. */
export interface Pause {
  readonly from: Temporal.PlainDate;
  /** Null where it lasts until the lifter says otherwise. */
  readonly until: Temporal.PlainDate | null;
  /** Rule whose answer began it. */
  readonly why: string;
}

/** The pauses that the lifter said yes to, oldest first. One ends after two weeks, or on the lifter's word. */
export function pausesSaid(decisions: readonly Decision[]): Pause[] {
  const pauses: Pause[] = [];
  for (const { rule, answer, date } of decisions) {
    const last = pauses.at(-1);
    const open = last !== undefined && isIn(last, date) ? last : null;
    if (open && ENDS[rule] === answer) {
      pauses.pop();
      // Begun and ended on one day, it never was.
      if (daysBetween(open.from, date) > 0)
        pauses.push({ ...open, until: date.subtract({ days: 1 }) });
    } else if (RESTS[rule] === answer) {
      pauses.push({ from: date, until: null, why: rule });
    } else if (!open && BEGINS.has(rule) && answer === 'yes') {
      pauses.push({ from: date, until: date.add({ days: CUT_LIMITS.pauseDays - 1 }), why: rule });
    }
  }
  return pauses;
}

const isIn = ({ from, until }: Pause, day: Temporal.PlainDate): boolean =>
  daysBetween(from, day) >= 0 && (until === null || daysBetween(day, until) >= 0);

/** The pause that a day lies in, or null. */
export const pauseOn = (decisions: readonly Decision[], day: Temporal.PlainDate): Pause | null =>
  pausesSaid(decisions).findLast((pause) => isIn(pause, day)) ?? null;

/** The last pause that was over before a day, or null. */
export const pauseBefore = (
  decisions: readonly Decision[],
  day: Temporal.PlainDate,
): { readonly until: Temporal.PlainDate } | null => {
  const over = pausesSaid(decisions).flatMap(({ until }) =>
    until !== null && daysBetween(until, day) > 0 ? [{ until }] : [],
  );
  return over.at(-1) ?? null;
};

/** What decides which aim is trained by. */
export interface InForceQuestion {
  readonly program: Pick<Program, 'aim'>;
  /** The lifter's answer to the health question; not answered counts as no. */
  readonly weightAdvice: boolean;
  readonly decisions: readonly Decision[];
  readonly today: Temporal.PlainDate;
}

/** The program's aim, but for a cut that is paused, or that the lifter must not be led through: `maintain`. */
export function aimInForce({ program, weightAdvice, decisions, today }: InForceQuestion): Aim {
  if (program.aim !== 'cut') return program.aim;
  return weightAdvice && pauseOn(decisions, today) === null ? 'cut' : 'maintain';
}
