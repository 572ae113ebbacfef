import { CAUTIONS, DOCTOR_FIRST, READINESS_QUESTIONS } from '../../training/cautions.ts';
import { BLANK, type Line, line, paragraph } from '../line.ts';
import { type Acting, ask, type Outcome, type Seen, show, tell } from '../outcome.ts';
import { isAtEnd, pageScreen, readOn } from '../page.ts';
import { LEAVE } from '../screen.ts';
import type { Screen } from '../ui-state.ts';
import { afterCautions } from './question.ts';

type Cautions = Extract<Screen, { kind: 'cautions' }>;
type Health = Extract<Screen, { kind: 'health' }>;

/** Once, before the first session: what to know, then what to be asked. */
const cautionLines = (_: unknown, columns: number): Line[] => [
  line('Before the first session', 'strong'),
  ...CAUTIONS.filter((text) => text !== DOCTOR_FIRST).flatMap((text) => [
    BLANK,
    ...paragraph(text, columns),
  ]),
];

export const CAUTIONS_SCREEN = pageScreen<Cautions>({
  all: cautionLines,
  first: [
    {
      keys: ['space', 'enter'],
      label: 'read on',
      footer: 0,
      tap: { at: 0 },
      press: readOn(cautionLines, (acting) => show(acting, { kind: 'health', scroll: 0 })),
    },
    {
      keys: ['tab'],
      label: 'see a demo',
      footer: 1,
      tap: { at: 1, says: 'DEMO' },
      press: (acting) => ask(acting, { do: 'leave', status: 0, onto: 'demo' }),
    },
  ],
  last: [LEAVE],
});

const questionLines = (columns: number): Line[] => [
  BLANK,
  ...paragraph('Is any of it so? y or n', columns, 'strong'),
];

const healthLines = (_: unknown, columns: number): Line[] => [
  line('Your health', 'strong'),
  ...READINESS_QUESTIONS.flatMap((text, index) =>
    paragraph(`${index + 1}  ${text}`, columns, 'plain', 3),
  ),
  BLANK,
  ...paragraph(DOCTOR_FIRST, columns),
  ...questionLines(columns),
];

const answer =
  (cautions: 'read' | 'doctor-first') =>
  (acting: Acting<Health>): Outcome => {
    if (!isAtEnd(acting, healthLines)) {
      return tell(acting, 'Read to the end of the questions first: space goes on.');
    }
    const choices = { ...acting.model.choices, cautions };
    return ask(acting, { do: 'keep', choices, to: afterCautions(acting.coach) });
  };

export const HEALTH_SCREEN = pageScreen<Health>({
  all: healthLines,
  pinned: (_: Seen<Health>, columns) => questionLines(columns).length,
  first: [
    {
      keys: ['space', 'enter'],
      label: 'read on',
      when: (seen) => (isAtEnd(seen, healthLines) ? 'Answer with y or n.' : true),
      footer: 0,
      press: readOn(healthLines, (acting) => tell(acting, 'Answer with y or n.')),
    },
    { keys: ['y'], label: 'some yes', footer: 0, tap: { at: 1 }, press: answer('doctor-first') },
    { keys: ['n'], label: 'all no', footer: 0, tap: { at: 0 }, press: answer('read') },
    {
      keys: ['esc', 'left'],
      label: 'back',
      footer: 1,
      press: (acting) => show(acting, { kind: 'cautions', scroll: 0 }),
    },
  ],
  last: [{ ...LEAVE, keys: ['q'] }],
});
