import type { Choices } from '../../lifter/coach.ts';
import { type Choice, type ChoiceList, listScreen } from '../list.ts';
import type { Effect, Seen } from '../outcome.ts';
import { BACK } from '../screen.ts';
import type { Screen } from '../ui-state.ts';

type Settings = Extract<Screen, { kind: 'settings' }>;

const SWITCHES = [
  ['bell', 'Bell', 'at both ends of a rest'],
  ['flash', 'Flash of the screen', 'at the same moments'],
  ['speech', 'Spoken words', 'by the speech program of this machine'],
  ['notification', 'Desktop notification', 'where the terminal shows them'],
  ['taps', 'Taps on the screen', 'above the boxes: all that can be done; selecting needs shift'],
] as const;

function settingsList({ model, screen }: Seen<Settings>): ChoiceList {
  const { choices } = model;
  const keep = (next: Choices, row: number): readonly Effect[] => [
    { do: 'keep', choices: next, to: { ...screen, chosen: row } },
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

export const SETTINGS_SCREEN = listScreen<Settings>({ list: settingsList, last: [BACK] });
