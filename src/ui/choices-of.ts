import type { SessionCommand } from '../session/command.ts';
import type { SessionState } from '../session/state.ts';
import type { Bench, Choices, PainAnswer } from '../workbench/bench.ts';
import { openWords } from '../workbench/run-session.ts';
import { asPlannedTexts, confirming } from './as-planned.ts';
import type { Effect } from './effect.ts';
import { setsPutDown } from './entry.ts';
import { actsNow } from './keymap.ts';
import { type Choice, type ChoiceList, RUNNER } from './outcome.ts';
import { pastChoices } from './past-choices.ts';
import type { Model, Screen, SheetScreen } from './ui-state.ts';
import { loadText } from './words.ts';

const sent = (commands: readonly SessionCommand[], to: Screen = RUNNER): readonly Effect[] => [
  { do: 'send', commands, to },
];

/** The list of a screen that is one; null for the others. */
export function choicesOf(model: Model, bench: Bench): ChoiceList | null {
  const { ui, session, choices } = model;
  const { screen } = ui;
  switch (screen.kind) {
    case 'exercises':
      return exerciseList(session);
    case 'acts':
      return actList(model);
    case 'swap':
      return swapList(screen, session);
    case 'pain':
      return painList(screen, session, bench);
    case 'finish':
      return finishList(session);
    case 'discard':
      return discardList(session, screen.back);
    case 'stale':
      return staleList(session);
    case 'settings':
      return settingsList(choices, screen.back);
    case 'unsaved':
      return unsavedList(screen.back);
    default:
      return pastChoices(screen, bench.watch.unit());
  }
}

/** Everything that a key of the runner does now, by its words. */
const actList = (model: Model): ChoiceList => ({
  title: 'What can be done now',
  words: null,
  choices: actsNow(model).map(({ label, key }) => ({ label, detail: key, effects: [] })),
});

const unsavedList = (back: SheetScreen): ChoiceList => ({
  title: 'Save the changes?',
  words: 'The file is as it was until they are saved.',
  choices: [
    { label: 'Save them', effects: [{ do: 'save-program', sheet: back.sheet }] },
    { label: 'Throw them away', effects: [], to: back.back },
    { label: 'Go on changing', effects: [], to: back },
  ],
});

function exerciseList(session: Model['session']): ChoiceList {
  const rows = (session?.exercises ?? []).map((exercise, index): Choice => {
    const { prescribed, done } = exercise;
    const unit = session?.prescription.unit ?? 'kg';
    const sets = done.map(({ count }) => count).join(', ');
    const load = prescribed.load === null ? '' : loadText(prescribed.load, prescribed, unit);
    const detail = exercise.leftOut
      ? `left out${sets && ` after ${sets}`}`
      : [load, sets && `done ${sets}`].filter(Boolean).join(' · ');
    return {
      label: prescribed.name,
      detail,
      effects: sent([{ do: 'choose-exercise', exercise: index }]),
    };
  });
  return { title: 'Exercises', words: 'Space goes on with the chosen one.', choices: rows };
}

function swapList(
  screen: Extract<Screen, { kind: 'swap' }>,
  session: Model['session'],
): ChoiceList {
  const { exercise, lifts, back } = screen;
  const unit = session?.prescription.unit ?? 'kg';
  const track = session?.exercises[exercise]?.prescribed.track ?? '';
  const pain = back.kind === 'pain' ? back.moment : null;
  return {
    title: 'Another lift',
    words:
      lifts.length > 0
        ? 'Same muscles, same kind of load.'
        : 'The catalogue has no other lift like this one.',
    choices: lifts.map((by) => ({
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
    })),
  };
}

function painList(
  screen: Extract<Screen, { kind: 'pain' }>,
  session: Model['session'],
  bench: Bench,
): ChoiceList {
  const { exercise, moment } = screen;
  const state = session?.exercises[exercise];
  if (!state || !session) return { title: 'Pain', words: null, choices: [] };
  const { prescribed } = state;
  const lighter = bench.lighter(prescribed);
  const lifts = bench.alternatives(prescribed);
  const { unit } = session.prescription;
  const now = moment === 'now';
  // Marked by the answer, so that going back marks nothing.
  const marked: readonly SessionCommand[] = now ? [{ do: 'mark-pain', exercise }] : [];
  const answered = (answer: PainAnswer, commands: readonly SessionCommand[]): readonly Effect[] => [
    ...(now ? [] : [{ do: 'answer-pain', track: prescribed.track, answer } as const]),
    ...sent([...marked, ...commands]),
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
  if (lifts.length > 0) {
    rows.push({
      label: 'Another lift',
      effects: [],
      to: { kind: 'swap', exercise, lifts, chosen: 0, back: screen },
    });
  }
  const planned = now ? prescribed : bench.painGone(prescribed);
  rows.push({
    label: 'Go on as planned',
    ...(planned.load !== null && { detail: loadText(planned.load, planned, unit) }),
    effects: answered(
      'go-on',
      now
        ? [{ do: 'choose-exercise', exercise }]
        : [{ do: 'replace', exercise, by: planned, because: 'other-load' }],
    ),
  });
  const words = {
    now: 'Pain is not effort. A sharp or spreading pain: stop, and get help.',
    'last-time': `Pain was marked at ${prescribed.name} last time. What shall it be today?`,
  };
  return { title: `Pain: ${prescribed.name}`, words: words[moment], choices: rows };
}

function finishList(session: SessionState | null): ChoiceList {
  const planned = session ? asPlannedTexts(session) : [];
  const words = planned.length > 0 ? [`Saved as planned: ${planned.join('; ')}.`] : [];
  const commands: SessionCommand[] = [...confirming(session), { do: 'close', how: 'as-it-is' }];
  const close: Choice = {
    label: planned.length > 0 ? 'Close it, these numbers are right' : 'Close it as it is',
    detail: 'an unfinished exercise neither moves up nor counts as a miss',
    effects: sent(commands, { kind: 'summary', scroll: 0 }),
  };
  return {
    title: 'Finish early?',
    words: words.join(' ') || null,
    choices: [
      { label: 'Go on with the session', effects: [], to: RUNNER },
      close,
      discarding({ kind: 'finish', chosen: 2 }),
    ],
  };
}

const discarding = (back: Screen): Choice => ({
  label: 'Discard the session',
  detail: 'asks once more',
  effects: [],
  to: { kind: 'discard', chosen: 0, back },
});

/** The one act that no key takes back. */
function discardList(session: SessionState | null, back: Screen): ChoiceList {
  const sets = session ? setsPutDown(session).length : 0;
  return {
    title: 'Discard the session?',
    words:
      sets === 0
        ? 'Nothing was done in it yet.'
        : `${sets} ${sets === 1 ? 'set' : 'sets'} would not count, and no key brings them back.`,
    choices: [
      { label: 'Keep it', effects: [], to: back },
      {
        label: 'Discard it',
        effects: [
          { do: 'send', commands: [{ do: 'discard' }] },
          { do: 'leave', status: 0 },
        ],
      },
    ],
  };
}

const staleList = (session: SessionState | null): ChoiceList => ({
  title: 'A session is still open',
  words: `${session ? `${openWords(session)} ` : ''}Nothing was done in it for over twelve hours.`,
  choices: [
    { label: 'Go on with it', effects: [], to: RUNNER },
    {
      label: 'Close it as it is',
      effects: sent([{ do: 'close', how: 'as-it-is' }], { kind: 'summary', scroll: 0 }),
    },
    discarding({ kind: 'stale', chosen: 2 }),
  ],
});

const SWITCHES = [
  ['bell', 'Bell', 'at both ends of a rest'],
  ['flash', 'Flash of the screen', 'at the same moments'],
  ['speech', 'Spoken words', 'by the speech program of this machine'],
  ['notification', 'Desktop notification', 'where the terminal shows them'],
  ['taps', 'Taps on the screen', 'above the boxes: all that can be done; selecting needs shift'],
] as const;

function settingsList(choices: Choices, back: Screen): ChoiceList {
  const keep = (next: Choices, row: number): readonly Effect[] => [
    { do: 'keep', choices: next, to: { kind: 'settings', back, chosen: row } },
  ];
  const rows = SWITCHES.map(([key, label, detail], row): Choice => {
    const on = choices[key];
    const effects = keep({ ...choices, [key]: !on }, row);
    return { label: `${on ? '[x]' : '[ ]'} ${label}`, detail, effects };
  });
  const few = choices.spoken === 'few';
  const words: Choice = {
    label: `${few ? '[ ]' : '[x]'} Whole sentences`,
    detail: 'spoken: the lift, load, aim and plates; else only the load',
    effects: keep({ ...choices, spoken: few ? 'full' : 'few' }, SWITCHES.length),
  };
  const plain = choices.theme === 'plain';
  const theme: Choice = {
    label: `${plain ? '[ ]' : '[x]'} Colour`,
    detail: 'on marks and lines; words say everything too',
    effects: keep({ ...choices, theme: plain ? 'colour' : 'plain' }, SWITCHES.length + 1),
  };
  return { title: 'Sounds and screen', words: null, choices: [...rows, words, theme] };
}
