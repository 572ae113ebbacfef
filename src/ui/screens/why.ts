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
  const { exercises, unit, cut, about } = screen;
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
  return [
    ...asked,
    ...told('About the session', about, columns),
    ...told(
      'Cut for want of time',
      cut.map((reason) => coach.reasonWords(reason).text),
      columns,
    ),
  ];
}

const told = (title: string, texts: readonly string[], columns: number): Line[] =>
  texts.length === 0
    ? []
    : [
        BLANK,
        line(title, 'strong'),
        ...texts.flatMap((text) => paragraph(text, columns, 'plain', 2)),
      ];

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
