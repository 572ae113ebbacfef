import type { Coach } from '../../lifter/coach.ts';
import { BLANK, indented, type Line, line, paragraph } from '../line.ts';
import { type Seen, show } from '../outcome.ts';
import { pageScreen, readOn } from '../page.ts';
import { detailTexts, expectedText, planText } from '../plan-words.ts';
import { BACK } from '../screen.ts';
import type { Screen } from '../ui-state.ts';

type Why = Extract<Screen, { kind: 'why' }>;

/** Why each number is what it is: sentence, numbers used, source. */
function all({ screen, coach }: Seen<Why>, columns: number): Line[] {
  const { exercises, unit, cut } = screen;
  const asked = exercises.flatMap((exercise) => [
    line(exercise.name, 'strong'),
    ...paragraph(planText(exercise, unit), columns),
    ...detailTexts(exercise, unit, coach).flatMap((text) => paragraph(text, columns, 'plain', 2)),
    ...likely(coach.expected(exercise), columns),
    ...exercise.why.flatMap((reason) => {
      const { text, facts, source } = coach.reasonWords(reason);
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
  if (cut.length === 0) return asked;
  const words = cut.flatMap((reason) =>
    paragraph(coach.reasonWords(reason).text, columns, 'plain', 2),
  );
  return [...asked, BLANK, line('Cut for want of time', 'strong'), ...words];
}

const likely = (sets: ReturnType<Coach['expected']>, columns: number): Line[] =>
  sets === null ? [] : [BLANK, ...paragraph(expectedText(sets), columns)];

export const WHY_SCREEN = pageScreen<Why>({
  all,
  first: [
    {
      keys: ['space'],
      label: 'read on',
      footer: 0,
      press: readOn(all, (acting) => show(acting, acting.screen.back)),
    },
  ],
  last: [{ ...BACK, tap: { at: 0, says: 'BACK' } }],
});
