import { presentLoad } from '../../session/aim.ts';
import { type Mass, massNumber, massOf, readQuantity, type Unit } from '../../training/mass.ts';
import type { ActId } from '../binding.ts';
import { choicesOf } from '../choices-of.ts';
import { mostScroll } from '../long-page.ts';
import { type Act, type Acting, ask, RUNNER, send, show, tell } from '../outcome.ts';
import { placeOf } from '../phase.ts';
import type { Screen } from '../ui-state.ts';

const hereOf = ({ phase, model }: Acting): number | null =>
  (phase && placeOf(phase)?.exercise) ?? model.session?.current ?? null;

const NO_EXERCISE = 'Every exercise is done.';

const onExercise =
  (act: (exercise: number, acting: Acting) => ReturnType<Act>): Act =>
  (acting) => {
    const here = hereOf(acting);
    return here === null ? tell(acting, NO_EXERCISE) : act(here, acting);
  };

const swapFrom = (acting: Acting, exercise: number): ReturnType<Act> => {
  const state = acting.model.session?.exercises[exercise];
  if (!state) return tell(acting, NO_EXERCISE);
  const lifts = acting.bench.alternatives(state.prescribed);
  return show(acting, { kind: 'swap', exercise, lifts, chosen: 0, back: acting.model.ui.screen });
};

const pain: Act = onExercise((exercise, acting) =>
  show(acting, { kind: 'pain', exercise, moment: 'now', chosen: 0 }),
);

const why: Act = (acting) => {
  const { screen } = acting.model.ui;
  const back: Screen = screen;
  if (screen.kind === 'preview') {
    const { exercises } = screen.today.prescription;
    const chosen = exercises[screen.chosen];
    const { unit, short } = screen.today.prescription;
    const cut = short?.cut ?? [];
    const shown = chosen ? [chosen] : exercises;
    return show(acting, { kind: 'why', exercises: shown, unit, cut, back, scroll: 0 });
  }
  const here = hereOf(acting);
  const { session } = acting.model;
  const state = here === null ? undefined : session?.exercises[here];
  if (!session || !state) return tell(acting, NO_EXERCISE);
  const exercises = [state.prescribed];
  const { unit, short } = session.prescription;
  const cut = short?.cut ?? [];
  return show(acting, { kind: 'why', exercises, unit, cut, back: RUNNER, scroll: 0 });
};

/** Moves the choice of a list or of the preview, around the ends. */
const moveChoice =
  (by: 1 | -1): Act =>
  (acting) => {
    const { screen } = acting.model.ui;
    if (!('chosen' in screen)) return ask(acting);
    const count =
      screen.kind === 'preview'
        ? screen.today.prescription.exercises.length
        : (choicesOf(acting.model, acting.bench)?.choices.length ?? 0);
    if (count === 0) return ask(acting);
    return show(acting, { ...screen, chosen: (screen.chosen + by + count) % count });
  };

const page =
  (by: 1 | -1): Act =>
  (acting) => {
    const { screen } = acting.model.ui;
    if (!('scroll' in screen)) return ask(acting);
    const step = acting.name.startsWith('page') ? Math.max(1, acting.model.size.rows - 6) : 1;
    const most = mostScroll(acting.model, acting.bench);
    const scroll = Math.min(most, Math.max(0, screen.scroll + by * step));
    return show(acting, { ...screen, scroll });
  };

/** Reads a page to its end and then leaves it: one key is enough. */
const readOn: Act = (acting) => {
  const { screen } = acting.model.ui;
  if (!('scroll' in screen)) return ask(acting);
  if (screen.scroll < mostScroll(acting.model, acting.bench)) {
    return page(1)({ ...acting, name: 'page-down' });
  }
  if (screen.kind === 'summary') return ask(acting, { do: 'leave', status: 0 });
  return screen.kind === 'why' ? show(acting, screen.back) : tell(acting, 'Answer with y or n.');
};

const choose: Act = (acting) => {
  const { screen } = acting.model.ui;
  if (screen.kind === 'load') return takeLoad(acting);
  const choice =
    'chosen' in screen ? choicesOf(acting.model, acting.bench)?.choices[screen.chosen] : undefined;
  if (!choice) return tell(acting, 'There is nothing to choose.');
  return choice.to ? show(acting, choice.to) : ask(acting, ...choice.effects);
};

/** The load that was typed, once it can be made; else the nearest ones are named. */
function takeLoad(acting: Acting): ReturnType<Act> {
  const { ui, session } = acting.model;
  if (ui.screen.kind !== 'load' || !session) return ask(acting);
  const { exercise, typed } = ui.screen;
  const { unit } = session.prescription;
  const prescribed = session.exercises[exercise]?.prescribed;
  if (!prescribed) return tell(acting, NO_EXERCISE);
  const quantity = readQuantity(typed, unit);
  if (!quantity) return tell(acting, 'Type a load first, such as 72.5.');
  const { below, exact, above } = acting.bench.nearestLoads(prescribed, massOf(quantity));
  if (exact === null) {
    const near = [below, above].filter((one) => one !== null).map((one) => massNumber(one, unit));
    const words = near.length > 0 ? `${near.join(' or ')} ${unit} can be` : 'change the gear first';
    return tell(acting, `${typed} ${unit} cannot be made with your gear; ${words}.`);
  }
  const by = acting.bench.withLoad(prescribed, exact);
  return send(acting, [{ do: 'replace', exercise, by, because: 'other-load' }], RUNNER);
}

const typeLoad: Act = (acting) => {
  const { screen } = acting.model.ui;
  if (screen.kind !== 'load') return ask(acting);
  const sign = acting.name === ',' ? '.' : acting.name;
  const typed = screen.typed + sign;
  return /^-?\d{0,4}(\.\d{0,3})?$/.test(typed) ? show(acting, { ...screen, typed }) : ask(acting);
};

const rubOutLoad: Act = (acting) => {
  const { screen } = acting.model.ui;
  if (screen.kind !== 'load') return ask(acting);
  return show(acting, { ...screen, typed: screen.typed.slice(0, -1) });
};

const stepLoad =
  (by: 1 | -1): Act =>
  (acting) => {
    const { ui, session } = acting.model;
    if (ui.screen.kind !== 'load' || !session) return ask(acting);
    const prescribed = session.exercises[ui.screen.exercise]?.prescribed;
    const unit: Unit = session.prescription.unit;
    const state = session.exercises[ui.screen.exercise];
    const present = (state && presentLoad(state)) ?? (0 as Mass);
    const quantity = readQuantity(ui.screen.typed || massNumber(present, unit), unit);
    if (!prescribed || !quantity) return ask(acting);
    const near = acting.bench.nearestLoads(prescribed, massOf(quantity));
    const next = by > 0 ? near.above : near.below;
    if (next === null)
      return tell(acting, `No ${by > 0 ? 'heavier' : 'lighter'} load can be made.`);
    return show(acting, { ...ui.screen, typed: massNumber(next, unit) });
  };

const leaveOut: Act = (acting) => {
  const { screen } = acting.model.ui;
  if (screen.kind !== 'exercises') return ask(acting);
  return send(acting, [{ do: 'skip-exercise', exercise: screen.chosen }], screen);
};

/** What keys do to the plan of the session, and to the lists that belong to it. */
export const PLAN_ACTS = {
  pain,
  why,
  choose,
  'change-load': onExercise((exercise, acting) =>
    show(acting, { kind: 'load', exercise, purpose: 'change', typed: '' }),
  ),
  exercises: (acting) => show(acting, { kind: 'exercises', chosen: hereOf(acting) ?? 0 }),
  swap: (acting) => {
    const { screen } = acting.model.ui;
    return screen.kind === 'exercises' ? swapFrom(acting, screen.chosen) : ask(acting);
  },
  'leave-out': leaveOut,
  note: (acting) => show(acting, { kind: 'note', exercise: hereOf(acting) }),
  finish: (acting) => show(acting, { kind: 'finish', chosen: 0 }),
  'choice-up': moveChoice(-1),
  'choice-down': moveChoice(1),
  'page-up': page(-1),
  'page-down': page(1),
  'read-on': readOn,
} satisfies Partial<Record<ActId, Act>>;

/** The same keys on the screen that asks for a load. */
export const LOAD_ACTS = {
  type: typeLoad,
  'rub-out': rubOutLoad,
  more: stepLoad(1),
  less: stepLoad(-1),
} satisfies Partial<Record<ActId, Act>>;
