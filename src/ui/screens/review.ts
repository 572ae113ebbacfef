import type { CutRule } from '../../cut/cut-rules.ts';
import type { ProgramEdit } from '../../lifter/change-program.ts';
import type { Advice, ReviewPage } from '../../lifter/look-back.ts';
import { reviewSections, reviewTitle } from '../../report/review-text.ts';
import { shortDayWords } from '../../text/day-words.ts';
import { problemText } from '../../text/problem.ts';
import { safeText } from '../../text/safe-text.ts';
import { questionsAgain } from '../first-question.ts';
import { BLANK, indented, type Line, line, paragraph, span, widthOf } from '../line.ts';
import { type Act, type Acting, ask, type Outcome, type Seen, show, tell } from '../outcome.ts';
import { pageScreen } from '../page.ts';
import { BACK, backBy, type KeyRow, TO_PREVIEW, takingBack } from '../screen.ts';
import { reviewScreen } from '../screen-after.ts';
import type { Role } from '../theme.ts';
import type { Screen } from '../ui-state.ts';
import { PLAN_KEY } from './plan.ts';

type WeightQuestion = Extract<Screen, { kind: 'weight-question' }>;
type Review = Extract<Screen, { kind: 'review' }>;
type Advised = Extract<Screen, { kind: 'advice' }>;

/** Asked before the first session of a cut, else before the first review; only the answer is kept. */
const weightQuestion = ({ screen }: Seen<WeightQuestion>, columns: number): Line[] => [
  line(screen.to === 'review' ? 'Before the review' : 'Before a cut', 'strong'),
  BLANK,
  ...paragraph(
    'Are you under 18, or pregnant, or do you live with, or have you had, an eating disorder?',
    columns,
    'strong',
  ),
  BLANK,
  ...paragraph(
    'With a yes, or without an answer, nothing is said here about losing weight, and a program for a cut is trained as one that maintains. Only the yes or no is kept, not what it is about.',
    columns,
  ),
  BLANK,
  ...paragraph('y: yes, n: none of it, esc: not now', columns),
];

/** The weekly review: the verdict first, then what it rests on. */
function reviewAll({ screen }: Seen<Review>, columns: number): Line[] {
  const { page } = screen;
  const { review, unit, advice } = page;
  const sections = reviewSections(review, unit, { width: columns, glyphs: 'braille' });
  return [
    titleLine(review, columns),
    ...advice.flatMap((each, index) => [BLANK, ...adviceLines(each, index, screen, columns)]),
    ...sections.flatMap(({ title, lines }) => [
      BLANK,
      ...(title === null ? [] : [line(title, 'strong')]),
      ...lines.map((text) => line(text)),
    ]),
  ];
}

/** Without the program's name where there is no room for it. */
function titleLine(review: ReviewPage['review'], columns: number): Line {
  const day = span(shortDayWords(review.today.toString()), 'strong');
  const whole: Line = [span(`${safeText(reviewTitle(review))} · `), day];
  return widthOf(whole) <= columns ? whole : [span('Weekly review · '), day];
}

function adviceLines(
  { text, source, mayTake, mayRefuse }: Advice,
  index: number,
  { chosen, sources }: Review,
  columns: number,
): Line[] {
  const answers = mayTake || mayRefuse;
  const mark = answers ? (index === chosen ? '▸ ' : '  ') : index === 0 ? '' : '- ';
  const [first = BLANK, ...more] = paragraph(
    safeText(text),
    columns - mark.length,
    index === 0 ? 'strong' : 'plain',
  );
  return [
    [span(mark, 'drawn'), ...first],
    ...more.map((one) => indented(one, mark.length)),
    ...(sources
      ? paragraph(`(${safeText(source)})`, columns - mark.length).map((one) =>
          indented(one, mark.length),
        )
      : []),
  ];
}

/** What an advice changes in the program file, before it is written. */
function adviceAll({ screen }: Seen<Advised>, columns: number): Line[] {
  const { text } = screen.advice;
  const { path, where, lines } = screen.edit;
  return [
    ...paragraph(safeText(text), columns, 'strong'),
    BLANK,
    ...where.flatMap((each) => paragraph(safeText(each), columns)),
    ...paragraph(`In ${safeText(path)}:`, columns),
    BLANK,
    ...lines.map((each) => line(`${MARKS[each.kind]} ${safeText(each.text)}`, ROLES[each.kind])),
    BLANK,
    ...paragraph('Nothing is written yet: space writes it, esc leaves it as it is.', columns),
  ];
}

const MARKS = { gone: '-', new: '+', same: ' ', 'left-out': '…' } as const;
const ROLES: Readonly<Record<keyof typeof MARKS, Role>> = {
  gone: 'drawn',
  new: 'strong',
  same: 'plain',
  'left-out': 'plain',
};

/** From the preview, past the question about weight where it was not answered. */
export const REVIEW_KEY: KeyRow = {
  keys: ['t'],
  label: "week's review",
  footer: 5,
  press: (acting) =>
    acting.coach.lookBack.weightAdvice() === 'ask'
      ? show(acting, { kind: 'weight-question', to: 'review', scroll: 0 })
      : show(acting, reviewScreen(acting.coach)),
};

const weightAnswer =
  (answer: 'yes' | 'no'): Act<WeightQuestion> =>
  (acting) =>
    ask(acting, {
      do: 'change',
      change: { kind: 'weight-advice', answer },
      to: acting.screen.to,
    });

/** A yes to the question is a no to advice on weight. */
export const WEIGHT_QUESTION_SCREEN = pageScreen<WeightQuestion>({
  all: weightQuestion,
  first: [
    { keys: ['y'], label: 'yes', footer: 0, tap: { at: 1 }, press: weightAnswer('no') },
    { keys: ['n'], label: 'none of it', footer: 1, tap: { at: 0 }, press: weightAnswer('yes') },
  ],
  last: [
    backBy((acting) =>
      show(
        acting,
        acting.screen.to === 'review'
          ? reviewScreen(acting.coach)
          : { kind: 'preview', today: acting.coach.today(), chosen: 0 },
      ),
    ),
  ],
  unturned: true,
});

const adviceOf = ({ screen }: Seen<Review>): Advice | undefined =>
  screen.page.advice[screen.chosen];

const answered = (
  acting: Acting,
  { finding }: Advice,
  answer: 'yes' | 'no',
  edit: ProgramEdit | null,
): Outcome =>
  ask(acting, { do: 'change', change: { kind: 'answer', finding, answer, edit }, to: 'review' });

/** A yes to this leads on, and is said with the program that is taken. */
const NEXT_PROGRAM: CutRule = 'next-program';

const take: Act<Review> = (acting) => {
  const advice = adviceOf(acting);
  if (!advice) return ask(acting);
  if (advice.finding.reason.rule === NEXT_PROGRAM)
    return show(acting, questionsAgain(acting.coach));
  if (advice.finding.changes.length === 0) return answered(acting, advice, 'yes', null);
  const edit = acting.coach.lookBack.programEdit(advice.finding);
  if ('what' in edit) return tell(acting, problemText(edit));
  return show(acting, { kind: 'advice', advice, edit, back: acting.screen, scroll: 0 });
};

const refuse: Act<Review> = (acting) => {
  const advice = adviceOf(acting);
  return advice ? answered(acting, advice, 'no', null) : ask(acting);
};

const isAnswerable = ({ mayTake, mayRefuse }: Advice): boolean => mayTake || mayRefuse;

const sources: Act<Review> = (acting) =>
  show(acting, { ...acting.screen, sources: !acting.screen.sources });

/** Those that take an answer, in turn. */
const nextAdvice: Act<Review> = (acting) => {
  const { screen } = acting;
  const { advice } = screen.page;
  const answerable = advice.flatMap((each, index) => (isAnswerable(each) ? [index] : []));
  const next = answerable.find((index) => index > screen.chosen) ?? answerable[0];
  return next === undefined ? ask(acting) : show(acting, { ...screen, chosen: next, scroll: 0 });
};

export const REVIEW_SCREEN = pageScreen<Review>({
  all: reviewAll,
  first: [
    {
      keys: ['y'],
      label: 'yes to it',
      when: (seen) => (adviceOf(seen)?.mayTake ? true : 'There is nothing here to say yes to.'),
      footer: 0,
      tap: { at: 0, says: 'YES' },
      press: take,
    },
    {
      keys: ['n'],
      label: 'no to it',
      when: (seen) => (adviceOf(seen)?.mayRefuse ? true : 'There is nothing here to say no to.'),
      footer: 1,
      press: refuse,
    },
    {
      keys: ['tab'],
      label: 'next advice',
      when: ({ screen }) =>
        screen.page.advice.filter(isAnswerable).length > 1 ? true : 'There is no other advice.',
      footer: 2,
      press: nextAdvice,
    },
    { keys: ['w'], label: 'why this', footer: 3, press: sources },
    PLAN_KEY,
  ],
  last: [TO_PREVIEW, ...takingBack('review')],
});

export const ADVICE_SCREEN = pageScreen<Advised>({
  all: adviceAll,
  first: [
    {
      keys: ['space', 'enter'],
      label: 'write it',
      footer: 0,
      tap: { at: 0 },
      press: (acting) => answered(acting, acting.screen.advice, 'yes', acting.screen.edit),
    },
  ],
  last: [BACK],
});
