import { describe, expect, it } from 'vitest';
import { type KeyName, type KeyRow, labelOf, seenOf } from '../../src/ui/screen.ts';
import { keysOf, SCREENS } from '../../src/ui/screens.ts';
import type { ScreenKind } from '../../src/ui/ui-state.ts';
import { Player } from './player.ts';

const KINDS = Object.keys(SCREENS) as ScreenKind[];

describe('the keys of a screen', () => {
  it.each(KINDS)('have one meaning each on %s', (kind) => {
    const keys = keysOf({ kind }).flatMap((row) => row.keys);
    expect(keys).toEqual([...new Set(keys)]);
  });

  const boundOn = (kind: ScreenKind, key: KeyName) =>
    keysOf({ kind }).some(({ keys }) => keys.includes(key));

  it.each(KINDS)('have a way out of %s, and ctrl-c', (kind) => {
    expect(boundOn(kind, 'esc')).toBe(true);
    expect(boundOn(kind, 'ctrl-c')).toBe(true);
  });

  const TYPED: readonly ScreenKind[] = ['note', 'search', 'add-lift'];

  it.each(KINDS.filter((kind) => !TYPED.includes(kind)))('of %s are shown by ?', (kind) => {
    expect(boundOn(kind, '?')).toBe(true);
  });

  it.each(KINDS)('have short labels on %s', (kind) => {
    for (const { label } of keysOf({ kind })) {
      if (typeof label === 'string') expect(label.split(' ').length, label).toBeLessThanOrEqual(4);
    }
  });

  it.each(KINDS)('leave a finger at least one box on %s, and no more than four', (kind) => {
    const boxes = keysOf({ kind }).filter(({ tap }) => tap !== undefined);
    expect(boxes.length).toBeGreaterThanOrEqual(1);
    expect(boxes.length).toBeLessThanOrEqual(4);
    expect(new Set(boxes.map(({ tap }) => tap?.at)).size).toBe(boxes.length);
  });
});

describe('a key that does nothing now says why', () => {
  it.each([
    ['+', 'No rest is running.'],
    ['r', 'No set was started by hand.'],
    ['y', 'There is nothing on offer now.'],
    ['b', 'There is no set before this one.'],
    ['<up>', 'There is no set to put numbers on yet.'],
    ['j', 'j does nothing here; ? shows the keys.'],
  ])('%s before the first set', (key, wanted) => {
    expect(new Player().atFirstSet().keys(key).screen()).toContain(wanted);
  });

  it('and the footer leaves it out', () => {
    const before = new Player().atFirstSet().screen();
    expect(before).not.toContain('earlier set');
    expect(new Player().atFirstSet().keys('  ').screen()).toContain('b earlier set');
  });
});

/** Each row of each screen: its keys and words, its place in the footer, its box. */
it('stand where they stood before', async () => {
  const lines = KINDS.flatMap((kind) => [
    kind,
    ...keysOf({ kind })
      .slice(1)
      .map(({ keys, label, footer, pair, tap }) => {
        const told = typeof label === 'string' ? label : '(by what is chosen)';
        const place = typeof footer === 'function' ? '(by what is going on)' : (footer ?? '-');
        const box = tap && `box ${tap.at}${typeof tap.says === 'string' ? ` ${tap.says}` : ''}`;
        return `  ${[keys.join(' '), told, place, pair, box].filter((one) => one !== undefined).join(', ')}`;
      }),
  ]);
  await expect(`${lines.join('\n')}\n`).toMatchFileSnapshot('frames/keys.txt');
});

/** What each letter does, on every screen that has it. */
const VERBS: Readonly<Record<string, RegExp>> = {
  a: /^add\b/,
  b: /\bearlier\b/,
  c: /^(change|correct)\b/,
  d: /^(delete|remove|leave out|take (it )?out)\b/,
  e: /\bthe program$/,
  f: /^finish/,
  g: /^sounds, taps$/,
  h: /^(history|all readings)$/,
  i: /^weigh in$/,
  j: /^other gear, days$/,
  k: /^less time$/,
  l: /^another lift$/,
  m: /\b(hurts|pain)\b/,
  n: /^(no to|none|all no)\b/,
  o: /^what you own$/,
  p: /^pause or go on$/,
  q: /^(leave|back)$/,
  r: /^not started yet$/,
  s: /^skip\b/,
  t: /^week's review$/,
  u: /^undo$/,
  v: /\blater\b/,
  w: /^why\b/,
  x: /^all exercises$/,
  y: /^(some )?yes\b/,
  z: /^next rep failed$/,
};

/** The words of a row; where they hang on what is going on, those of a straight set and of a cluster. */
function labelsOf(row: KeyRow, kind: ScreenKind): readonly string[] {
  if (typeof row.label === 'string') return [row.label];
  // Only the session's own words hang on it for a letter.
  expect(kind).toBe('runner');
  const players = [new Player().atFirstSet(), new Player().atCluster().keys('  ')];
  return players.map(({ store, scene }) => labelOf(row, seenOf(store.model(), scene.coach)));
}

const LETTERS = KINDS.flatMap((kind) =>
  keysOf({ kind }).flatMap((row) =>
    row.keys
      .filter((key) => /^[a-z]$/.test(key))
      .flatMap((letter) => labelsOf(row, kind).map((label) => ({ letter, label, kind }))),
  ),
);

describe('a letter means one thing on every screen', () => {
  it.each(LETTERS)('$letter: $label, on $kind', ({ letter, label }) => {
    expect(label).toMatch(VERBS[letter] ?? 'no letter of the table');
  });

  it.each(LETTERS)('and nothing else does it: $label, on $kind', ({ letter, label }) => {
    const verbs = Object.entries(VERBS).filter(([, verb]) => verb.test(label));
    expect(verbs.map(([each]) => each)).toEqual([letter]);
  });
});

it('letters mean what they meant before', async () => {
  const lines = Object.keys(VERBS).flatMap((letter) => {
    const own = LETTERS.filter((each) => each.letter === letter);
    const labels = [...new Set(own.map(({ label }) => label))];
    return [
      letter,
      ...labels.map((label) => {
        const kinds = own.filter((each) => each.label === label).map(({ kind }) => kind);
        return `  ${label}: ${kinds.join(', ')}`;
      }),
    ];
  });
  await expect(`${lines.join('\n')}\n`).toMatchFileSnapshot('frames/letters.txt');
});
