import type { Coach } from '../lifter/coach.ts';
import type { PrescribedExercise } from '../progression/prescription.ts';
import { setsWords } from '../progression/set-words.ts';
import type { SetExpected } from '../strength/set-expected.ts';
import { rangeText } from '../text/durations.ts';
import { andText } from '../text/words.ts';
import { massNumber, type Unit } from '../training/mass.ts';
import { loadText, secondsText } from './words.ts';

/** What is asked for, in one sentence: `80 kg · 3 sets of 6 reps · 1–2 in reserve`. */
export function planText(exercise: PrescribedExercise, unit: Unit): string {
  const load =
    exercise.load === null ? 'a load to choose' : loadText(exercise.load, exercise, unit);
  const reserve =
    exercise.counts === 'seconds' ? [] : [`${rangeText(exercise.reserve)} in reserve`];
  return [load, setsWords(exercise), ...reserve].join(' · ');
}

/** `rest 3 min to 5 min`. */
function restText({ rest, minis }: PrescribedExercise): string {
  const ends =
    rest.from === rest.to
      ? secondsText(rest.from)
      : `${secondsText(rest.from)} to ${secondsText(rest.to)}`;
  return minis ? `${ends} between its parts` : `rest ${ends}`;
}

/** What is good to know beside the plan: rest, warm-up, how the load is made, the program's note. */
export function detailTexts(exercise: PrescribedExercise, unit: Unit, coach: Coach): string[] {
  const { warmUp, load, note } = exercise;
  const steps = warmUp.map((set) => `${massNumber(set.load, unit)} × ${set.reps}`);
  const made = load === null ? null : coach.madeUp(exercise, load);
  return [
    restText(exercise),
    steps.length > 0 ? `warm-up ${steps.join(', ')}` : null,
    made ? made.words : null,
    note,
  ].filter((text) => text !== null);
}

/** `Likely 8, 7 and 5 reps; the aims with odds of 80, 65 and 85 %.`: to 5 %, never all or nothing. */
export function expectedText(sets: readonly SetExpected[]): string {
  const reps = sets.map((set) => String(Math.max(0, Math.round(set.reps))));
  const odds = sets.map((set) => String(Math.min(95, Math.max(5, 5 * Math.round(20 * set.odds)))));
  const aims = sets.length === 1 ? 'the aim' : 'the aims';
  return `Likely ${andText(reps)} reps; ${aims} with odds of ${andText(odds)} %.`;
}
