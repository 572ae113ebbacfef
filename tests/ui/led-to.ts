import type { Key, NamedKey } from '../../src/terminal/key-decoder.ts';
import type { Outcome } from '../../src/ui/outcome.ts';
import { press } from '../../src/ui/press.ts';
import { labelOf, seenOf } from '../../src/ui/screen.ts';
import { keysOf } from '../../src/ui/screens.ts';
import type { Screen } from '../../src/ui/ui-state.ts';
import type { Player } from './player.ts';

/**
 * What each key of the screen that is shown leads to, a line each: its words, then what is said, the
 * screen that comes, and what is asked of the world. Nothing is done.
 */
export function keysLeadTo({ store, scene: { coach } }: Player): readonly string[] {
  const model = store.model();
  const fresh = { ...model, ui: { ...model.ui, message: null, lastKey: null } };
  const seen = seenOf(fresh, coach);
  const { within } = coach.today();
  return keysOf(seen.screen).map((row) => {
    const [name = ''] = row.keys;
    const outcome = press(fresh, keyOf(name), coach);
    // The minutes that were asked for last are remembered: none were.
    coach.today(undefined, within);
    return `${name} ${labelOf(row, seen)}: ${told(outcome, seen.screen)}`;
  });
}

const keyOf = (name: string): Key =>
  [...name].length === 1 ? { kind: 'text', text: name } : { kind: 'named', name: name as NamedKey };

function told({ ui, effects }: Outcome, before: Screen): string {
  const parts = [
    ui.message,
    ui.help && 'the keys',
    ui.screen !== before && screenTold(ui.screen, before),
    ...effects.map((effect) => `! ${plain(effect, 3)}`),
  ];
  return parts.filter(Boolean).join(' ') || 'nothing';
}

/** Another screen with all that is plain in it, the same one with what has changed. */
function screenTold(screen: Screen, before: Screen): string | null {
  const same = screen.kind === before.kind;
  const was = new Map<string, unknown>(same ? Object.entries(before) : []);
  const fields = Object.entries(screen).filter(([key, value]) => was.get(key) !== value);
  const words = plain(Object.fromEntries(fields), 1);
  if (same) return words === '' ? null : `→ ${words}`;
  return `→ ${words}`;
}

/** Lists and things within things by their number and name only, once it is `deep` enough. */
function plain(value: unknown, deep: number): string {
  if (Array.isArray(value)) {
    return deep > 1
      ? `[${value.map((one) => plain(one, deep - 1)).join('; ')}]`
      : `(${value.length})`;
  }
  if (typeof value !== 'object' || value === null) return short(String(value));
  const { kind, do: act, name, ...rest } = value as Record<string, unknown>;
  const head = [kind, act, name].filter((one) => typeof one === 'string');
  if (deep === 0) return short(head.join(' ')) || small(rest);
  const fields = Object.entries(rest).map(([key, one]) => `${key} ${plain(one, deep - 1)}`);
  return [...head, ...fields].join(', ');
}

const small = (value: object): string => {
  const text = JSON.stringify(value);
  return text.length < 100 ? text.replace(/"[0-9a-z]{10}:(\d+)"/, '"(id):$1"') : '…';
};

/** Chance makes ids, and a text is seen elsewhere. */
const short = (text: string): string =>
  text.includes('\n')
    ? '(text)'
    : text.replace(/^[0-9a-z]{10}(?=:\d+$)/, '(id)').replace(/.*\/(?=[^/]+\.yaml$)/, '');
