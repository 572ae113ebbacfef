import type { PrescribedExercise } from '../../progression/prescription.ts';
import { CAUTIONS, READINESS_QUESTIONS } from '../../training/cautions.ts';
import type { Unit } from '../../training/mass.ts';
import type { Bench } from '../../workbench/bench.ts';
import { BLANK, indented, type Line, line, paragraph, span } from '../line.ts';
import { detailTexts, planText } from '../plan-words.ts';

/** Once, before the first session. */
export const cautionLines = (columns: number): Line[] => [
  line('Before the first session', 'strong'),
  ...CAUTIONS.flatMap((text) => [BLANK, ...paragraph(text, columns)]),
  BLANK,
  ...READINESS_QUESTIONS.flatMap((text, index) =>
    paragraph(`${index + 1}  ${text}`, columns, 'plain', 3),
  ),
  BLANK,
  ...paragraph('Is any of these a yes? y or n', columns, 'strong'),
];

/** Why each number is what it is: sentence, numbers used, source. */
export function whyLines(
  exercises: readonly PrescribedExercise[],
  unit: Unit,
  bench: Bench,
  columns: number,
): Line[] {
  return exercises.flatMap((exercise) => [
    line(exercise.name, 'strong'),
    ...paragraph(planText(exercise, unit), columns),
    ...detailTexts(exercise, unit, bench).flatMap((text) => paragraph(text, columns, 'plain', 2)),
    ...exercise.why.flatMap((reason) => {
      const { text, facts, source } = bench.reasonWords(reason);
      return [
        BLANK,
        ...paragraph(text, columns, 'strong'),
        ...facts.flatMap(({ name, value }) =>
          paragraph(`${name}: ${value}`, columns - 2, 'plain', 2).map((one) => indented(one, 2)),
        ),
        ...paragraph(source, columns - 2).map((one) => indented(one, 2)),
      ];
    }),
    ...[exercise.form, exercise.caution].flatMap((text) =>
      text ? [BLANK, ...paragraph(text, columns)] : [],
    ),
  ]);
}

/** Heading of a page, and a line under it. */
export const titled = (title: string, words: string | null, columns: number): Line[] => [
  [span(title, 'strong')],
  ...(words ? [BLANK, ...paragraph(words, columns)] : []),
  BLANK,
];
