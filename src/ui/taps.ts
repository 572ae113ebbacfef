import type { ActId } from './binding.ts';
import { bindingsOf, labelOf } from './keymap.ts';
import { type Line, line } from './line.ts';
import type { Phase } from './phase.ts';
import type { Model, ScreenKind, Size } from './ui-state.ts';

export interface Target {
  readonly act: ActId;
  readonly label: string;
}

/** Rows that the targets take at the foot of the screen; a finger needs at least two. */
export const TARGET_ROWS = 3;
const LEAST_COLUMNS = 8;

const SHOWN: Readonly<Partial<Record<ActId, string>>> = {
  more: '+',
  less: '−',
  'choice-up': '↑',
  'choice-down': '↓',
  'page-up': '↑',
  'page-down': '↓',
  undo: 'UNDO',
  'take-advice': 'TAKE',
  back: 'BACK',
  leave: 'LEAVE',
};

/** The main act in a word that fits the narrowest target. */
const MAIN: Readonly<Record<Phase['kind'], string>> = {
  ready: 'LIFT',
  lifting: 'DOWN',
  resting: 'LIFT',
  over: 'LIFT',
  'all-done': 'FINISH',
  closed: 'DONE',
};

const LIST: readonly ActId[] = ['choose', 'choice-up', 'choice-down', 'back'];

/** Acts under the finger, the main one first. */
const ACTS_BY_SCREEN: Readonly<Record<ScreenKind, readonly ActId[]>> = {
  cautions: ['no', 'yes', 'page-up', 'page-down'],
  preview: ['main', 'choice-up', 'choice-down', 'leave'],
  stale: ['choose', 'choice-up', 'choice-down', 'leave'],
  runner: ['main', 'less', 'more', 'undo'],
  load: ['choose', 'less', 'more', 'back'],
  exercises: LIST,
  acts: LIST,
  swap: LIST,
  pain: LIST,
  finish: LIST,
  discard: LIST,
  settings: LIST,
  note: ['back'],
  why: ['back', 'page-up', 'page-down'],
  summary: ['leave', 'page-up', 'page-down'],
  'weight-question': ['no', 'yes', 'back'],
  review: ['take-advice', 'page-up', 'page-down', 'back'],
  advice: ['choose', 'page-up', 'page-down', 'back'],
  weigh: ['choose', 'back'],
  lifts: LIST,
  results: LIST,
  'past-session': LIST,
  correct: ['save', 'less', 'more', 'back'],
  delete: LIST,
  search: ['save', 'back'],
  program: ['save', 'choice-up', 'choice-down', 'back'],
  'add-lift': LIST,
  changes: ['choose', 'page-up', 'page-down', 'back'],
  unsaved: LIST,
  findings: ['back', 'page-up', 'page-down'],
};

export function targetsOf(model: Model, phase: Phase | null): readonly Target[] {
  const { kind } = model.ui.screen;
  const rows = bindingsOf(kind);
  return ACTS_BY_SCREEN[kind].map((act) => {
    if (act === 'main' && phase)
      return { act, label: phase.waitMs > 0 ? 'WAIT' : MAIN[phase.kind] };
    const row = rows.find((one) => one.act === act);
    const words = row ? labelOf(row, model, phase).toUpperCase() : '';
    return { act, label: SHOWN[act] ?? fitting(words) };
  });
}

/** A label that the narrowest target takes whole. */
const fitting = (label: string): string =>
  label.length <= LEAST_COLUMNS - 2 ? label : (label.split(' ')[0] ?? label);

/** Width of each target: the main one gets what the others do not need. */
function widths(targets: readonly Target[], columns: number): readonly number[] {
  const each = Math.max(LEAST_COLUMNS, Math.floor(columns / (targets.length + 1)));
  const others = each * (targets.length - 1);
  return targets.map((_, index) => (index === 0 ? columns - others : each));
}

/** The targets as boxes side by side, over the whole width. */
export function targetLines(targets: readonly Target[], columns: number): readonly Line[] {
  const sizes = widths(targets, columns);
  const row = (draw: (label: string, inner: number) => string) =>
    line(targets.map(({ label }, index) => draw(label, (sizes[index] ?? 2) - 2)).join(''));
  return [
    row((_, inner) => `┌${'─'.repeat(inner)}┐`),
    row((label, inner) => `│${centred(label, inner)}│`),
    row((_, inner) => `└${'─'.repeat(inner)}┘`),
  ];
}

function centred(text: string, columns: number): string {
  const shown = text.slice(0, columns);
  const left = Math.floor((columns - shown.length) / 2);
  return ' '.repeat(left) + shown + ' '.repeat(columns - shown.length - left);
}

/** The target under a tap; both count from 1. */
export function targetAt(
  targets: readonly Target[],
  { columns, rows }: Size,
  column: number,
  row: number,
): Target | null {
  if (row <= rows - TARGET_ROWS || row > rows) return null;
  let end = marginOf(columns);
  for (const [index, width] of widths(targets, columns - 2 * end).entries()) {
    end += width;
    if (column <= end) return targets[index] ?? null;
  }
  return null;
}

/** Blank columns at either side of every screen. */
export const marginOf = (columns: number): number => (columns >= 60 ? 2 : 1);
