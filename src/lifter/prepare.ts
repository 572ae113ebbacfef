import { aimInForce, pauseOn } from '../cut/aim-in-force.ts';
import { reviewReason } from '../cut/cut-rules.ts';
import { heldInNumbers } from '../cut/held-in-numbers.ts';
import { aboutPause } from '../cut/judge-in-force.ts';
import { relaidWeek } from '../cut/relaid-week.ts';
import { weekLack } from '../cut/week-lack.ts';
import { type History, type OpenSession, openSessionOf } from '../journal/history.ts';
import type { Day, Program } from '../program/program.ts';
import { dueDay, leftOfDay } from '../progression/due-day.ts';
import { isFromTable } from '../progression/own-table.ts';
import type { Circumstances, Past } from '../progression/past.ts';
import { plannedSeconds } from '../progression/planned-seconds.ts';
import { prescribe } from '../progression/prescribe.ts';
import type { Prescription } from '../progression/prescription.ts';
import { restAdvice } from '../progression/rest-advice.ts';
import { shortDay } from '../progression/short-day.ts';
import { dateOf, localDate, setsAskedIn, setsCountedIn } from '../session/results.ts';
import type { SessionState } from '../session/state.ts';
import { dayWords, shortDayWords } from '../text/day-words.ts';
import { nearestKey } from '../text/nearest.ts';
import { problemText, Refusal } from '../text/problem.ts';
import type { Reason } from '../training/rule.ts';
import { ownPace } from '../training/set-clock.ts';
import { kitNow } from './kits.ts';
import type { Lifter } from './open-lifter.ts';

/**
 * What today asks for: the session that is open, else the day named, else the day that is due, cut
 * to the minutes there are.
 * @throws Refusal when the program has no day of that name, or cannot be read.
 */
export function todayOf(
  lifter: Lifter,
  dayName: string | null,
  within: number | null = null,
): Today {
  const history = lifter.journal().history();
  const open = openSessionOf(history);
  if (open) {
    const { prescription } = open.state;
    return {
      state: 'open',
      session: open.session,
      elsewhere: open.own ? null : { device: open.device, since: sinceWords(open, lifter) },
      prescription,
      minutes: sessionMinutes(prescription, history),
      within: prescription.short?.minutes ?? null,
      kit: lifter.kitToday(),
      days: [prescription.day],
      troubles: [],
    };
  }
  const program = programInForce(lifter);
  const prescription = prescriptionFor(lifter, program, dayName, within);
  const date = lifter.today();
  return {
    state: history.lately.sessions.some((done) => done.setsDone > 0 && done.date.equals(date))
      ? 'done-today'
      : 'due',
    session: null,
    elsewhere: null,
    prescription,
    minutes: sessionMinutes(prescription, history),
    within,
    kit: lifter.kitToday(),
    days: program.days.map(({ name }) => name),
    troubles: goneWords(lifter),
  };
}

/** Which session is open, and how far it has come: `Day A, begun Wed 25 Nov: 2 of 7 sets done.` */
export function openWords(session: SessionState): string {
  const { prescription } = session;
  const begun = shortDayWords(dateOf(session).toString());
  const done = `${setsCountedIn(session)} of ${setsAskedIn(session)} sets done`;
  return `Day ${prescription.day}, begun ${begun}: ${done}.`;
}

/**
 * A session that is open goes on as it was begun.
 * @throws Refusal where another day, or other gear, is asked for meanwhile
 */
export function refuseBesideOpen(
  lifter: Pick<Lifter, 'journal' | 'today'>,
  asked: { readonly day: string | null; readonly kit: string | null },
): void {
  const history = lifter.journal().history();
  const open = openSessionOf(history);
  if (!open) return;
  const isOther = (name: string | null, now: string | null) =>
    name !== null && name.trim().toLowerCase() !== now?.toLowerCase();
  if (isOther(asked.day, open.state.prescription.day)) {
    throw new Refusal({
      what: `Another session is open. ${openWords(open.state)}`,
      fix: `"holdfast" goes on with it; close it there before day ${asked.day}.`,
    });
  }
  if (isOther(asked.kit, kitNow(history, lifter.today()))) {
    throw new Refusal({
      what: `A session is open. ${openWords(open.state)} It goes on with the gear that it was begun with.`,
      fix: '"holdfast" goes on with it; l in the list behind x takes another lift there.',
    });
  }
}

function goneWords(lifter: Lifter): readonly string[] {
  const gone = lifter.programGone();
  return gone ? [problemText(gone)] : [];
}

/** `17:40`, and the day before it where that is not today. */
function sinceWords({ state }: OpenSession, lifter: Lifter): string {
  const { openedAt, zone } = state;
  const at = new Date(openedAt.wall + zone * 60_000).toISOString().slice(11, 16);
  const day = localDate(openedAt.wall, zone);
  return day.equals(lifter.today()) ? at : `${dayWords(day)}, ${at}`;
}

function prescriptionFor(
  lifter: Lifter,
  program: Program,
  dayName: string | null,
  within: number | null,
): Prescription {
  const history = lifter.journal().history();
  const { lately } = history;
  const circumstances = lifter.circumstances();
  const { today, gear } = circumstances;
  const prescribed = (day: Day) => prescribedDay(program, day, lately, circumstances);
  const fitted = (whole: Prescription): Prescription => {
    if (within === null) return whole;
    const lacks = weekLack(program, lately, today);
    return shortDay(whole, { minutes: within, pace: paceOf(history), gear, lacks });
  };
  const due = dueDay(program, lately, today);
  const week = due.begun ? null : relaidWeek(program, lately, today);
  if (dayName === null && week) {
    const { rest } = restAdvice(lately, week.day, today);
    const first = [week.why, ...(rest ? [rest] : []), ...aboutAim(lifter)];
    return told(fitted(prescribed(week.day)), first);
  }
  const named = dayName === null ? due.day : dayNamed(program, dayName);
  const about = aboutAim(lifter);
  if (named !== due.day) return told(fitted(prescribed(named)), about);
  const prescription = prescribed(due.day);
  const { begun } = due;
  const left = fitted(begun ? leftOfDay(prescription, begun) : prescription);
  return told(left, [...[due.rest, due.renamed].filter((each) => each !== null), ...about]);
}

/** A day as progression has it, with what the review tells of lifts that hold. */
export function prescribedDay(
  program: Program,
  day: Day,
  past: Past,
  circumstances: Circumstances,
): Prescription {
  const whole = prescribe(program, day, past, circumstances);
  const exercises = heldInNumbers(whole.exercises, program, past, circumstances.today);
  return { ...whole, exercises };
}

const told = (prescription: Prescription, first: readonly Reason[]): Prescription =>
  first.length > 0
    ? { ...prescription, warnings: [...first, ...prescription.warnings] }
    : prescription;

function dayNamed({ days, name: program }: Program, name: string): Day {
  const found = days.find((day) => day.name.toLowerCase() === name.toLowerCase());
  if (found) return found;
  const names = days.map((day) => day.name);
  const near = nearestKey(name, names);
  throw new Refusal({
    what: `"${program}" has no day "${name}".`,
    fix: near ? `Did you mean "${near}"?` : `Its days: ${names.join(', ')}.`,
  });
}

/** Minutes that a prescription takes: by the clock of sets, then at the lifter's own pace. */
function sessionMinutes(prescription: Prescription, history: Pick<History, 'latest'>): number {
  return Math.round(plannedSeconds(prescription, paceOf(history)) / 60);
}

/**
 * The lifter's own pace. Only sessions that were finished tell how long a plan takes, and those of a table
 * had none.
 */
export function paceOf({ latest }: Pick<History, 'latest'>): number {
  return ownPace(
    latest
      .filter(({ done, planned }) => done.how === 'closed' && !planned.exercises.some(isFromTable))
      .map(({ done, planned }) => ({
        planned: plannedSeconds(planned, 1),
        took: (done.end - done.start) / 1000,
      })),
  );
}

/** The session of a day, before it is begun. */
export interface Today {
  /** `open`: a session was begun and not closed; it goes on from its own copy. */
  readonly state: 'due' | 'open' | 'done-today';
  /** Id of the open session; null where none is open. */
  readonly session: string | null;
  /** Of an open session that another device went on with last: on which, since when. */
  readonly elsewhere: { readonly device: string; readonly since: string } | null;
  readonly prescription: Prescription;
  /** Minutes that the session is expected to take. */
  readonly minutes: number;
  /** Minutes that there are, where the lifter said so; also where the whole day fits into them. */
  readonly within: number | null;
  /** Gear of another place that is trained with; null: what is owned. */
  readonly kit: string | null;
  /** Names of the program's days, in its order. */
  readonly days: readonly string[];
  /** What is wrong with the program's place, one sentence each; none where all is well. */
  readonly troubles: readonly string[];
}

type Of = Pick<Lifter, 'program' | 'settings' | 'journal' | 'today'>;

/**
 * The program as it is trained by today: a cut that is paused, or that the lifter must not be led
 * through, is maintained.
 * @throws Refusal with everything that is wrong with the file.
 */
export function programInForce(lifter: Of): Program {
  const program = lifter.program();
  return { ...program, aim: aimInForce(questionOf(lifter, program)) };
}

/** Why a cut is not trained as one, where the lifter should know; empty otherwise. */
export function aboutAim(lifter: Of): Reason[] {
  const program = lifter.program();
  if (program.aim !== 'cut') return [];
  const { weightAdvice } = lifter.settings().settings;
  if (weightAdvice === 'ask') return [reviewReason('cut-not-answered')];
  const { decisions, today } = questionOf(lifter, program);
  const pause = weightAdvice === 'yes' ? pauseOn(decisions, today) : null;
  return pause ? [aboutPause(pause)] : [];
}

const questionOf = (lifter: Of, program: Program) => ({
  program,
  weightAdvice: lifter.settings().settings.weightAdvice === 'yes',
  decisions: lifter.journal().history().decisions,
  today: lifter.today(),
});
