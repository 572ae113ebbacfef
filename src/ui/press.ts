import type { Key } from '../terminal/key-decoder.ts';
import { elapsedMs } from '../training/reading.ts';
import type { Bench } from '../workbench/bench.ts';
import { ENTRY_ACTS } from './acts/entry-acts.ts';
import {
  CORRECT_ACTS,
  LIFTS_ACTS,
  PAST_ACTS,
  PAST_SESSION_ACTS,
  RESULTS_ACTS,
  SEARCH_ACTS,
  typeSearch,
} from './acts/past-acts.ts';
import { LOAD_ACTS, PLAN_ACTS } from './acts/plan-acts.ts';
import {
  ADD_LIFT_ACTS,
  CHANGES_ACTS,
  PROGRAM_ACTS,
  SHEET_ACTS,
  typeLift,
} from './acts/program-acts.ts';
import { ADVICE_ACTS, REVIEW_ACTS, WEIGH_ACTS, WEIGHT_QUESTION_ACTS } from './acts/review-acts.ts';
import { SCREEN_ACTS } from './acts/screen-acts.ts';
import { SET_ACTS } from './acts/set-acts.ts';
import { type ActId, DIGITS } from './binding.ts';
import { actsNow, bindingFor, bindingsOf, keyName } from './keymap.ts';
import { type Act, type Acting, ask, type Outcome, RUNNER, show, tell } from './outcome.ts';
import { phaseOf } from './phase.ts';
import { targetAt, targetsOf } from './taps.ts';
import { isTooSmall } from './too-small.ts';
import type { Model, ScreenKind } from './ui-state.ts';

const ACTS: Readonly<Record<ActId, Act>> = {
  ...SCREEN_ACTS,
  ...SET_ACTS,
  ...ENTRY_ACTS,
  ...PLAN_ACTS,
  ...REVIEW_ACTS,
  ...PAST_ACTS,
  ...PROGRAM_ACTS,
};

/** Screens on which an act means something of its own. */
const SPECIAL: Readonly<Partial<Record<ScreenKind, Partial<Record<ActId, Act>>>>> = {
  load: LOAD_ACTS,
  preview: { main: SCREEN_ACTS.begin },
  'weight-question': WEIGHT_QUESTION_ACTS,
  advice: ADVICE_ACTS,
  weigh: WEIGH_ACTS,
  lifts: LIFTS_ACTS,
  results: RESULTS_ACTS,
  'past-session': PAST_SESSION_ACTS,
  correct: CORRECT_ACTS,
  search: SEARCH_ACTS,
  program: SHEET_ACTS,
  changes: CHANGES_ACTS,
  'add-lift': ADD_LIFT_ACTS,
  note: { save: SCREEN_ACTS.type },
  acts: { choose: (acting) => chosenAct(acting) },
};

/** What a key leads to: the next state of the screens, and what is asked of the world. */
export function press(model: Model, key: Key, bench: Bench): Outcome {
  const { ui, effects } = outcomeOf(model, key, bench);
  return { ui: { ...ui, lastKey: { name: keyName(key) ?? '', at: model.now } }, effects };
}

function outcomeOf(model: Model, key: Key, bench: Bench): Outcome {
  const phase = model.session ? phaseOf(model.session, model.now) : null;
  const acting: Acting = { model, phase, bench, name: keyName(key) ?? '' };
  if (model.ui.help && acting.name !== 'ctrl-c') return closeHelp(acting);
  if (key.kind === 'tap') return tapped(acting, key.column, key.row);
  const { kind } = model.ui.screen;
  const binding = bindingFor(kind, acting.name);
  if (!binding) return unbound(acting, key);
  if (isHeld(model, acting.name, key)) {
    return tell(acting, `${acting.name} is held or bounced; press it once.`);
  }
  const may = binding.when(model, phase);
  return may === true ? perform(acting, binding.act) : tell(acting, may);
}

/** The same key sooner than this is no second press, where the terminal does not tell. Ours. */
const BOUNCE_MS = 200;

/** Keys that do more when they are held: those that move or type. */
const MAY_REPEAT: ReadonlySet<string> = new Set([
  ...['up', 'down', 'left', 'right', 'page-up', 'page-down', 'tab', 'shift-tab'],
  ...['backspace', 'delete', '+', '=', '-', '_', '.', ',', '[', ']', ...DIGITS],
]);

/** Is a key that starts, saves, closes or chooses something held down, or does it bounce? */
function isHeld({ ui, now }: Model, name: string, key: Key): boolean {
  if (MAY_REPEAT.has(name)) return false;
  if ('repeat' in key) return true;
  const { lastKey } = ui;
  return (
    lastKey?.name === name && now.wall >= lastKey.at.wall && elapsedMs(lastKey.at, now) < BOUNCE_MS
  );
}

/** The act that was chosen from the list, done in the runner as its key would. */
function chosenAct(acting: Acting): Outcome {
  const { model } = acting;
  const { screen } = model.ui;
  const chosen = screen.kind === 'acts' ? actsNow(model)[screen.chosen] : undefined;
  if (!chosen) return show(acting, RUNNER);
  const inRunner = { ...acting, model: { ...model, ui: { ...model.ui, screen: RUNNER } } };
  return perform(inRunner, chosen.act);
}

const perform = (acting: Acting, act: ActId): Outcome =>
  (SPECIAL[acting.model.ui.screen.kind]?.[act] ?? ACTS[act])(acting);

/** Any key but the arrows takes the help away; what it would do otherwise waits for the next press. */
function closeHelp(acting: Acting): Outcome {
  const { ui } = acting.model;
  const by = { down: 1, up: -1, 'page-down': 8, 'page-up': -8 }[acting.name];
  const help = by === undefined ? null : { scroll: Math.max(0, (ui.help?.scroll ?? 0) + by) };
  return { ui: { ...ui, help }, effects: [] };
}

function tapped(acting: Acting, column: number, row: number): Outcome {
  const { model, phase } = acting;
  if (!model.choices.taps || isTooSmall(model.size)) return ask(acting);
  const target = targetAt(targetsOf(model, phase), model.size, column, row);
  // Above the boxes of the runner a finger finds everything else.
  if (!target && model.ui.screen.kind === 'runner')
    return show(acting, { kind: 'acts', chosen: 0 });
  const binding = target && bindingsOf(model.ui.screen.kind).find(({ act }) => act === target.act);
  if (!binding) return ask(acting);
  const may = binding.when(model, phase);
  // A finger turns pages; one line at a time is for keys.
  const name = binding.keys.find((key) => key.startsWith('page')) ?? binding.keys[0] ?? '';
  return may === true ? perform({ ...acting, name }, binding.act) : tell(acting, may);
}

/** Where text is typed, every other key is text. */
function unbound(acting: Acting, key: Key): Outcome {
  const { kind } = acting.model.ui.screen;
  if (kind === 'note') return ask(acting, { do: 'type', key });
  if (kind === 'search' && key.kind === 'text') return typeSearch(acting, key.text);
  if (kind === 'search' && acting.name === 'space') return typeSearch(acting, ' ');
  if (kind === 'add-lift' && key.kind === 'text') return typeLift(acting, key.text);
  if (kind === 'add-lift' && acting.name === 'space') return typeLift(acting, ' ');
  return unknown(acting);
}

/** A key that means nothing here is no error, but the lifter should see that it was heard. */
function unknown(acting: Acting): Outcome {
  return acting.name === '' || acting.model.ui.screen.kind !== 'runner'
    ? ask(acting)
    : tell(acting, `${acting.name} does nothing here; ? shows the keys.`);
}
