import type { PainAnswer } from '../../lifter/coach.ts';
import type { SessionCommand } from '../../session/command.ts';
import { isOver } from '../../session/next-set.ts';
import type { ExerciseState } from '../../session/state.ts';
import { andText } from '../../text/words.ts';
import { type Choice, type ChoiceList, listScreen } from '../list.ts';
import { type Act, type Effect, RUNNER, type Seen, send, show } from '../outcome.ts';
import { accepts, lacksGear } from '../runner/conditions.ts';
import { RUNNER_KEYS } from '../runner/keys.ts';
import { swapScreen } from '../runner/main-keys.ts';
import { takenBack } from '../runner/undo-keys.ts';
import {
  BACK,
  type KeyName,
  type KeyRow,
  labelOf,
  mayNow,
  shownKey,
  TO_RUNNER,
} from '../screen.ts';
import type { Screen } from '../ui-state.ts';
import { loadText } from '../words.ts';

type Exercises = Extract<Screen, { kind: 'exercises' }>;
type Acts = Extract<Screen, { kind: 'acts' }>;
type Swap = Extract<Screen, { kind: 'swap' }>;
type Pain = Extract<Screen, { kind: 'pain' }>;

const sent = (
  commands: readonly SessionCommand[],
  answers: Pick<Extract<Effect, { do: 'send' }>, 'answers'> = {},
): readonly Effect[] => [{ do: 'send', commands, to: RUNNER, ...answers }];

function exerciseList({ model: { session } }: Seen<Exercises>): ChoiceList {
  const rows = (session?.exercises ?? []).map((exercise, index): Choice => {
    const { prescribed, done } = exercise;
    const unit = session?.prescription.unit ?? 'kg';
    const sets = done.map(({ count }) => count).join(', ');
    const load = prescribed.load === null ? '' : loadText(prescribed.load, prescribed, unit);
    const pain = exercise.pain ? 'pain' : '';
    const detail =
      exercise.leftOut && !isDone(exercise)
        ? [`left out${sets && ` after ${sets}`}`, pain].filter(Boolean).join(' · ')
        : [load, sets && `done ${sets}`, pain].filter(Boolean).join(' · ');
    return {
      label: prescribed.name,
      detail,
      effects: sent([{ do: 'choose-exercise', exercise: index }]),
    };
  });
  return { title: 'Exercises', words: 'Space goes on with the chosen one.', choices: rows };
}

/** Is every set of it done, so that nothing can be left out or taken up again? */
const isDone = (exercise: ExerciseState): boolean => isOver({ ...exercise, leftOut: false });

const notDone = ({ screen, model: { session } }: Seen<Exercises>): true | string => {
  const state = session?.exercises[screen.chosen];
  return state && isDone(state) ? `${state.prescribed.name} is done.` : true;
};

const pairing = (
  keys: readonly KeyName[],
  label: string,
  act: 'pair' | 'part-pair',
): KeyRow<Exercises> => ({
  keys,
  label,
  when: (seen) => accepts(seen, { do: act, exercise: seen.screen.chosen }),
  footer: 4,
  press: (acting) => {
    const { screen } = acting;
    return send(acting, [{ do: act, exercise: screen.chosen }], screen);
  },
});

export const EXERCISES_SCREEN = listScreen<Exercises>({
  list: exerciseList,
  first: [
    {
      keys: ['l'],
      label: 'another lift',
      when: notDone,
      footer: 2,
      press: (acting) => swapScreen(acting, acting.screen.chosen),
    },
    {
      keys: ['d'],
      label: 'leave out',
      when: (seen) => accepts(seen, { do: 'skip-exercise', exercise: seen.screen.chosen }),
      footer: 3,
      press: (acting) => {
        const { screen } = acting;
        return send(acting, [{ do: 'skip-exercise', exercise: screen.chosen }], screen);
      },
    },
    pairing(['+', '='], 'alternate with this', 'pair'),
    pairing(['-', '_'], 'take the pair apart', 'part-pair'),
    {
      keys: ['m'],
      label: 'mark pain, note',
      footer: 5,
      press: (acting) => {
        const { chosen: exercise } = acting.screen;
        return show(acting, { kind: 'pain', exercise, moment: 'now', chosen: 0 });
      },
    },
  ],
  last: [
    {
      keys: ['u'],
      label: 'undo',
      footer: 5,
      when: (seen) => accepts(seen, { do: 'undo' }),
      press: (acting) => takenBack(acting, acting.screen),
    },
    TO_RUNNER,
  ],
});

/** Keys of the runner that a finger has in its boxes or needs no list for: the main act, digits. */
const NOT_LISTED: ReadonlySet<string> = new Set(['space', '0', 'backspace', '?']);

/** What the keys of the runner do now, for those who have only a finger. */
function actsNow({ model, phase, coach }: Seen): readonly KeyRow[] {
  const inRunner = { model, phase, coach, screen: RUNNER };
  return RUNNER_KEYS.filter(
    (row) => !NOT_LISTED.has(row.keys[0] ?? '') && mayNow(row, inRunner) === true,
  );
}

/** The act that was chosen, done in the runner as its key would. */
const chosenAct: Act<Acts> = (acting) => {
  const { model, screen } = acting;
  const row = actsNow(acting)[screen.chosen];
  if (!row) return show(acting, RUNNER);
  const inRunner = { ...model, ui: { ...model.ui, screen: RUNNER } };
  return row.press({ ...acting, screen: RUNNER, model: inRunner, name: row.keys[0] ?? '' });
};

/** Everything that a key of the runner does now, by its words. */
export const ACTS_SCREEN = listScreen<Acts>({
  list: (seen) => ({
    title: 'What can be done now',
    words: null,
    choices: actsNow(seen).map((row) => ({
      label: labelOf(row, { ...seen, screen: RUNNER }),
      detail: shownKey(row.keys[0] ?? ''),
      effects: [],
    })),
  }),
  choose: { press: chosenAct },
  last: [TO_RUNNER],
});

function swapList({ screen, model: { session } }: Seen<Swap>): ChoiceList {
  const { exercise, lifts, back } = screen;
  const unit = session?.prescription.unit ?? 'kg';
  const state = session?.exercises[exercise];
  const track = state?.prescribed.track ?? '';
  const pain = back.kind === 'pain' ? back.moment : null;
  const instead = lifts.map(
    (by): Choice => ({
      label: by.name,
      detail: by.load === null ? 'asks for a load' : loadText(by.load, by, unit),
      effects: [
        ...(pain === 'last-time'
          ? [{ do: 'answer-pain', track, answer: 'other-lift' } as const]
          : []),
        ...sent([
          ...(pain === 'now' ? [{ do: 'mark-pain', exercise } as const] : []),
          { do: 'replace', exercise, by, because: 'other-lift' },
        ]),
      ],
    }),
  );
  const out: Choice = {
    label: 'Leave it out today',
    effects: sent([{ do: 'skip-exercise', exercise }]),
  };
  return {
    title: 'Another lift',
    words:
      lifts.length > 0
        ? 'For the same muscles, the most alike first.'
        : 'The catalogue has no other lift like this one.',
    // It cannot begin as it is, so that there has to be a way past it.
    choices: state && lacksGear(state) ? [...instead, out] : instead,
  };
}

export const SWAP_SCREEN = listScreen<Swap>({ list: swapList, last: [BACK] });

function painList({ screen, model, coach }: Seen<Pain>): ChoiceList {
  const { session } = model;
  const { exercise, moment } = screen;
  const state = session?.exercises[exercise];
  if (!state || !session) return { title: 'Pain', words: null, choices: [] };
  const { prescribed } = state;
  const title = `Pain: ${prescribed.name}`;
  const note: Choice = {
    label: 'No pain: write a note',
    effects: [],
    to: { kind: 'note', exercise },
  };
  if (moment === 'now' && isDone(state)) {
    const mark = { label: 'Mark it', detail: 'you are asked before it next time' };
    return {
      title,
      words: WARNING,
      choices: [{ ...mark, effects: sent([{ do: 'mark-pain', exercise }]) }, note],
    };
  }
  const lighter = coach.lighter(prescribed);
  const { unit } = session.prescription;
  const now = moment === 'now';
  // Marked by the answer, so that going back marks nothing.
  const marked: readonly SessionCommand[] = now ? [{ do: 'mark-pain', exercise }] : [];
  const answered = (answer: PainAnswer, commands: readonly SessionCommand[]): readonly Effect[] => [
    ...(moment === 'last-time'
      ? [{ do: 'answer-pain', track: prescribed.track, answer } as const]
      : []),
    ...sent([...marked, ...commands], now ? {} : { answers: prescribed.track }),
  ];
  const rows: Choice[] = [
    {
      label: now ? 'Leave the rest of it out' : 'Leave it out today',
      effects: answered('leave-out', now ? [] : [{ do: 'skip-exercise', exercise }]),
    },
  ];
  if (lighter?.load) {
    rows.push({
      label: 'Go lighter',
      detail: loadText(lighter.load, lighter, unit),
      effects: answered('lighter', [{ do: 'replace', exercise, by: lighter, because: 'lighter' }]),
    });
  }
  if (coach.hasAlternatives(prescribed)) {
    rows.push({
      label: 'Another lift',
      effects: [],
      to: () => {
        const lifts = coach.alternatives(prescribed);
        return { kind: 'swap', exercise, lifts, chosen: 0, back: screen };
      },
    });
  }
  const planned = moment === 'last-time' ? coach.painGone(prescribed) : prescribed;
  rows.push({
    label: 'Go on as planned',
    ...(planned.load !== null && { detail: loadText(planned.load, planned, unit) }),
    effects: answered(
      'go-on',
      moment !== 'last-time'
        ? [{ do: 'choose-exercise', exercise }]
        : [{ do: 'replace', exercise, by: planned, because: 'other-load' }],
    ),
  });
  const words = {
    now: WARNING,
    joint: `${prescribed.name} loads the ${andText(prescribed.hurts ?? [])} hard, and you said that hurts. What shall it be today?`,
    'last-time': `Pain was marked at ${prescribed.name} last time. What shall it be today?`,
  };
  return { title, words: words[moment], choices: now ? [...rows, note] : rows };
}

const WARNING = 'Pain is not effort. A sharp or spreading pain: stop, and get help.';

export const PAIN_SCREEN = listScreen<Pain>({ list: painList, last: [TO_RUNNER] });
