import { Temporal } from 'temporal-polyfill';
import type { DatedMass } from '../journal/daily-mass.ts';
import type { Exercise, Program } from '../program/program.ts';
import { boutsOf } from '../progression/bout.ts';
import { lighterWeekOf } from '../progression/lighter-week.ts';
import type { Past } from '../progression/past.ts';
import { compoundsOf, type Slip, slipOf, slipTogether } from '../progression/slipping.ts';
import { trackOf } from '../progression/track.ts';
import { aimInForce, type Pause, pauseBefore, pauseOn } from './aim-in-force.ts';
import { CUT_LIMITS } from './cut-limits.ts';
import { cutStart, daysBetween } from './cut-start.ts';
import { type Kept, keptByLift, keptTogether, type LiftKept } from './kept.ts';
import { type CutPlan, planOf } from './plan.ts';
import { type JudgedRate, judgeRate, type RateOfLoss, rateQuestion } from './rate-of-loss.ts';
import { type JudgedWork, judgedWork } from './work-done.ts';

/** What a weekly review is made from. */
export interface ReviewQuestion {
  readonly program: Program;
  readonly past: Past;
  readonly weighIns: readonly DatedMass[];
  readonly today: Temporal.PlainDate;
  /** The lifter's answer to the health questions: without it, nothing is said about losing weight. */
  readonly weightAdvice: boolean;
}

/** One exercise of the program and how it goes. */
export interface Watched {
  readonly exercise: Exercise;
  readonly day: string;
  /** Position in its day, from 0. */
  readonly index: number;
  readonly track: string;
  /** Null where it does not slip. */
  readonly slip: Slip | null;
}

/** Everything that the rules of the weekly review look at. */
export interface Evidence {
  /** With the aim that is in force. */
  readonly program: Program;
  /** The results that can still matter, with all sessions and decisions. */
  readonly past: Past;
  readonly today: Temporal.PlainDate;
  /** Null outside a cut, and where none may be led. */
  readonly cutFrom: Temporal.PlainDate | null;
  /** What strength is compared with; the cut's first day, also for who is led through none. */
  readonly keptFrom: Temporal.PlainDate | null;
  readonly weightAdvice: boolean;
  /** The cut is at rest; null where it goes on. */
  readonly pause: Pause | null;
  /** First day of the lighter week in force, in which nothing about sets is judged; else null. */
  readonly lighterWeek: Temporal.PlainDate | null;
  /** Null outside a cut, in a pause, and where nothing may be said about losing weight. */
  readonly rate: JudgedRate | null;
  readonly lifts: readonly LiftKept[];
  /** Where the cut leads; null without a goal ahead, and where none may be led. */
  readonly plan: CutPlan | null;
  /** Of the compound lifts together; null while none is known. */
  readonly kept: Kept | null;
  /** Are the compound lifts together slipping, whatever each of them tells? */
  readonly together: Slip | null;
  readonly work: JudgedWork;
  readonly exercises: readonly Watched[];
  /** Days from the first session to today, both counted; 0 before it. */
  readonly daysTrained: number;
}

/** Looks at the past once, for all rules. */
export function evidenceOf(question: ReviewQuestion): Evidence {
  const { today, weightAdvice } = question;
  const { decisions } = question.past;
  const program = { ...question.program, aim: aimInForce({ ...question, decisions }) };
  // A paused cut is a cut all the same; one that must not be led is none.
  const keptFrom = cutStart(question.program, sessionsOf(question), today);
  const cutFrom = weightAdvice ? keptFrom : null;
  const pause = weightAdvice && question.program.aim === 'cut' ? pauseOn(decisions, today) : null;
  const rate = cutFrom && !pause ? judgeRate(rateQuestion(question, cutFrom), program.rate) : null;
  const past = recent(question.past, today, keptFrom);
  const lifts = keptFrom ? keptByLift(past, keptFrom, today) : [];
  const first = question.past.sessions.find(({ setsDone }) => setsDone > 0)?.date;
  return {
    program,
    past,
    today,
    cutFrom,
    keptFrom,
    weightAdvice,
    pause,
    lighterWeek: lighterWeekOf(past, today),
    rate,
    plan: planAhead(question, cutFrom, pause, rate?.now ?? null),
    lifts,
    kept: keptFrom && keptTogether(past, keptFrom, today),
    together: slipTogether(past, compoundsOf(program), today),
    work: judgedWork(past, question.past.sessions, today, program.daysPerWeek),
    exercises: watched(program, past, today),
    daysTrained: first ? daysBetween(first, today) + 1 : 0,
  };
}

function planAhead(
  { program, past, today }: ReviewQuestion,
  cutFrom: Temporal.PlainDate | null,
  pause: Pause | null,
  rate: RateOfLoss | null,
): CutPlan | null {
  const now = past.bodyMassOn(today);
  if (!cutFrom || now === null || (pause && pause.until === null)) return null;
  const before = pauseBefore(past.decisions, today)?.until.add({ days: 1 });
  const since = before && daysBetween(cutFrom, before) > 0 ? before : cutFrom;
  return planOf({ program, today, now, rate, pause, since });
}

/** Strength kept is told to everyone: of who is led through no cut, every session is one that keeps. */
const sessionsOf = ({ past, weightAdvice }: ReviewQuestion): Past['sessions'] =>
  weightAdvice ? past.sessions : past.sessions.map((session) => ({ ...session, aim: 'cut' }));

/** Years of results do not matter to this week: those of the cut and of the last 120 days do. */
function recent(past: Past, today: Temporal.PlainDate, cutFrom: Temporal.PlainDate | null): Past {
  const lately = today.subtract({ days: 120 });
  const before = cutFrom?.subtract({ days: CUT_LIMITS.daysBefore });
  const from = before && Temporal.PlainDate.compare(before, lately) < 0 ? before : lately;
  return {
    ...past,
    results: past.results.filter(
      ({ date }) =>
        Temporal.PlainDate.compare(date, from) >= 0 && Temporal.PlainDate.compare(date, today) <= 0,
    ),
  };
}

function watched(program: Program, past: Past, today: Temporal.PlainDate): Watched[] {
  const slips = new Map<string, Slip | null>();
  return program.days.flatMap((day) =>
    day.exercises.map((exercise, index) => {
      const track = trackOf(exercise);
      if (!slips.has(track)) slips.set(track, presentSlip(past, track, today));
      return { exercise, day: day.name, index, track, slip: slips.get(track) ?? null };
    }),
  );
}

/** A track that was left for four weeks does not slip any more. */
function presentSlip(past: Past, track: string, today: Temporal.PlainDate): Slip | null {
  const last = boutsOf(past, track).at(-1)?.result;
  if (!last || daysBetween(last.date, today) >= CUT_LIMITS.presentDays) return null;
  return slipOf(past, last.exercise.lift, today);
}
