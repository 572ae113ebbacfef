import type { Answers } from '../settings/answers-schema.ts';
import type { Bench } from '../workbench/bench.ts';
import { askedOf } from './questions.ts';
import type { QuestionScreen, Screen } from './ui-state.ts';

/** Where the questions of a new program begin, or go on; null where there is a program already. */
export function firstQuestion(bench: Bench): Screen | null {
  const answers = bench.drafting.first();
  return answers && questionAt(answers, { from: 'unit', again: false }, bench);
}

/** The same from the preview, for another program. What is owned is not asked again. */
export function questionsAgain(bench: Bench): Screen {
  const from = bench.drafting.isGearKnown() ? 'aim' : 'unit';
  return questionAt(bench.drafting.again(), { from, again: true }, bench);
}

/** The screen of the question that is asked next, its usual answer chosen. */
export function questionAt(
  answers: Answers,
  { from, again }: Pick<QuestionScreen, 'from' | 'again'>,
  bench: Bench,
): Screen {
  const { usual } = askedOf(answers, bench);
  const question: QuestionScreen = { kind: 'question', answers, chosen: usual, from, again };
  return answers.at === 'program' ? { kind: 'drafted', question, scroll: 0 } : question;
}
