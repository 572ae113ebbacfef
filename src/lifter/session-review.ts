import { bestShown } from '../cut/shown-strength.ts';
import type { History } from '../journal/history.ts';
import { CATALOGUE } from '../program/catalogue.ts';
import type { Program } from '../program/program.ts';
import { atSamePlace } from '../progression/in-program.ts';
import type { Circumstances, Past, Result } from '../progression/past.ts';
import { prescribeAgain } from '../progression/prescribe-anew.ts';
import type { PrescribedExercise } from '../progression/prescription.ts';
import { worksOf } from '../session/next-set.ts';
import { resultsOf } from '../session/results.ts';
import type { SessionState } from '../session/state.ts';
import { summaryOf } from '../session/summary.ts';
import { clusterHardReps, reserveOf } from '../training/effort.ts';
import { loadWords } from '../training/load-words.ts';
import { type Mass, massText, type Unit } from '../training/mass.ts';
import type { Reason } from '../training/rule.ts';
import { prescribedDay } from './prepare.ts';

export interface ReviewSources {
  /** Once the session is part of it. */
  readonly history: History;
  /** Null where its file cannot be read. */
  readonly program: Program | null;
  readonly circumstances: Circumstances;
  readonly sentence: (reason: Reason) => string;
}

/** What a finished session came to, and what the next one will ask for. */
export function sessionReview(session: SessionState, sources: ReviewSources): SessionReview {
  const { history } = sources;
  const results = resultsOf(session);
  // One by one: some of a history is only read from disk when it is asked for.
  const { sessions, decisions, bodyMassOn } = history;
  const before: Past = {
    results: history.results.filter((result) => result.session !== session.session),
    sessions,
    decisions,
    bodyMassOn,
  };
  return {
    hardReps: clusterReps(results),
    clusters: summaryOf(session, session.lastAt).clusters,
    bests: results.flatMap((result) => best(result, before, session.prescription.unit)),
    next: nextTime(session, sources),
  };
}

function clusterReps(results: readonly Result[]): number | null {
  const clusters = results.filter(({ exercise }) => exercise.minis && exercise.counts === 'reps');
  if (clusters.length === 0) return null;
  return clusters.reduce((sum, { sets: [lead, ...minis], exercise }) => {
    if (!lead) return sum;
    const { reserve } = reserveOf(lead.reserve, exercise.reserve);
    return (
      sum +
      clusterHardReps(
        { reps: lead.count, reserve },
        minis.map(({ count }) => count),
      )
    );
  }, 0);
}

/** A sentence where the session holds the best estimate of its track so far; none the first time. */
function best(result: Result, before: Past, unit: Unit): string[] {
  const now = bestShown(result, before.bodyMassOn);
  const earlier = before.results
    .filter(({ exercise }) => exercise.track === result.exercise.track)
    .map((each) => bestShown(each, before.bodyMassOn) ?? 0);
  const most = Math.max(0, ...earlier);
  if (now === null || most === 0 || now <= most) return [];
  const words = (estimate: number) => massText(estimate as Mass, unit, 1);
  return [
    `${result.exercise.name}: best estimate so far, ${words(now)} for one rep (was ${words(most)}).`,
  ];
}

function nextTime(session: SessionState, sources: ReviewSources): SessionReview['next'] {
  const { history, program, sentence } = sources;
  const { day, unit } = session.prescription;
  const planned = program?.days.find(({ name }) => name === day);
  const circumstances = {
    ...sources.circumstances,
    today: sources.circumstances.today.add({ days: daysToSameDay(program) }),
  };
  const { lately } = history;
  const due =
    program && planned ? prescribedDay(program, planned, lately, circumstances).exercises : [];
  const lifts = program?.lifts ?? CATALOGUE;
  return session.exercises.flatMap(worksOf).map(({ prescribed }) => {
    const there = atSamePlace(prescribed, due);
    const next =
      there?.lift === prescribed.lift
        ? there
        : prescribeAgain(prescribed, { ...session, lifts }, lately, circumstances);
    return { name: next.name, plan: planWords(next, unit), why: next.why.map(sentence).join(' ') };
  });
}

/** A week, where no program says how often the day comes. */
const daysToSameDay = (program: Program | null): number =>
  program ? Math.max(1, Math.round((program.days.length * 7) / program.daysPerWeek)) : 7;

function planWords({ load, basis, sets, minis, counts }: PrescribedExercise, unit: Unit): string {
  const aims = sets.map(({ aim }) => aim).join(', ');
  const each = counts === 'seconds' ? 's' : 'reps';
  const words = load === null ? 'load to be chosen' : loadWords(load, basis, unit);
  return minis
    ? `${words} · ${aims} ${each}, then mini-sets of ${minis.aim}`
    : `${words} · ${aims} ${each}`;
}

/** What a finished session came to, beside what its own state shows. */
export interface SessionReview {
  readonly hardReps: number | null;
  /** Seconds spent in clusters, and what the same work takes as straight sets; null without clusters. */
  readonly clusters: { readonly spent: number; readonly asStraight: number } | null;
  /** One sentence each: `Back squat: best estimate so far, 98 kg (was 96.5).` */
  readonly bests: readonly string[];
  readonly next: readonly { readonly name: string; readonly plan: string; readonly why: string }[];
}
