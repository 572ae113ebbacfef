import type { ActId } from '../binding.ts';
import { choicesOf } from '../choices-of.ts';
import { correctionOf } from '../correction.ts';
import { movedOn, rubbedOut, stepped, typedInto } from '../draft.ts';
import { draftNumbers } from '../entry.ts';
import { type Act, type Acting, ask, show, tell } from '../outcome.ts';
import type { Typing } from '../ui-state.ts';

/** From the preview: every lift that has results. */
export const showHistory: Act = (acting) =>
  show(acting, { kind: 'lifts', lifts: acting.bench.watch.lifts(''), query: '', chosen: 0 });

const openLift: Act = (acting) => {
  const { screen } = acting.model.ui;
  const chosen = screen.kind === 'lifts' ? screen.lifts[screen.chosen] : undefined;
  if (screen.kind !== 'lifts' || !chosen) return tell(acting, 'There is nothing to choose.');
  const { query } = screen;
  const results = acting.bench.watch.results(chosen.lift, query);
  return show(acting, { kind: 'results', lift: chosen.lift, results, query, chosen: 0 });
};

const backToLifts: Act = (acting) => {
  const { screen } = acting.model.ui;
  if (screen.kind !== 'results') return ask(acting);
  const { query, lift } = screen;
  const lifts = acting.bench.watch.lifts(query);
  const chosen = Math.max(
    0,
    lifts.findIndex((each) => each.lift === lift),
  );
  return show(acting, { kind: 'lifts', lifts, query, chosen });
};

/** A whole screen of rows up or down, and not around the ends. */
const pageChoice =
  (by: 1 | -1): Act =>
  (acting) => {
    const { screen } = acting.model.ui;
    const rows = choicesOf(acting.model, acting.bench)?.choices.length ?? 0;
    if (!('chosen' in screen) || rows === 0) return ask(acting);
    const step = Math.max(1, acting.model.size.rows - 8);
    const chosen = Math.min(rows - 1, Math.max(0, screen.chosen + by * step));
    return show(acting, { ...screen, chosen });
  };

const search: Act = (acting) => {
  const { screen } = acting.model.ui;
  return screen.kind === 'lifts' || screen.kind === 'results'
    ? show(acting, { kind: 'search', typed: screen.query, back: screen })
    : ask(acting);
};

/** Any text key on the search screen. */
export const typeSearch = (acting: Acting, text: string): ReturnType<Act> => {
  const { screen } = acting.model.ui;
  if (screen.kind !== 'search') return ask(acting);
  const typed = (screen.typed + text).slice(0, LONGEST_SEARCH);
  return show(acting, { ...screen, typed });
};

const LONGEST_SEARCH = 60;

const rubOutSearch: Act = (acting) => {
  const { screen } = acting.model.ui;
  if (screen.kind !== 'search') return ask(acting);
  return show(acting, { ...screen, typed: screen.typed.slice(0, -1) });
};

const find: Act = (acting) => {
  const { screen } = acting.model.ui;
  if (screen.kind !== 'search') return ask(acting);
  const { back, typed } = screen;
  const query = typed.trim();
  const { watch } = acting.bench;
  if (back.kind === 'results') {
    const results = watch.results(back.lift, query);
    if (results.length > 0) return show(acting, { ...back, results, query, chosen: 0 });
  }
  return show(acting, { kind: 'lifts', lifts: watch.lifts(query), query, chosen: 0 });
};

const correct: Act = (acting) => {
  const { screen } = acting.model.ui;
  if (screen.kind !== 'past-session') return ask(acting);
  const set = screen.past.row.result.sets[screen.chosen];
  if (!set) return tell(acting, 'A session has no numbers of its own; choose one of its sets.');
  return show(acting, { kind: 'correct', set, field: 'count', typed: {}, back: screen });
};

const remove: Act = (acting) => {
  const { screen } = acting.model.ui;
  if (screen.kind !== 'past-session') return ask(acting);
  const { past, chosen } = screen;
  const { date, exercise } = past.row.result;
  const set = past.row.result.sets[chosen];
  const words = set
    ? `Set ${chosen + 1} of ${exercise.name}, ${date.toString()}`
    : `The session of ${date.toString()}, with every lift in it`;
  return show(acting, {
    kind: 'delete',
    of: set?.id ?? past.session,
    words,
    chosen: 0,
    back: screen,
  });
};

const onCorrection =
  (change: (draft: Typing, acting: Acting) => Typing | string): Act =>
  (acting) => {
    const { screen } = acting.model.ui;
    if (screen.kind !== 'correct') return ask(acting);
    const next = change(correctionOf(screen).draft, acting);
    if (typeof next === 'string') return tell(acting, next);
    return show(acting, { ...screen, field: next.field, typed: next.typed });
  };

const correctionHere = ({ model }: Acting) => {
  const { screen } = model.ui;
  if (screen.kind !== 'correct') throw new Error('No set is being corrected.');
  return { target: correctionOf(screen).target, unit: screen.back.past.unit };
};

const step = (by: 1 | -1): Act =>
  onCorrection((draft, acting) => {
    const { target, unit } = correctionHere(acting);
    return stepped(draft, target, unit, by, acting.bench);
  });

const moveField = (by: 1 | -1): Act =>
  onCorrection((draft, acting) => movedOn(draft, correctionHere(acting).target, by));

const save: Act = (acting) => {
  const { screen } = acting.model.ui;
  if (screen.kind !== 'correct') return ask(acting);
  const numbers = draftNumbers(correctionOf(screen).draft, screen.back.past.unit);
  if (typeof numbers === 'string') return tell(acting, numbers);
  if (numbers === null) return tell(acting, 'Nothing was typed; the set stays as it is.');
  const change = { kind: 'correct', set: screen.set.id, numbers } as const;
  return ask(acting, { do: 'change', change, to: 'results' });
};

const takeBack: Act = (acting) =>
  ask(acting, { do: 'change', change: { kind: 'take-back' }, to: 'here' });

/** What keys do on the screens of the history. */
export const LIFTS_ACTS = {
  choose: openLift,
  'page-up': pageChoice(-1),
  'page-down': pageChoice(1),
} satisfies Partial<Record<ActId, Act>>;

export const RESULTS_ACTS = {
  back: backToLifts,
  'page-up': pageChoice(-1),
  'page-down': pageChoice(1),
} satisfies Partial<Record<ActId, Act>>;

export const PAST_SESSION_ACTS = { choose: correct } satisfies Partial<Record<ActId, Act>>;

export const CORRECT_ACTS = {
  type: onCorrection((draft, { name }) => typedInto(draft, name)),
  'rub-out': onCorrection((draft, acting) => {
    const { target, unit } = correctionHere(acting);
    return rubbedOut(draft, target, unit);
  }),
  more: step(1),
  less: step(-1),
  'next-field': moveField(1),
  'field-before': moveField(-1),
  save,
} satisfies Partial<Record<ActId, Act>>;

export const SEARCH_ACTS = { save: find, 'rub-out': rubOutSearch } satisfies Partial<
  Record<ActId, Act>
>;

export const PAST_ACTS = {
  history: showHistory,
  search,
  'take-back': takeBack,
  correct,
  delete: remove,
} satisfies Partial<Record<ActId, Act>>;
