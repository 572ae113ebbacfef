import type { Coach } from '../lifter/coach.ts';
import type { Clock } from '../lifter/ports.ts';
import { isStale } from '../lifter/run-session.ts';
import type { SessionCommand } from '../session/command.ts';
import type { Cue } from '../terminal/cue.ts';
import type { Key } from '../terminal/key-decoder.ts';
import { orProblem, type Problem, problemText } from '../text/problem.ts';
import { cuesBetween } from './cues-between.ts';
import { typedCommands } from './entry.ts';
import { atStart, type Model, type Size } from './model.ts';
import { type Effect, RUNNER } from './outcome.ts';
import { nextWake, phaseOf, placeOf } from './phase.ts';
import { press } from './press.ts';
import { saidOf } from './said.ts';
import { beforeTraining, type Destination, screenAfter } from './screen-after.ts';
import { moduleOf } from './screens.ts';
import type { Screen } from './ui-state.ts';

/** The world outside the screens, as far as they act on it. */
export interface StorePorts {
  readonly coach: Coach;
  readonly clock: Pick<Clock, 'read' | 'after'>;
  readonly play: (cue: Cue) => void;
  /** Hands a key to the text field that has the focus. */
  readonly type: (key: Key) => void;
  readonly leave: (status: number, onto?: 'demo') => void;
}

export interface Store {
  readonly model: () => Model;
  readonly subscribe: (listener: () => void) => () => void;
  readonly key: (key: Key) => void;
  readonly resize: (size: Size) => void;
  /** Keeps a note; an empty one goes back without a word. */
  readonly note: (text: string) => void;
  /** Looks at the clock now: after the process was stopped, or by its own timer. */
  readonly tick: () => void;
  readonly stop: () => void;
}

/** The one store of the screens: keys and time go in, models come out, effects are carried out here. */
export function createStore(start: Screen, size: Size, ports: StorePorts): Store {
  const { coach, clock } = ports;
  const listeners = new Set<() => void>();
  let callOff = () => {};
  let stopped = false;
  let model: Model = {
    ui: atStart(start),
    session: coach.live()?.state() ?? null,
    now: clock.read(),
    size,
    choices: coach.choices(),
    offer: null,
  };
  model = { ...model, offer: offerOf(model, coach) };

  const set = (next: Model) => {
    const before = model;
    model = next;
    for (const cue of cuesBetween(before, next, coach.madeUp)) ports.play(cue);
    schedule();
    for (const listener of listeners) listener();
  };
  const schedule = () => {
    callOff();
    const wake = stopped ? null : nextWake(model);
    if (wake !== null) callOff = clock.after(wake, tick);
  };
  const tick = () => {
    const now = clock.read();
    const typed = startsByItself(model, { ...model, now }) ? typedCommands(model) : [];
    set({ ...model, now });
    // What was typed while the rest ran is saved when the next mini-set starts.
    if (typeof typed !== 'string' && typed.length > 0) carryOut([sending(typed, RUNNER)]);
  };
  const carryOut = (effects: readonly Effect[]) => {
    for (const effect of effects) {
      const problem = perform(effect);
      if (problem === null) continue;
      set({ ...model, ui: { ...model.ui, message: problem } });
      return;
    }
  };
  const shownAfter = (to: Destination): Screen => {
    const { screen } = model.ui;
    if (to !== 'here') return screenAfter(to, coach);
    return moduleOf(screen).anew?.(screen, coach) ?? screen;
  };
  const perform = (effect: Effect): string | null => {
    switch (effect.do) {
      case 'begin': {
        const begun = coach.begin(effect.day, effect.within);
        if ('what' in begun) {
          // What the program asks for now, where that is why; it may be another day.
          const screen = screenAfter('preview', coach);
          set({ ...model, ui: { ...model.ui, screen } });
          return problemText(begun);
        }
        const { exercise } = effect;
        const chosen: SessionCommand[] =
          exercise === null ? [] : [{ do: 'choose-exercise', exercise }];
        const idle = isStale(begun.state(), clock.read());
        return sendAll(chosen, idle ? { kind: 'stale', chosen: 0 } : RUNNER);
      }
      case 'answer-pain': {
        const problem = coach.answerPain(effect.track, effect.answer);
        return problem && problemText(problem);
      }
      case 'send':
        return sendAll(effect.commands, effect.to, effect.answers);
      case 'keep': {
        const problem = coach.keep(effect.choices);
        if (problem) return problemText(problem);
        set({ ...model, choices: coach.choices() });
        if (effect.to) set({ ...model, ui: { ...model.ui, screen: effect.to } });
        return null;
      }
      case 'change': {
        const changed = coach.lookBack.change(effect.change);
        if ('what' in changed) return problemText(changed);
        const screen = shownAfter(effect.to);
        set({ ...model, ui: { ...model.ui, screen, message: changed.said } });
        return null;
      }
      case 'save-program': {
        const saved = coach.editor.save(effect.sheet);
        if ('what' in saved) return problemText(saved);
        const screen = shownAfter(effect.to);
        set({ ...model, ui: { ...model.ui, screen, message: `Written to ${saved.path}.` } });
        return null;
      }
      case 'keep-answers': {
        const problem = coach.drafting.keep(effect.answers);
        return problem && problemText(problem);
      }
      case 'take-draft':
        return toPreview(
          coach.drafting.take(effect.answers),
          'This is your program from now on: e changes it, o what you own.',
        );
      case 'keep-gear':
        return toPreview(coach.drafting.keepGear(effect.gear), 'Kept: this is what you own.');
      case 'type':
        ports.type(effect.key);
        return null;
      case 'leave':
        ports.leave(effect.status, effect.onto);
        return null;
    }
  };
  const toPreview = (problem: Problem | null, message: string): string | null => {
    if (problem) return problemText(problem);
    set({ ...model, ui: { ...model.ui, screen: beforeTraining(coach), message } });
    return null;
  };
  const sendAll = (
    commands: readonly SessionCommand[],
    to?: Screen,
    answers?: string,
  ): string | null => {
    const live = coach.live();
    if (!live) return 'No session is open.';
    const before = live.state();
    for (const command of commands) {
      const problem = live.send(command);
      if (problem) {
        refresh();
        return problemText(problem);
      }
    }
    const said = saidOf(commands, before);
    if (said !== null) model = { ...model, ui: { ...model.ui, message: said } };
    const by = live.state().events.at(-1)?.id;
    if (answers !== undefined && by !== undefined) {
      const answered = [...model.ui.answered, { track: answers, by }];
      model = { ...model, ui: { ...model.ui, answered } };
    }
    refresh(to);
    return null;
  };
  const refresh = (to?: Screen) => {
    const session = coach.live()?.state() ?? null;
    const ui = to ? { ...model.ui, screen: to } : model.ui;
    const next = { ...model, ui, session, now: clock.read() };
    set({ ...next, offer: offerOf(next, coach) });
  };
  schedule();
  return {
    model: () => model,
    subscribe: (listener) => {
      listeners.add(listener);
      return () => void listeners.delete(listener);
    },
    key: (key) => {
      // The program file may be gone, or hold mistakes, at any moment: that is said, and all stays.
      const problem = orProblem(() => {
        const { ui, effects } = press({ ...model, now: clock.read() }, key, coach);
        if (ui !== model.ui) set({ ...model, ui, now: clock.read() });
        carryOut(effects);
        return null;
      });
      if (problem) set({ ...model, ui: { ...model.ui, message: problemText(problem) } });
    },
    resize: (next) => set({ ...model, size: next }),
    note: (text) => {
      const { screen } = model.ui;
      const exercise = screen.kind === 'note' ? screen.exercise : null;
      if (text.trim() === '') refresh(RUNNER);
      else {
        model = { ...model, ui: { ...model.ui, message: 'The note is kept.' } };
        carryOut([sending([{ do: 'note', exercise, text }], RUNNER)]);
      }
    },
    tick,
    stop: () => {
      stopped = true;
      callOff();
    },
  };
}

const sending = (commands: readonly SessionCommand[], to: Screen): Effect => ({
  do: 'send',
  commands,
  to,
});

function startsByItself(before: Model, after: Model): boolean {
  if (!before.session || !after.session) return false;
  const from = phaseOf(before.session, before.now);
  const to = phaseOf(after.session, after.now);
  return from.kind === 'resting' && to.kind === 'lifting' && to.byItself;
}

/**
 * Between sets, about the exercise of now; where the one before is over, about that one until this
 * one is begun.
 */
function offerOf({ session, now }: Model, coach: Coach) {
  if (!session || session.stage.kind === 'lifting') return null;
  const place = placeOf(phaseOf(session, now));
  const last = session.lastDown?.place;
  const isBehind = last && last.role !== 'warm-up' && last.exercise !== place?.exercise;
  if (isBehind && (place === null || place.index === 0)) {
    const behind = coach.offer(last.exercise);
    if (behind?.addsSet) return behind;
  }
  return place && coach.offer(place.exercise);
}
