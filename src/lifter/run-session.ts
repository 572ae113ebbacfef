import type { SessionWriter } from '../journal/disk/journal.ts';
import { openSessionOf } from '../journal/history.ts';
import type { SessionCommand } from '../session/command.ts';
import { decide } from '../session/decide.ts';
import { dateOf, setsAsked, setsCountedIn } from '../session/results.ts';
import type { SessionState } from '../session/state.ts';
import { shortDayWords } from '../text/day-words.ts';
import { orProblem, type Problem, Refusal } from '../text/problem.ts';
import { elapsedMs, type Reading } from '../training/reading.ts';
import type { Lifter } from './open-lifter.ts';
import type { KeepSettings } from './ports.ts';
import { todayOf } from './prepare.ts';
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

/** Which session is open, and how far it has come: `Day A, begun Wed 25 Nov: 2 of 7 sets done.` */
export function openWords(session: SessionState): string {
  const { prescription } = session;
  const begun = shortDayWords(dateOf(session).toString());
  const done = `${setsCountedIn(session)} of ${setsAsked(prescription.exercises)} sets done`;
  return `Day ${prescription.day}, begun ${begun}: ${done}.`;
}

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
