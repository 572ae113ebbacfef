import type { Coach } from '../../lifter/coach.ts';
import { type Answers, QUESTIONS } from '../../settings/answers-schema.ts';
import { firstQuestion, questionAt } from '../first-question.ts';
import { listLines, listTexts, moving } from '../list.ts';
import { type Act, type Acting, type Outcome, type Seen, show, tell } from '../outcome.ts';
import { askedOf, questionBeside } from '../questions.ts';
import { backBy, HELP, LEAVE, type ScreenModule } from '../screen.ts';
import { beforeTraining } from '../screen-after.ts';
import type { QuestionScreen, Screen } from '../ui-state.ts';

/** After the cautions: the questions of a first program, or what is due. */
export const afterCautions = (coach: Coach): Screen =>
  firstQuestion(coach) ?? beforeTraining(coach);

/** Another question, remembered so that it can be gone on with after leaving. */
export function goTo(acting: Acting, screen: QuestionScreen, answers: Answers): Outcome {
  const shown = show(acting, questionAt(answers, screen, acting.coach));
  return { ...shown, effects: [{ do: 'keep-answers', answers }] };
}

/** To the question before `screen`'s, or out of the questions where there is none. */
export function goBack(acting: Acting, screen: QuestionScreen): Outcome {
  const { answers, from, again } = screen;
  const before = answers.at === from ? null : questionBeside(answers, -1, acting.coach);
  if (before !== null) return goTo(acting, screen, { ...answers, at: before });
  if (!again)
    return tell(acting, 'This is the first question. q leaves; it goes on here next time.');
  return show(acting, { kind: 'preview', today: acting.coach.today(), chosen: 0 });
}

const listOf = ({ screen, coach }: Seen<QuestionScreen>) => {
  const { answers } = screen;
  const { asks, words, rows } = askedOf(answers, coach);
  // The last is the program itself.
  const count = QUESTIONS.length - 1;
  const title = `${QUESTIONS.indexOf(answers.at) + 1} of ${count} · ${asks}`;
  return {
    title,
    words,
    choices: rows.map(({ label, detail = '' }) => ({ label, detail, effects: [] })),
  };
};

/** On with the row that is chosen; a mark and a form of their own wait for the way on. */
const choose: Act<QuestionScreen> = (acting) => {
  const { screen, coach } = acting;
  const row = askedOf(screen.answers, coach).rows[screen.chosen];
  if (!row) return tell(acting, 'There is nothing to choose.');
  if (row.to) return show(acting, row.to(screen));
  if (!row.isMark) return goOn(acting, row.answers);
  return show(acting, { ...screen, answers: row.answers });
};

/** The next question; marks stay as they are. */
const next: Act<QuestionScreen> = (acting) => {
  const { screen, coach } = acting;
  const row = askedOf(screen.answers, coach).rows[screen.chosen];
  return goOn(acting, row && !row.isMark ? row.answers : screen.answers);
};

function goOn(acting: Acting<QuestionScreen>, answers: Answers): Outcome {
  const at = questionBeside(answers, 1, acting.coach) ?? 'program';
  return goTo(acting, acting.screen, { ...answers, at });
}

const count = (seen: Seen<QuestionScreen>) => listOf(seen).choices.length;

export const QUESTION_SCREEN: ScreenModule<QuestionScreen> = {
  keys: [
    {
      keys: ['enter', 'space'],
      label: ({ screen, coach }) =>
        askedOf(screen.answers, coach).rows[screen.chosen]?.isMark ? 'mark' : 'choose',
      footer: 0,
      tap: { at: 0 },
      press: choose,
    },
    ...moving<QuestionScreen>(count),
    { keys: ['right', 'tab'], label: 'go on', footer: 2, press: next },
    backBy<QuestionScreen>((acting) => goBack(acting, acting.screen), {
      keys: ['esc', 'left', 'backspace'],
    }),
    {
      keys: ['e'],
      label: 'to the program',
      footer: 3,
      press: (acting) => goTo(acting, acting.screen, { ...acting.screen.answers, at: 'program' }),
    },
    HELP,
    { ...LEAVE, keys: ['q'] },
  ],
  lines: (seen, columns, rows) => listLines(listOf(seen), seen.screen.chosen, columns, rows),
  spoken: (seen) => listTexts(listOf(seen), seen.screen.chosen),
};
