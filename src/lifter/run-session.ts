import { weekLack } from '../cut/week-lack.ts';
import type { SessionWriter } from '../journal/disk/journal.ts';
import { type History, openSessionOf } from '../journal/history.ts';
import type { Program } from '../program/program.ts';
import type { Circumstances } from '../progression/past.ts';
import { plannedSeconds } from '../progression/planned-seconds.ts';
import type { PrescribedExercise, Prescription } from '../progression/prescription.ts';
import { shortDay } from '../progression/short-day.ts';
import { apply } from '../session/apply.ts';
import type { SessionCommand } from '../session/command.ts';
import { decide } from '../session/decide.ts';
import { isCluster, isOver, plannedSets, setsAskedOf } from '../session/next-set.ts';
import { pairedIn } from '../session/pairs.ts';
import { stageNow } from '../session/stage-now.ts';
import type { ExerciseState, SessionState } from '../session/state.ts';
import { orProblem, type Problem, Refusal } from '../text/problem.ts';
import { elapsedMs, type Reading } from '../training/reading.ts';
import type { Lifter } from './open-lifter.ts';
import type { KeepSettings } from './ports.ts';
import { paceOf, todayOf } from './prepare.ts';
import { rememberedProgram, toRemember } from './program-choice.ts';
import { findingsOf } from './rules.ts';

/** A session whose commands are decided, written to disk, and only then believed. */
export function runSession(
  writer: Pick<SessionWriter, 'state' | 'write'>,
  now: () => Reading,
): LiveSession {
  return {
    state: writer.state,
    now,
    send: (command) => {
      const at = now();
      const decided = decide(writer.state(), command, at);
      if (!decided.ok) return decided.problem;
      return orProblem(() => {
        writer.write(decided.facts, at);
        return null;
      });
    },
  };
}

/**
 * Why a session that runs here goes on here no more: another device took it over, or ended it. Null where
 * none did. Two that go on with one session would each save its next set.
 */
export function goesOnElsewhere(
  { session, stage }: SessionState,
  { open, latest }: Pick<History, 'open' | 'latest'>,
): Problem | null {
  if (stage.kind === 'closed') return null;
  const found = open.find((each) => each.session === session);
  if (found && !found.own)
    return {
      what: `${found.device} goes on with this session.`,
      fix: 'Nothing is saved here any more. q leaves; opened again, it can be taken back.',
    };
  return latest.some(({ done }) => done.session === session)
    ? {
        what: 'This session was ended on another device.',
        fix: 'Nothing is saved here any more; q leaves.',
      }
    : null;
}

/** A session that runs: what the screens see of it. */
export interface LiveSession {
  readonly state: () => SessionState;
  /**
   * Carries a command out. Returns once its facts are on disk; a problem means that nothing
   * changed, on disk or in the state.
   */
  readonly send: (command: SessionCommand) => Problem | null;
  readonly now: () => Reading;
}

const STALE_MS = 12 * 60 * 60 * 1000;

/** Did nothing happen in it for so long that it is asked about before it goes on? */
export const isStale = ({ lastAt }: SessionState, now: Reading): boolean =>
  elapsedMs(lastAt, now) > STALE_MS;

/**
 * Begins the session of the day, or goes on with the one that is open.
 * @throws Refusal where the program holds an error or was changed meanwhile, and where a doctor is to be asked first
 */
export function openWriter(
  lifter: Lifter,
  day: string | null,
  within: number | null,
  keepSettings: KeepSettings,
) {
  const journal = lifter.journal();
  const open = openSessionOf(journal.history());
  if (open) return journal.resumeSession(open.session);
  if (lifter.programChanged()) {
    lifter.forgetProgram();
    throw new Refusal({
      what: 'The program was changed in another window meanwhile.',
      fix: 'This is what it asks for now; space begins it.',
    });
  }
  refuseErrors(lifter);
  refuseDoctorFirst(lifter);
  const { prescription } = todayOf(lifter, day, within);
  // From now on the lifter's own copy of a shipped program is what is read and edited.
  const program = lifter.ownProgramPath();
  const writer = journal.beginSession(prescription);
  const { settings } = lifter.settings();
  if (rememberedProgram(settings, lifter.folders) !== program) {
    keepSettings(toRemember(program, settings, lifter.folders));
  }
  return writer;
}

/** A program with an error that its lifter has not accepted is not trained by. */
function refuseErrors(lifter: Lifter): void {
  const errors = findingsOf(lifter.program(), lifter.gear()).filter(
    ({ severity, accepted }) => severity === 'error' && accepted === null,
  );
  const problems = errors.map(({ text, fix }) => ({ what: text, fix }));
  if (problems.length > 0) throw new Refusal(...problems);
}

/** Who answered yes to a question about health says once that a doctor knows. */
function refuseDoctorFirst(lifter: Lifter): void {
  if (lifter.settings().settings.cautions !== 'doctor-first') return;
  throw new Refusal({
    what: 'You answered yes to a question about your health: see a doctor before you train.',
    fix: 'y says that a doctor knows.',
  });
}

type Shorten = Extract<SessionCommand, { do: 'shorten' }>;

/** What is behind a session that runs, as far as its time is worked out from it. */
export interface ShortenSources {
  readonly history: History;
  /** Null where its file cannot be read: then nothing of the week is known to lack. */
  readonly program: Program | null;
  readonly circumstances: Circumstances;
  readonly now: Reading;
}

/** Minutes that what is left of a session takes at the lifter's own pace. */
export const minutesLeft = (session: SessionState, sources: ShortenSources): number =>
  Math.round(secondsLeft(session, sources) / 60);

/** The rest that runs becomes another at most so often, one for each lift of a pair. */
const MOST_TRIES = 3;

/**
 * What is left of a session cut to so many minutes, the way a short day is; to be sent to the session.
 * The rest that runs may become another by the cut, whose set it was before being left out: then it
 * is cut once more, by what is over.
 */
export function shortenTo(
  session: SessionState,
  minutes: number,
  sources: ShortenSources,
): Shorten {
  const { zone } = session;
  let seconds = minutes * 60;
  if (secondsLeft(session, sources) <= seconds) return asItIs(session, minutes);
  let cut = cutBy(session, minutes, seconds, sources);
  for (let tries = 0; tries < MOST_TRIES; tries += 1) {
    const { do: _, ...plan } = cut;
    const event = { type: 'day-shortened', ...plan, id: '', at: sources.now, zone } as const;
    const over = secondsLeft(apply(session, event), sources) - minutes * 60;
    if (over <= 0) break;
    seconds -= over;
    cut = cutBy(session, minutes, seconds, sources);
  }
  return cut;
}

/** Nothing less than is left: the session refuses to be cut by it, and says that all of it fits. */
const asItIs = (
  { prescription: { restBetween }, exercises }: SessionState,
  minutes: number,
): Shorten => ({
  do: 'shorten',
  minutes,
  restBetween,
  pairs: [],
  exercises: exercises.map((each, exercise) => ({
    exercise,
    sets: setsAskedOf(each),
    rest: each.prescribed.rest,
  })),
  cut: [],
});

function cutBy(
  session: SessionState,
  minutes: number,
  seconds: number,
  sources: ShortenSources,
): Shorten {
  const { history, program, circumstances } = sources;
  const { gear, today } = circumstances;
  const lacks = program ? weekLack(program, history.lately, today) : new Map();
  const pace = paceOf(history);
  const left = leftOf(session);
  const bound = secondsLeft(session, sources) - plannedSeconds(left, pace);
  const begun = new Map(
    session.exercises.flatMap((each, at) =>
      isBegun(each) ? [[String(at), each.done.length + each.skipped] as const] : [],
    ),
  );
  const cut = shortDay(left, { minutes: (seconds - bound) / 60, pace, gear, lacks, begun });
  const kept = new Map(cut.exercises.map((each) => [each.track, each]));
  return {
    do: 'shorten',
    minutes,
    restBetween: cut.restBetween,
    pairs: pairedIn(cut.exercises)
      .map((pair) => pair.map((at) => Number(cut.exercises[at]?.track)))
      .filter((pair) => !session.pairs.some((before) => isEqual(before, pair))),
    exercises: left.exercises.map(({ track }) => {
      const exercise = Number(track);
      const work = session.exercises[exercise];
      const found = kept.get(track);
      return {
        exercise,
        sets: (work?.done.length ?? 0) + (work?.skipped ?? 0) + (found?.sets.length ?? 0),
        rest: found?.rest ?? work?.prescribed.rest ?? cut.restBetween,
      };
    }),
    cut: cut.short?.cut ?? [],
  };
}

/** Seconds that what is left takes: the rest that runs, then the cluster under way, then all else. */
function secondsLeft(session: SessionState, { history, now }: ShortenSources): number {
  const left = leftOf(session);
  const exercises = [...session.exercises.flatMap(clusterUnderWay), ...left.exercises];
  const stage = stageNow(session, now);
  const resting = stage.kind === 'resting' ? (stage.toEarlyMs + stage.toLateMs) / 2000 : 0;
  return plannedSeconds({ ...left, exercises }, paceOf(history)) + resting;
}

/** What is left to do and can be cut, as a day of its own; each exercise goes by its position. */
const leftOf = (session: SessionState): Prescription => ({
  ...session.prescription,
  exercises: session.exercises.flatMap((each, at) =>
    isOver(each) || isUnderWay(each) ? [] : [remaining(each, at, session.pairs)],
  ),
});

/** A cluster that was begun runs to its end. */
const isUnderWay = (each: ExerciseState): boolean => isCluster(each) && each.done.length > 0;

function clusterUnderWay(each: ExerciseState): readonly PrescribedExercise[] {
  const { prescribed } = each;
  if (isOver(each) || !isUnderWay(each) || !prescribed.minis) return [];
  const minis = { ...prescribed.minis, mostSets: 1 + plannedSets(each) - each.done.length };
  return [{ ...prescribed, sets: [], minis, warmUp: [], warmsUp: false }];
}

function remaining(
  each: ExerciseState,
  at: number,
  pairs: SessionState['pairs'],
): PrescribedExercise {
  const { pair: _, ...prescribed } = each.prescribed;
  const pair = pairs.findIndex((some) => some.includes(at));
  const behind = each.done.length + each.skipped;
  const last = prescribed.sets.at(-1);
  return {
    ...prescribed,
    track: String(at),
    ...(pair >= 0 && { pair: String(pair) }),
    sets: last
      ? Array.from(
          { length: setsAskedOf(each) - behind },
          (_, index) => prescribed.sets[behind + index] ?? last,
        )
      : [],
    ...((isBegun(each) || each.warmUpsSkipped) && { warmUp: [], warmsUp: false }),
  };
}

const isBegun = ({ done, skipped, warmUpsDone }: ExerciseState): boolean =>
  done.length + skipped + warmUpsDone > 0;

const isEqual = (a: readonly number[], b: readonly number[]): boolean =>
  a.length === b.length && a.every((one) => b.includes(one));
