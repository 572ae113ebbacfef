import type { Coach } from '../lifter/coach.ts';
import type { Today } from '../lifter/prepare.ts';
import type { PrescribedExercise, Prescription } from '../progression/prescription.ts';
import { countsWords, lastLoads, setsWords } from '../progression/set-words.ts';
import { inTurnWords } from '../session/pairs.ts';
import { dayWords } from '../text/day-words.ts';
import { durationRangeText, rangeText } from '../text/durations.ts';
import { loadWords } from '../training/load-words.ts';
import type { Reason } from '../training/rule.ts';

/** Today as plain lines, for a pipe or a terminal that cannot show screens. */
export function todayText(today: Today, coach: Pick<Coach, 'madeUp' | 'reasonWords'>): string {
  const { prescription, minutes, state } = today;
  const head = [
    prescription.program,
    `day ${prescription.day}`,
    dayWords(prescription.date),
    `about ${minutes} min`,
  ].join(' · ');
  const standing =
    state === 'open' ? ['A session is open: "holdfast train" goes on where it stopped.'] : [];
  const warnings = prescription.warnings
    .filter((reason) => !isToldAtLift(reason, prescription.exercises))
    .map((reason) => `! ${coach.reasonWords(reason).text}`);
  const short = prescription.short
    ? [
        `Cut to ${prescription.short.minutes} min:`,
        ...prescription.short.cut.map((reason) => `  ${coach.reasonWords(reason).text}`),
      ]
    : [];
  const exercises = prescription.exercises.map((exercise) =>
    exerciseLines(exercise, prescription, coach).join('\n'),
  );
  return [[head, ...standing, ...warnings, ...short].join('\n'), ...exercises].join('\n\n');
}

/** Once is enough: below each lift stands all that is said of it. */
const isToldAtLift = ({ rule, facts }: Reason, exercises: readonly PrescribedExercise[]): boolean =>
  exercises.some(({ name, why }) => facts.name === name && why.some((each) => each.rule === rule));

function exerciseLines(
  exercise: PrescribedExercise,
  { unit, exercises }: Prescription,
  coach: Pick<Coach, 'madeUp' | 'reasonWords'>,
): string[] {
  const { load, last, warmUp } = exercise;
  const inTurn = inTurnWords(exercises, exercise);
  const words = (mass: typeof load) =>
    mass === null ? 'load to be chosen' : loadWords(mass, exercise.basis, unit);
  const madeUp = load === null ? null : coach.madeUp(exercise, load);
  return [
    `${exercise.name}  ${words(load)}${madeUp ? `  (${madeUp.words})` : ''}`,
    `  ${setsWords(exercise)}, ${rangeText(exercise.reserve)} in reserve, rest ${durationRangeText([exercise.rest.from, exercise.rest.to])}`,
    ...(inTurn ? [`  ${inTurn}`] : []),
    ...(warmUp.length > 0
      ? [`  warm-up: ${warmUp.map((set) => `${words(set.load)} × ${set.reps}`).join(', ')}`]
      : []),
    ...(last
      ? [
          `  last time, ${dayWords(last.date)}: ${lastLoads(last, words)} × ${countsWords(last.counts, exercise.style)}`,
        ]
      : []),
    ...exercise.why.map((reason, at) => {
      const lead = at === 0 ? `${exercise.move}: ` : ' '.repeat(exercise.move.length + 2);
      return `  ${lead}${coach.reasonWords(reason).text}`;
    }),
  ];
}
