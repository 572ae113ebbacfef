import type { ReviewPage } from '../../lifter/look-back.ts';
import { type ChoiceList, listScreen } from '../list.ts';
import { type Act, ask, type Seen, show, tell } from '../outcome.ts';
import { BACK, type KeyRow, type ScreenModule } from '../screen.ts';
import type { Screen } from '../ui-state.ts';
import { goalScreen, mayAim } from './goal.ts';

type Plan = Extract<Screen, { kind: 'plan' }>;

interface PlanRow {
  readonly label: string;
  readonly detail?: string;
  /** True, or why it cannot be now. */
  readonly may: true | string;
  readonly act: Act<Plan>;
}

/** From the review: what the lifter wants without being advised to. */
export const PLAN_KEY: KeyRow<Extract<Screen, { kind: 'review' }>> = {
  keys: ['c'],
  label: 'change the plan',
  footer: 4,
  press: (acting) => {
    const { screen: back, coach } = acting;
    return show(acting, { kind: 'plan', isEnding: false, mayAim: mayAim(coach), chosen: 0, back });
  },
};

/** To who must not be led through a cut, nothing is said of one. */
function rowsOf(seen: Seen<Plan>): readonly PlanRow[] {
  const { isEnding, mayAim: may, back } = seen.screen;
  const { page } = back;
  if (isEnding) return [GO_ON, wish('End it', page, 'end')];
  const lighter = wish('A lighter week', page, 'lighterWeek');
  if (seen.coach.lookBack.weightAdvice() !== 'yes') return [lighter];
  const end = wish('End the cut', page, 'end');
  return [
    { label: 'Aim for a weight or a day', may, act: toGoal },
    lighter,
    wish('Pause the cut', page, 'pause'),
    { ...end, ...(end.may === true && { detail: 'asks once more' }), act: askOnceMore },
  ];
}

const toGoal: Act<Plan> = (acting) => {
  const goal = goalScreen(acting);
  return typeof goal === 'string' ? tell(acting, goal) : show(acting, goal);
};

const askOnceMore: Act<Plan> = (acting) =>
  show(acting, { ...acting.screen, isEnding: true, chosen: 0 });

const GO_ON: PlanRow = {
  label: 'Go on with the cut',
  may: true,
  act: (acting) => show(acting, acting.screen.back),
};

function wish(label: string, { wishes }: ReviewPage, wanted: keyof ReviewPage['wishes']): PlanRow {
  const asked = wishes[wanted];
  if ('why' in asked) return { label, may: asked.why, act: (acting) => tell(acting, asked.why) };
  const change = { kind: 'answer', finding: asked.finding, answer: 'yes', edit: null } as const;
  return { label, may: true, act: (acting) => ask(acting, { do: 'change', change, to: 'review' }) };
}

const choose: Act<Plan> = (acting) => {
  const row = rowsOf(acting)[acting.screen.chosen];
  if (!row) return ask(acting);
  return row.may === true ? row.act(acting) : tell(acting, row.may);
};

export const PLAN_SCREEN: ScreenModule<Plan> = listScreen<Plan>({
  list: (seen): ChoiceList => ({
    title: seen.screen.isEnding ? 'End the cut?' : 'What is to change?',
    words: seen.screen.isEnding ? 'It is trained as maintenance from then on.' : null,
    choices: rowsOf(seen).map(({ label, detail, may }) => ({
      label,
      detail: may === true ? (detail ?? '') : may,
      effects: [],
    })),
  }),
  choose: { press: choose },
  last: [BACK],
});
