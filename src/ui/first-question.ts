import type { Coach } from '../lifter/coach.ts';
import type { Answers } from '../settings/answers-schema.ts';
import { askedOf } from './questions.ts';
import type { QuestionScreen, Screen } from './ui-state.ts';

/** Where the questions of a new program begin, or go on; null where there is a program already. */
export function firstQuestion(coach: Coach): Screen | null {
  const answers = coach.drafting.first();
  return answers && questionAt(answers, { from: 'unit', again: false }, coach);
}

/** The same from the preview, for another program. What is owned is not asked again. */
export function questionsAgain(coach: Coach): Screen {
  const from = coach.drafting.isGearKnown() ? 'aim' : 'unit';
  return questionAt(coach.drafting.again(), { from, again: true }, coach);
}

/** The screen of the question that is asked next, its usual answer chosen. */
export function questionAt(
  answers: Answers,
  { from, again }: Pick<QuestionScreen, 'from' | 'again'>,
  coach: Coach,
): Screen {
  const { usual } = askedOf(answers, coach);
  const question: QuestionScreen = { kind: 'question', answers, chosen: usual, from, again };
  return answers.at === 'program' ? { kind: 'drafted', question, scroll: 0 } : question;
}
