import type { Coach } from '../lifter/coach.ts';
import type { Key } from '../terminal/key-decoder.ts';
import { elapsedMs } from '../training/reading.ts';
import type { Model } from './model.ts';
import { type Acting, ask, type Outcome, show, tell } from './outcome.ts';
import { savingTyped } from './runner/keys.ts';
import { DIGITS, type KeyRow, keyName, mayNow, seenOf } from './screen.ts';
import { keysOf, moduleOf } from './screens.ts';
import { targetAt, targetsOf } from './taps.ts';
import { isTooSmall } from './too-small.ts';

/** What a key leads to: the next state of the screens, and what is asked of the world. */
export function press(model: Model, key: Key, coach: Coach): Outcome {
  const { ui, effects } = outcomeOf(model, key, coach);
  return { ui: { ...ui, lastKey: { name: keyName(key) ?? '', at: model.now } }, effects };
}

function outcomeOf(model: Model, key: Key, coach: Coach): Outcome {
  const acting: Acting = { ...seenOf(model, coach), name: keyName(key) ?? '' };
  if (model.ui.help && acting.name !== 'ctrl-c') return closeHelp(acting);
  if (key.kind === 'tap') return tapped(acting, key.column, key.row);
  const { isTyping, otherKey } = moduleOf(acting.screen);
  const typed = acting.name !== 'ctrl-c' && isTyping?.(acting) === true;
  const row = keysOf(acting.screen).find(({ keys }) => !typed && keys.includes(acting.name));
  if (!row) return otherKey?.(acting, key) ?? unknown(acting);
  if (isHeld(model, acting.name, key)) {
    return tell(acting, `${acting.name} is held or bounced; press it once.`);
  }
  return done(row, acting);
}

/** What a key does, or why it does nothing now. */
function done(row: KeyRow, acting: Acting): Outcome {
  const may = mayNow(row, acting);
  return may === true ? row.press(acting) : tell(acting, may);
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

/** Any key but the arrows takes the help away; what it would do otherwise waits for the next press. */
function closeHelp(acting: Acting): Outcome {
  const { ui } = acting.model;
  const by = { down: 1, up: -1, 'page-down': 8, 'page-up': -8 }[acting.name];
  const help = by === undefined ? null : { scroll: Math.max(0, (ui.help?.scroll ?? 0) + by) };
  return { ui: { ...ui, help }, effects: [] };
}

function tapped(acting: Acting, column: number, row: number): Outcome {
  const { model, screen } = acting;
  if (!model.choices.taps || isTooSmall(model.size)) return ask(acting);
  const target = targetAt(targetsOf(acting), model.size, column, row);
  if (target) {
    // A finger turns pages; one line at a time is for keys.
    const { keys } = target.row;
    const name = keys.find((key) => key.startsWith('page')) ?? keys[0] ?? '';
    return done(target.row, { ...acting, name });
  }
  // Above the boxes a finger finds everything else.
  if (!moduleOf(screen).atTheBar) return ask(acting);
  return savingTyped(acting, show(acting, { kind: 'acts', chosen: 0 }));
}

/** A key that means nothing here is no error, but the lifter should see that it was heard. */
function unknown(acting: Acting): Outcome {
  return acting.name === '' || !moduleOf(acting.screen).atTheBar
    ? ask(acting)
    : tell(acting, `${acting.name} does nothing here; ? shows the keys.`);
}
