import type { Key } from '../../terminal/key-decoder.ts';
import { problemText, Refusal } from '../../text/problem.ts';
import { safeText } from '../../text/safe-text.ts';
import { GEAR_CHANGES } from '../../training/change-gear.ts';
import type { Gear } from '../../training/gear.ts';
import { keyName } from '../screen.ts';
import { FORM_KEYS, type FormAct } from './form-keys.ts';
import { rowsOf } from './form-rows.ts';
import { chosenField, chosenRow, type FormState, isChanged } from './form-state.ts';

/** What a key asks of the world outside the form. */
export type FormEffect =
  | { readonly do: 'save'; readonly gear: Gear }
  | { readonly do: 'leave'; readonly status: number };

export interface FormOutcome {
  readonly state: FormState;
  readonly effect: FormEffect | null;
}

type Act = (state: FormState, name: string) => FormState | FormOutcome;

/** Longest number, and longest list, that is typed in one piece. */
const LONGEST_NUMBER = 8;
const LONGEST_LIST = 200;

/** What a key leads to: the next state of the form, and what is asked of the world. */
export function pressForm(state: FormState, key: Key): FormOutcome {
  const name = keyName(key) ?? '';
  if (name === 'ctrl-c') return { state, effect: { do: 'leave', status: 130 } };
  if (state.help) return quiet({ ...state, help: false });
  if (state.adding) return typeInForm(state, key);
  const act = FORM_KEYS.find(({ keys }) => keys.includes(name))?.act;
  return act ? actOnForm(state, act, name) : quiet(state);
}

/** What one of the form's acts leads to; `name` is the key, which may be a digit. */
export function actOnForm(state: FormState, act: FormAct, name: string): FormOutcome {
  const fresh = { ...state, message: null, asked: false };
  const ready = act in KEEPS_TYPING ? fresh : taken(fresh);
  if (ready.message !== null) return quiet(ready);
  // What is typed is first seen where it stands.
  if (act === 'save' && state.typed !== null) return quiet(ready);
  const next = ACTS[act]({ ...ready, asked: act === 'leave' && state.asked }, name);
  return 'effect' in next ? next : quiet(next);
}

/** A key while something is added: it is text, but for the way on and the way back. */
export const typeInForm = (state: FormState, key: Key): FormOutcome => quiet(typeList(state, key));

/** After saving failed. */
export const notSaved = (state: FormState, message: string): FormState => ({ ...state, message });

const quiet = (state: FormState): FormOutcome => ({ state, effect: null });

/** Acts that leave a number half typed; any other takes it first. */
const KEEPS_TYPING: Readonly<Partial<Record<FormAct, true>>> = {
  type: true,
  'rub-out': true,
  leave: true,
  help: true,
};

const ACTS: Readonly<Record<FormAct, Act>> = {
  interrupt: (state) => state,
  up: (state) => moved(state, -1),
  down: (state) => moved(state, 1),
  'next-field': (state) => turned(state, 1),
  'field-before': (state) => turned(state, -1),
  more: (state) => changed(state, chosenField(state)?.stepped(1)),
  less: (state) => changed(state, chosenField(state)?.stepped(-1)),
  type: (state, name) =>
    chosenField(state)?.typed
      ? { ...state, typed: ((state.typed ?? '') + name).slice(0, LONGEST_NUMBER) }
      : notSaved(state, 'Nothing is typed here; → changes it.'),
  'rub-out': (state) => ({ ...state, typed: state.typed?.slice(0, -1) || null }),
  add: (state) => {
    const part = chosenRow(state)?.part;
    return part
      ? { ...state, adding: { part, text: '' } }
      : notSaved(state, 'There is one of this; go to a thing that you own more of.');
  },
  remove: (state) => {
    const gear = chosenRow(state)?.without;
    return gear ? changed(state, gear) : notSaved(state, 'This cannot be removed.');
  },
  undo: (state) => {
    const gear = state.before.at(-1);
    return gear
      ? inside({ ...state, gear, before: state.before.slice(0, -1) })
      : notSaved(state, 'Nothing is left to undo.');
  },
  save: (state) => ({ state, effect: { do: 'save', gear: owned(state.gear) } }),
  leave: (state) => {
    if (state.typed !== null) return { ...state, typed: null };
    return isChanged(state) && !state.asked
      ? { ...state, asked: true, message: 'Not saved yet: enter saves; the same key again leaves.' }
      : { state, effect: { do: 'leave', status: 0 } };
  },
  help: (state) => ({ ...state, help: true }),
};

/** The number that was being typed, if any, becomes the field's; a message where it cannot. */
function taken(state: FormState): FormState {
  const { typed } = state;
  const field = chosenField(state);
  if (typed === null || !field?.typed) return { ...state, typed: null };
  const read = field.typed;
  // A comma is a decimal point here, as no list is typed.
  return attempt(state, () => changed({ ...state, typed: null }, read(typed.replace(',', '.'))));
}

function attempt(state: FormState, act: () => FormState): FormState {
  try {
    return act();
  } catch (error) {
    if (error instanceof Refusal) return notSaved(state, error.problems.map(problemText).join(' '));
    throw error;
  }
}

function changed(state: FormState, gear: Gear | undefined): FormState {
  if (!gear) return state;
  return inside({ ...state, gear, before: [...state.before, state.gear] });
}

/** The row and the field are there also after things went. */
function inside(state: FormState): FormState {
  const rows = rowsOf(state.gear);
  const row = Math.min(state.row, rows.length - 1);
  const fields = rows[row]?.fields.length ?? 0;
  return { ...state, row, field: Math.max(0, Math.min(state.field, fields - 1)) };
}

function moved(state: FormState, by: 1 | -1): FormState {
  const row = Math.max(0, Math.min(rowsOf(state.gear).length - 1, state.row + by));
  return { ...state, row, field: 0 };
}

function turned(state: FormState, by: 1 | -1): FormState {
  const count = chosenRow(state)?.fields.length ?? 0;
  return count === 0 ? state : { ...state, field: (state.field + by + count) % count };
}

function typeList(state: FormState, key: Key): FormState {
  const { adding } = state;
  if (!adding) return state;
  const name = keyName(key);
  if (name === 'esc') return { ...state, adding: null, message: null };
  if (name === 'enter') return attempt(state, () => added(state));
  const text = name === 'backspace' ? adding.text.slice(0, -1) : adding.text + textIn(key);
  return { ...state, message: null, adding: { ...adding, text: text.slice(0, LONGEST_LIST) } };
}

function textIn(key: Key): string {
  if (key.kind === 'text' || key.kind === 'paste') return safeText(key.text);
  return key.kind === 'named' && key.name === 'space' ? ' ' : '';
}

function added(state: FormState): FormState {
  const { adding, gear } = state;
  if (!adding || adding.text.trim() === '') return { ...state, adding: null, message: null };
  const next = GEAR_CHANGES[adding.part](gear, [adding.text], adding.part);
  const row = rowsOf(next).findLastIndex(({ part }) => part === adding.part);
  return changed({ ...state, adding: null, message: null, row, field: 0 }, next);
}

/** What none is owned of is not kept. */
const owned = (gear: Gear): Gear => {
  const some = <One extends { readonly count: number }>(things: readonly One[]) =>
    things.filter(({ count }) => count > 0);
  return {
    ...gear,
    plates: some(gear.plates),
    dumbbells: some(gear.dumbbells),
    handles: some(gear.handles),
  };
};
