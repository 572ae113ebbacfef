import { type Choice, type ChoiceList, listScreen } from '../list.ts';
import { show } from '../outcome.ts';
import { type KeyRow, TO_PREVIEW } from '../screen.ts';
import type { Screen } from '../ui-state.ts';

type Kits = Extract<Screen, { kind: 'kits' }>;

/** From the preview: the rack is taken, the day is somewhere else, or the week has other days. */
export const KITS_KEY: KeyRow<Extract<Screen, { kind: 'preview' }>> = {
  keys: ['j'],
  label: 'other gear, days',
  when: ({ screen }) =>
    screen.today.state === 'open'
      ? 'A session is open: l in the list behind x takes another lift.'
      : true,
  footer: 87,
  press: (acting) => {
    const { screen, coach } = acting;
    const now = screen.today.kit;
    const kits = coach.lookBack.kits();
    const chosen = now === null ? 0 : kits.indexOf(now) + 1;
    return show(acting, { kind: 'kits', kits, now, chosen });
  },
};

export const KITS_SCREEN = listScreen<Kits>({
  list: ({ screen, coach }): ChoiceList => ({
    title: 'What is there today?',
    words: '"holdfast gear --kit NAME" keeps a kit of your own.',
    choices: [
      ...[null, ...screen.kits].map(
        (name): Choice => ({
          label: name ?? 'what I own',
          ...(name === screen.now && { detail: 'today' }),
          effects: [{ do: 'change', change: { kind: 'kit', name }, to: 'preview' }],
        }),
      ),
      {
        label: 'Other days this week',
        detail: 'asks which',
        effects: [],
        to: () => ({ kind: 'week', ...coach.lookBack.week(), chosen: 0 }),
      },
    ],
  }),
  last: [TO_PREVIEW],
});
