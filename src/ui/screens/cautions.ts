import { CAUTIONS, READINESS_QUESTIONS } from '../../training/cautions.ts';
import { BLANK, type Line, line, paragraph } from '../line.ts';
import { type Acting, ask, type Outcome, tell } from '../outcome.ts';
import { isAtEnd, pageScreen, readOn } from '../page.ts';
import { LEAVE } from '../screen.ts';
import type { Screen } from '../ui-state.ts';

type Cautions = Extract<Screen, { kind: 'cautions' }>;

/** Once, before the first session. */
const all = (_: unknown, columns: number): Line[] => [
  line('Before the first session', 'strong'),
  ...CAUTIONS.flatMap((text) => [BLANK, ...paragraph(text, columns)]),
  BLANK,
  ...READINESS_QUESTIONS.flatMap((text, index) =>
    paragraph(`${index + 1}  ${text}`, columns, 'plain', 3),
  ),
  BLANK,
  ...paragraph('Is any of these a yes? y or n', columns, 'strong'),
];

const answer =
  (cautions: 'read' | 'doctor-first') =>
  (acting: Acting<Cautions>): Outcome => {
    if (!isAtEnd(acting, all)) {
      return tell(acting, 'Read to the end of the questions first: space goes on.');
    }
    const to = { kind: 'preview', today: acting.bench.today(), chosen: 0 } as const;
    return ask(acting, { do: 'keep', choices: { ...acting.model.choices, cautions }, to });
  };

export const CAUTIONS_SCREEN = pageScreen<Cautions>({
  all,
  first: [
    {
      keys: ['space'],
      label: 'read on',
      footer: 0,
      press: readOn(all, (acting) => tell(acting, 'Answer with y or n.')),
    },
    {
      keys: ['y'],
      label: 'some yes',
      footer: 0,
      tap: { at: 1 },
      press: answer('doctor-first'),
    },
    { keys: ['n'], label: 'all no', footer: 0, tap: { at: 0 }, press: answer('read') },
  ],
  last: [LEAVE],
});
