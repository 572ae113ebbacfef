import type { Coach } from '../../lifter/coach.ts';
import { type ChoiceList, listScreen } from '../list.ts';
import { type Act, RUNNER, send, show, tell } from '../outcome.ts';
import { TO_RUNNER } from '../screen.ts';
import type { Screen } from '../ui-state.ts';

type LessTime = Extract<Screen, { kind: 'less-time' }>;

/** Minutes that somebody in a hurry thinks in. */
const TIMES = [60, 45, 30, 20, 15, 10, 5] as const;

const timesFor = ({ minutes }: LessTime) => TIMES.filter((time) => time < minutes);

/** Asked of a session that runs, the time nearest to `wish` chosen where one is given. */
export function lessTimeScreen(coach: Pick<Coach, 'minutesLeft'>, wish: number | null): LessTime {
  const screen: LessTime = { kind: 'less-time', minutes: coach.minutesLeft(), chosen: 0 };
  const at = wish === null ? 0 : timesFor(screen).findIndex((time) => time <= wish);
  return { ...screen, chosen: Math.max(0, at) };
}

/** Asks how much there is, where that can still be less. */
export const askLessTime: Act = (acting) => {
  const screen = lessTimeScreen(acting.coach, null);
  return timesFor(screen).length === 0 ? tell(acting, NOTHING_TO_CUT) : show(acting, screen);
};

const NOTHING_TO_CUT = 'There is hardly anything left to cut.';

/** Sets go before exercises, isolation before compounds, as on a day that begins short. */
const cutTo: Act<LessTime> = (acting) => {
  const { screen, coach } = acting;
  const minutes = timesFor(screen)[screen.chosen];
  if (minutes === undefined) return tell(acting, NOTHING_TO_CUT);
  if (!coach.live()) return show(acting, RUNNER);
  return send(acting, [coach.shortenTo(minutes)], RUNNER);
};

export const LESS_TIME_SCREEN = listScreen<LessTime>({
  list: ({ screen }): ChoiceList => ({
    title: 'How much time is left?',
    words: `What is left takes about ${screen.minutes} min. Less of it counts as planned, too.`,
    choices: timesFor(screen).map((time) => ({ label: `${time} minutes`, effects: [] })),
  }),
  choose: { press: cutTo },
  last: [TO_RUNNER],
});
