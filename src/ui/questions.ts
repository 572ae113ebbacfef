import type { Coach } from '../lifter/coach.ts';
import { DRAFT_LIMITS } from '../program/draft/draft-limits.ts';
import { MOST_REPS_OF_BEST } from '../program/draft/wishes.ts';
import { type Answers, QUESTIONS, type Question } from '../settings/answers-schema.ts';
import { keyWords } from '../text/words.ts';
import { hasStation, STATIONS } from '../training/gear.ts';
import { KITS } from '../training/kits.ts';
import { basisOf, JOINTS, type Lift, MUSCLES } from '../training/lift.ts';
import { loadWords } from '../training/load-words.ts';
import type { Mass } from '../training/mass.ts';
import { formOf } from './gear/form-state.ts';
import type { QuestionScreen, Screen } from './ui-state.ts';

/** An answer that can be chosen. */
export interface AnswerRow {
  readonly label: string;
  readonly detail?: string;
  /** What choosing it makes of the answers. */
  readonly answers: Answers;
  /** A mark that is set or taken away: the question stays. */
  readonly isMark?: true;
  /** Asks for more on a screen of its own. */
  readonly to?: (screen: QuestionScreen) => Screen;
}

interface AskedQuestion {
  readonly asks: string;
  readonly words: string | null;
  readonly rows: (answers: Answers, coach: Coach) => readonly AnswerRow[];
  /** Is there anything to ask? Always, where left out. */
  readonly applies?: (answers: Answers, coach: Coach) => boolean;
}

/** A row for each of some values, one of which is the answer. */
const oneOf = <Key extends 'unit' | 'aim' | 'days' | 'minutes'>(
  key: Key,
  values: readonly (readonly [value: Answers[Key], label: string, detail?: string])[],
) => ({
  rows: (answers: Answers): readonly AnswerRow[] =>
    values.map(([value, label, detail = '']) => ({
      label,
      detail,
      answers: { ...answers, [key]: value },
    })),
});

const marked = (isOn: boolean, label: string): string => `${isOn ? '[x]' : '[ ]'} ${label}`;

/** A way on, and a mark for each of some things. */
function marks<Thing extends string>(
  answers: Answers,
  goOn: string,
  things: readonly Thing[],
  has: (thing: Thing) => boolean,
  turned: (thing: Thing, isOn: boolean) => Answers,
): readonly AnswerRow[] {
  return [
    { label: goOn, answers },
    ...things.map((thing): AnswerRow => {
      const isOn = has(thing);
      const label = marked(isOn, thing.replace('-', ' '));
      return { label, answers: turned(thing, !isOn), isMark: true };
    }),
  ];
}

const turnedIn = <Thing>(
  all: readonly Thing[],
  now: readonly Thing[],
  thing: Thing,
  isOn: boolean,
): readonly Thing[] => all.filter((one) => (one === thing ? isOn : now.includes(one)));

/** Each question on its way, as the screen asks it. The program itself is a screen of its own. */
const ASKED: Readonly<Record<Exclude<Question, 'program'>, AskedQuestion>> = {
  unit: {
    asks: 'Kilograms or pounds?',
    words: null,
    rows: (answers) =>
      (['kg', 'lb'] as const).map((unit) => ({
        label: unit === 'kg' ? 'Kilograms' : 'Pounds',
        answers: withKit({ ...answers, unit }, answers.kit),
      })),
  },
  kit: {
    asks: 'What do you train with?',
    words: 'The nearest one; what it lacks comes next.',
    rows: (answers) =>
      KITS.map(({ name }, kit) => ({
        label: name.charAt(0).toUpperCase() + name.slice(1),
        answers: withKit(answers, kit),
      })),
  },
  gear: {
    asks: 'Is this there, too?',
    words: 'What is marked is taken to be there.',
    rows: gearRows,
  },
  aim: {
    asks: 'What is it for?',
    words: null,
    ...oneOf('aim', [
      ['cut', 'Losing fat', 'and keeping strength'],
      ['maintain', 'Staying as I am', 'with little work'],
      ['build', 'Gaining muscle', 'with more work'],
    ]),
  },
  days: {
    asks: 'How many days a week?',
    words: null,
    ...oneOf('days', [
      [2, '2 days', 'the least that does'],
      [3, '3 days', 'usual while losing fat'],
      [4, '4 days', 'less in each of them'],
    ]),
  },
  minutes: {
    asks: 'How long is a session?',
    words: null,
    ...oneOf(
      'minutes',
      [20, 30, 45, 60, 75, 90].map((minutes) => [minutes, `${minutes} minutes`] as const),
    ),
  },
  hurts: {
    asks: 'Does anything hurt?',
    words:
      'Lifts that load it hard stay out (common practice). See someone who is licensed if it lasts.',
    rows: (answers) =>
      marks(
        answers,
        answers.hurts.length === 0 ? 'Nothing' : `Spare the ${answers.hurts.join(', ')}`,
        JOINTS,
        (joint) => answers.hurts.includes(joint),
        (joint, isOn) => ({ ...answers, hurts: turnedIn(JOINTS, answers.hurts, joint, isOn) }),
      ),
  },
  focus: {
    asks: 'Anything to bring up?',
    words: `It gets ${DRAFT_LIMITS.focusExtra} hard sets a week more than the least.`,
    rows: (answers) =>
      marks(
        answers,
        answers.focus.length === 0
          ? 'All of it alike'
          : `Bring up ${keyWords(answers.focus.join(', '))}`,
        MUSCLES,
        (muscle) => answers.focus.includes(muscle),
        (muscle, isOn) => ({ ...answers, focus: turnedIn(MUSCLES, answers.focus, muscle, isOn) }),
      ),
  },
  bests: {
    asks: 'What can you lift?',
    words: `A hard set of the last two months, of 1 to ${MOST_REPS_OF_BEST} reps, gives the first load.`,
    applies: (answers, { drafting }) => drafting.draft(answers).lifts.length > 0,
    rows: bestRows,
  },
};

function withKit(answers: Answers, kit: number): Answers {
  // Another kit or unit is other gear; the same one keeps what was corrected.
  const isSame = answers.kit === kit && answers.gear.unit === answers.unit;
  const gear = isSame ? answers.gear : (KITS[kit]?.gear(answers.unit) ?? answers.gear);
  return { ...answers, kit, gear };
}

function gearRows(answers: Answers): readonly AnswerRow[] {
  const { gear } = answers;
  const changed = (change: Partial<Answers['gear']>): Answers => ({
    ...answers,
    gear: { ...gear, ...change },
  });
  const mark = (isOn: boolean, label: string, change: Partial<Answers['gear']>): AnswerRow => ({
    label: marked(isOn, label),
    answers: changed(change),
    isMark: true,
  });
  const safeties = mark(gear.safeties, 'safeties that catch the bar', { safeties: !gear.safeties });
  return [
    { label: 'As marked', answers },
    ...(gear.bars.length > 0 ? [safeties] : []),
    ...STATIONS.map((station) => {
      const isOn = hasStation(gear, station);
      const stations = STATIONS.filter((one) => (one === station ? !isOn : hasStation(gear, one)));
      return mark(isOn, station, { stations });
    }),
    ...(gear.plates.length > 0
      ? [mark(gear.belt, 'belt that plates hang from', { belt: !gear.belt })]
      : []),
    {
      label: 'Each plate, dumbbell and band …',
      answers,
      to: (back) => ({ kind: 'gear', form: formOf(gear), back }),
    },
  ];
}

function bestRows(answers: Answers, { drafting }: Coach): readonly AnswerRow[] {
  const { lifts, bests } = drafting.draft(answers);
  const known = lifts.filter(({ key }) => bests.some(({ lift }) => lift === key));
  return [
    {
      label:
        known.length === 0
          ? 'Find out in the first session'
          : known.length < lifts.length
            ? 'Find out the others in the session'
            : 'That is all',
      answers,
    },
    ...lifts.map((lift): AnswerRow => {
      const best = bests.find((one) => one.lift === lift.key);
      return {
        label: lift.name,
        detail: best ? bestText(best, lift, answers) : 'not known',
        answers,
        to: (back) => ({ kind: 'best', lift, field: 'load', load: '', reps: '', back }),
      };
    }),
  ];
}

const bestText = (
  { load, reps }: { readonly load: number; readonly reps: number },
  lift: Lift,
  { unit }: Answers,
): string => `${loadWords(load as Mass, basisOf(lift), unit)} × ${reps}`;

/** The question of now, its rows, and which of them is the usual answer. */
export function askedOf(answers: Answers, coach: Coach) {
  const at = answers.at === 'program' ? 'bests' : answers.at;
  const { asks, words, rows } = ASKED[at];
  const all = rows(answers, coach);
  const same = all.findIndex((row) => !row.isMark && !row.to && isSame(row.answers, answers));
  return { asks, words, rows: all, usual: Math.max(0, same) };
}

/** Answers are plain data, so that their text tells whether they are others. */
const isSame = (one: Answers, other: Answers): boolean =>
  JSON.stringify(one) === JSON.stringify(other);

/** The question after or before the one that is asked; null where there is none. */
export function questionBeside(answers: Answers, by: 1 | -1, coach: Coach): Question | null {
  for (let at = QUESTIONS.indexOf(answers.at) + by; ; at += by) {
    const question = QUESTIONS[at];
    if (question === undefined || question === 'program') return question ?? null;
    if (ASKED[question].applies?.(answers, coach) ?? true) return question;
  }
}
