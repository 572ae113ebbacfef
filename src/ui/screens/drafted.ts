import type { Drafted } from '../../lifter/drafting.ts';
import { keyWords } from '../../text/words.ts';
import { BLANK, indented, type Line, line, paragraph, span, spread } from '../line.ts';
import { ask, type Seen } from '../outcome.ts';
import { pageScreen } from '../page.ts';
import { backBy, LEAVE } from '../screen.ts';
import type { Screen } from '../ui-state.ts';
import { goBack, goTo } from './question.ts';
import { doneLine } from './sheet-lines.ts';

type DraftedScreen = Extract<Screen, { kind: 'drafted' }>;

/** The program that the answers make: its days, its minutes, its work, and what it cost. */
function all({ screen, coach }: Seen<DraftedScreen>, columns: number): Line[] {
  const { answers } = screen.question;
  const drafted = coach.drafting.draft(answers);
  const { program, figures, chosen, givenUp, advice } = drafted;
  const told = (title: string, texts: readonly string[]): Line[] =>
    texts.length === 0
      ? []
      : [
          BLANK,
          line(title, 'strong'),
          ...texts.flatMap((text) => paragraph(`- ${text}`, columns, 'plain', 2)),
        ];
  const longest = Math.max(...figures.days.map(({ minutes }) => minutes));
  return [
    spread([span(program.name, 'strong')], [span(`${longest} of ${answers.minutes} min`)], columns),
    ...volumeLines(drafted, columns),
    ...figures.days.flatMap(({ name, exercises, minutes }) => [
      BLANK,
      spread([span(name, 'strong')], [span(`${minutes} min`)], columns),
      ...exercises.map((exercise) => indented(doneLine(exercise, columns - 2), 2)),
    ]),
    ...told('Given up, and why', givenUp),
    ...told('Why it is so', chosen),
    ...told('The check would still better', advice),
  ];
}

/** The muscles outside the range of the week by name, the others by their count. */
function volumeLines(
  { figures: { muscles }, band: [low, high] }: Drafted,
  columns: number,
): Line[] {
  const counted = muscles.filter(({ hardSets, directDays }) => hardSets > high || directDays > 0);
  const outside = counted.filter(({ hardSets }) => hardSets < low || hardSets > high);
  const within = counted.length - outside.length;
  const words = `${within} of ${counted.length} ${counted.length === 1 ? 'muscle gets' : 'muscles get'} ${low}–${high} hard sets a week`;
  const others = outside.map(({ muscle, hardSets }) => `${keyWords(muscle)} ${hardSets}`);
  return paragraph(others.length === 0 ? `${words}.` : `${words}; ${others.join(', ')}.`, columns);
}

export const DRAFTED_SCREEN = pageScreen<DraftedScreen>({
  all,
  first: [
    {
      keys: ['enter', 'space'],
      label: 'take it',
      footer: 0,
      tap: { at: 0, says: 'TAKE IT' },
      press: (acting) => ask(acting, { do: 'take-draft', answers: acting.screen.question.answers }),
    },
    backBy<DraftedScreen>((acting) => goBack(acting, acting.screen.question), {
      keys: ['esc', 'left', 'backspace'],
    }),
    {
      keys: ['c'],
      label: 'change the answers',
      footer: 6,
      press: (acting) => {
        const { question } = acting.screen;
        return goTo(acting, question, { ...question.answers, at: question.from });
      },
    },
  ],
  last: [{ ...LEAVE, keys: ['q'] }],
});
