import type { Hurt } from '../../progression/hurts.ts';
import { shortDayWords } from '../../text/day-words.ts';
import { JOINTS, type Joint } from '../../training/lift.ts';
import { listScreen } from '../list.ts';
import { type Act, ask, show } from '../outcome.ts';
import { type KeyRow, type ScreenModule, TO_PREVIEW, takingBack } from '../screen.ts';
import type { Screen } from '../ui-state.ts';

type Hurts = Extract<Screen, { kind: 'hurts' }>;

/** From the preview; in the runner the same letter marks pain. */
export const HURTS_KEY: KeyRow<Extract<Screen, { kind: 'preview' }>> = {
  keys: ['m'],
  label: 'what hurts',
  when: ({ screen }) =>
    screen.today.state === 'open' ? 'A session is open: m marks pain there.' : true,
  footer: 86,
  press: (acting) =>
    show(acting, { kind: 'hurts', hurts: acting.coach.lookBack.hurts(), chosen: 0 }),
};

const hurtOf = (hurts: readonly Hurt[], joint: Joint) => hurts.find((each) => each.joint === joint);

function saysOf(hurt: Hurt | undefined): string {
  if (!hurt) return 'is fine';
  return hurt.forToday
    ? 'hurts today'
    : `hurts since ${shortDayWords(hurt.since.toString())}, until you take it back`;
}

/** Fine, for today, until it is taken back, and fine again. */
const turn: Act<Hurts> = (acting) => {
  const { hurts, chosen } = acting.screen;
  const joint = JOINTS[chosen];
  if (!joint) return ask(acting);
  const hurt = hurtOf(hurts, joint);
  const lasts = !hurt ? 'today' : hurt.forToday ? 'on' : null;
  return ask(acting, { do: 'change', change: { kind: 'hurts', joint, lasts }, to: 'here' });
};

export const HURTS_SCREEN: ScreenModule<Hurts> = {
  ...listScreen<Hurts>({
    list: ({ screen }) => ({
      title: 'What hurts?',
      words:
        'Lifts that load it hard ask first, with others to choose (common practice). Sharp or spreading pain: stop, and get help.',
      choices: JOINTS.map((joint) => ({
        label: joint,
        detail: saysOf(hurtOf(screen.hurts, joint)),
        effects: [],
      })),
    }),
    choose: { label: 'today, on, fine', press: turn },
    last: [TO_PREVIEW, ...takingBack()],
  }),
  anew: (screen, { lookBack }) => ({ ...screen, hurts: lookBack.hurts() }),
};
