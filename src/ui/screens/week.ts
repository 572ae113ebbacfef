import { weekdayName } from '../../cut/relaid-week.ts';
import { listScreen } from '../list.ts';
import { type Act, ask } from '../outcome.ts';
import { type ScreenModule, TO_PREVIEW, takingBack } from '../screen.ts';
import type { Screen } from '../ui-state.ts';

type Week = Extract<Screen, { kind: 'week' }>;

const rest = ({ from }: Week) => Array.from({ length: 8 - from }, (_, at) => from + at);

/** The first row forgets what was said; the others turn a day on or off. */
const turn: Act<Week> = (acting) => {
  const { screen } = acting;
  const { days, chosen } = screen;
  const weekday = rest(screen)[chosen - 1];
  if (weekday === undefined) {
    return ask(acting, { do: 'change', change: { kind: 'week', days: null }, to: 'here' });
  }
  const now = days ?? [];
  const next = now.includes(weekday) ? now.filter((day) => day !== weekday) : [...now, weekday];
  const change = { kind: 'week', days: next.length > 0 ? next.toSorted() : null } as const;
  return ask(acting, { do: 'change', change, to: 'here' });
};

export const WEEK_SCREEN: ScreenModule<Week> = {
  ...listScreen<Week>({
    list: ({ screen }) => ({
      title: 'Which days are there this week?',
      words:
        'With fewer than the program has, what the week lacks most comes first; the rest waits, and nothing is doubled up.',
      choices: [
        {
          label: 'as the program says',
          ...(screen.days === null && { detail: 'this week' }),
          effects: [],
        },
        ...rest(screen).map((weekday) => ({
          label: `[${screen.days?.includes(weekday) ? 'x' : ' '}] ${weekdayName(weekday)}`,
          effects: [],
        })),
      ],
    }),
    choose: { label: 'mark', press: turn },
    last: [TO_PREVIEW, ...takingBack()],
  }),
  anew: (screen, { lookBack }) => ({ ...screen, ...lookBack.week() }),
};
