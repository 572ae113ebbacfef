import type { ReviewQuestion } from '../../src/cut/evidence.ts';
import { review } from '../../src/cut/review.ts';
import { bodyMassOn } from '../../src/journal/history.ts';
import { reasonWords } from '../../src/lifter/rules.ts';
import type { Decision, Past } from '../../src/progression/past.ts';
import { seededRandom } from '../../src/rehearsal/seeded-random.ts';
import { reviewText } from '../../src/report/review-text.ts';
import { kilograms } from '../../src/training/mass.ts';
import { repsToFailureAt } from '../../src/training/strength.ts';
import {
  day,
  LIFTS,
  type MadeExercise,
  madePast,
  madeProgram,
  madeResult,
  madeSession,
} from './made.ts';

/** A Monday. */
export const BEGIN = day('2026-06-01');

export const on = (at: number): string => BEGIN.add({ days: at }).toString();

/** A lifter's weeks; what is left out goes as planned. */
export interface MadeHistory {
  readonly weeks: number;
  /** Days past since the first Monday on which the review is read; else the last Sunday. */
  readonly today?: number;
  /** Strength as a share of the start, by days since. */
  readonly strength?: (at: number) => number;
  /** Body weight in kg without the day's water; null: not weighed. */
  readonly body?: ((at: number) => number) | null;
  /** Was the day trained? */
  readonly trained?: (at: number) => boolean;
  readonly aim?: (at: number) => 'cut' | 'maintain';
  readonly exercises?: readonly MadeExercise[];
  readonly decisions?: readonly Pick<Decision, 'rule' | 'answer' | 'subject' | 'date'>[];
  readonly program?: Parameters<typeof madeProgram>[1];
  readonly weightAdvice?: boolean;
}

const EXERCISES: readonly MadeExercise[] = [
  { lift: LIFTS.squat, sets: 3 },
  { lift: LIFTS.bench, sets: 3 },
  { lift: LIFTS.row, sets: 3 },
];

/** One-repetition maximum at the start, and the load trained with, in kg. */
const START = { maximum: 124, load: 100 } as const;

/** Mondays, Wednesdays and Fridays with sets to two in reserve, weighed on most mornings with the noise of scales and water. */
export function madeHistory(story: MadeHistory): ReviewQuestion {
  const { weeks, exercises = EXERCISES } = story;
  const random = seededRandom(7);
  const strength = story.strength ?? ((at) => 1 + 0.0002 * at);
  const today = story.today ?? weeks * 7 - 1;
  const days = [...Array(weeks * 7).keys()].filter(
    (at) => at <= today && [0, 2, 4].includes(at % 7) && (story.trained?.(at) ?? true),
  );
  const results = days.flatMap((at) =>
    exercises.map(({ lift, sets, range = [5, 8] }) => {
      const able = START.maximum * strength(at) * (1 + 0.02 * random.normal());
      // In the last part of a gain the bar gets heavier, in the last of a loss lighter.
      const load = Math.round((START.load * strength(at)) / 2.5) * 2.5;
      const reps = Math.floor(repsToFailureAt(load, able) - 2);
      const counts = Array.from({ length: sets }, (_, set) => Math.max(1, reps - set));
      return madeResult({ lift, on: on(at), load, counts, range, reserve: 2, planned: sets });
    }),
  );
  const weighed = story.body === undefined ? (at: number) => 85 * 0.993 ** (at / 7) : story.body;
  const weighIns = [...Array(today + 1).keys()]
    .filter((at) => weighed !== null && at % 7 !== 5)
    .map((at) => ({
      id: `w:${at}`,
      date: BEGIN.add({ days: at }),
      mass: kilograms(Math.round(((weighed?.(at) ?? 0) + 0.45 * random.normal()) * 10) / 10),
    }));
  const past: Past = {
    ...madePast(results),
    sessions: days.map((at) => madeSession(on(at), { aim: story.aim?.(at) ?? 'cut' })),
    decisions: (story.decisions ?? []).map((each) => ({ ...each, at: 0 })),
    bodyMassOn: bodyMassOn(weighIns),
  };
  return {
    program: madeProgram(exercises, story.program),
    past,
    weighIns,
    today: BEGIN.add({ days: today }),
    weightAdvice: story.weightAdvice ?? true,
  };
}

/** The review down to its figures, as the lifter reads it. */
export function readReview(story: MadeHistory): string {
  const text = reviewText(
    review(madeHistory(story), 4),
    (reason) => reasonWords(reason, 'kg'),
    'kg',
    {
      width: 88,
      glyphs: 'ascii',
    },
  );
  const table = text.findIndex((line) => line.startsWith('Hard sets a week'));
  return `${text
    .slice(0, table)
    .map((line) => line.trimEnd())
    .join('\n')
    .trim()}\n`;
}
