import { problemText } from '../../text/problem.ts';
import { gearProblems } from '../../training/check-gear.ts';
import { FORM_KEYS, type FormAct } from '../gear/form-keys.ts';
import { bodyLines, saidLines, spokenFormLines } from '../gear/form-lines.ts';
import { formOf } from '../gear/form-state.ts';
import { actOnForm, type FormOutcome, notSaved, typeInForm } from '../gear/press-form.ts';
import { type Acting, ask, type Outcome, show } from '../outcome.ts';
import { HELP, type KeyRow, type ScreenModule } from '../screen.ts';
import type { Screen } from '../ui-state.ts';
import { goTo } from './question.ts';

type GearScreen = Extract<Screen, { kind: 'gear' }>;

/** From the preview. */
export const GEAR_KEY: KeyRow = {
  keys: ['o'],
  label: 'what you own',
  footer: 87,
  press: (acting) => {
    const { gear } = acting.coach.drafting.again();
    return show(acting, { kind: 'gear', form: formOf(gear), back: null });
  },
};

function after(acting: Acting<GearScreen>, { state, effect }: FormOutcome): Outcome {
  const { screen } = acting;
  if (effect === null) return show(acting, { ...screen, form: state });
  if (effect.do === 'leave') return leave(acting);
  const [problem] = gearProblems(effect.gear);
  if (problem) return show(acting, { ...screen, form: notSaved(state, problemText(problem)) });
  if (screen.back === null) return ask(acting, { do: 'keep-gear', gear: effect.gear });
  return goTo(acting, screen.back, { ...screen.back.answers, gear: effect.gear });
}

const leave = (acting: Acting<GearScreen>): Outcome =>
  show(acting, acting.screen.back ?? { kind: 'preview', today: acting.coach.today(), chosen: 0 });

/** Boxes for a finger. */
const TAPS: Readonly<Partial<Record<FormAct, KeyRow['tap']>>> = {
  save: { at: 0 },
  more: { at: 1, says: 'CHANGE' },
  up: { at: 2, says: '↑' },
  down: { at: 3, says: '↓' },
};

/** The whole screen has its own way out and its own help. */
const NOT_OF_FORM: ReadonlySet<FormAct> = new Set(['interrupt', 'help']);

/** Keys of one label stand together in the footer. */
const placeOf = (label: string): number => FORM_KEYS.findIndex((row) => row.label === label);

const rows: readonly KeyRow<GearScreen>[] = FORM_KEYS.filter(
  ({ act }) => !NOT_OF_FORM.has(act),
).map(({ act, keys, label, footer }): KeyRow<GearScreen> => {
  const tap = TAPS[act];
  return {
    keys,
    label,
    ...(footer ? { footer: placeOf(label), pair: label } : {}),
    ...(tap ? { tap } : {}),
    press: (acting) => after(acting, actOnForm(acting.screen.form, act, acting.name)),
  };
});

/** What is owned, thing by thing. */
export const GEAR_SCREEN: ScreenModule<GearScreen> = {
  keys: [...rows, HELP],
  isTyping: ({ screen }) => screen.form.adding !== null,
  otherKey: (acting, key) =>
    acting.screen.form.adding === null
      ? ask(acting)
      : after(acting, typeInForm(acting.screen.form, key)),
  lines: ({ screen: { form } }, columns, rows) => {
    const said = saidLines(form, columns);
    return [...bodyLines(form, columns, rows - said.length), ...said];
  },
  spoken: ({ screen }) => spokenFormLines(screen.form).slice(0, -1),
};
