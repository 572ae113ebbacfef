import type { Reading } from '../../training/reading.ts';
import type { SessionCommand } from '../command.ts';
import type { SessionState } from '../state.ts';
import type { Decided } from './decided.ts';
import { amend, close, confirm, putDown, start, withdrawStart } from './lifting.ts';
import {
  addSet,
  chooseExercise,
  endCluster,
  markPain,
  pair,
  partPair,
  replace,
  shorten,
  skipExercise,
  skipSet,
  skipWarmUps,
} from './planning.ts';
import { changeRest, discard, note, pause, redo, resume, undo } from './session-flow.ts';

/** Decides one command. */
type Decision<Name extends SessionCommand['do']> = (
  state: SessionState,
  command: Extract<SessionCommand, { do: Name }>,
  at: Reading,
) => Decided;

export const DECISIONS: { readonly [Name in SessionCommand['do']]: Decision<Name> } = {
  start,
  'put-down': putDown,
  'withdraw-start': withdrawStart,
  amend,
  confirm,
  'skip-set': skipSet,
  'skip-warm-ups': skipWarmUps,
  'skip-exercise': skipExercise,
  'choose-exercise': chooseExercise,
  pair,
  'part-pair': partPair,
  'add-set': addSet,
  'end-cluster': endCluster,
  replace,
  shorten,
  'change-rest': changeRest,
  pause,
  resume,
  'mark-pain': markPain,
  note,
  undo,
  redo,
  close,
  discard,
};
