import { describe, expect, it } from 'vitest';
import type { KeyName } from '../../src/ui/screen.ts';
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
    ['e', 'No cluster is under way.'],
    ['o', 'There is nothing on offer now.'],
    ['b', 'There is no set before this one.'],
    ['<up>', 'There is no set to put numbers on yet.'],
    ['j', 'j does nothing here; ? shows the keys.'],
  ])('%s before the first set', (key, wanted) => {
    expect(new Player().atFirstSet().keys(key).screen()).toContain(wanted);
  });

  it('and the footer leaves it out', () => {
    const before = new Player().atFirstSet().screen();
    expect(before).not.toContain('set before');
    expect(new Player().atFirstSet().keys('  ').screen()).toContain('b set before');
  });
});

/** Each row of each screen: its keys and words, its place in the footer, its box. */
it('stand where they stood before', async () => {
  const lines = KINDS.flatMap((kind) => [
    kind,
    ...SCREENS[kind].keys.map(({ keys, label, footer, pair, tap }) => {
      const told = typeof label === 'string' ? label : '(by what is chosen)';
      const box = tap && `box ${tap.at}${typeof tap.says === 'string' ? ` ${tap.says}` : ''}`;
      return `  ${[keys.join(' '), told, footer ?? '-', pair, box].filter((one) => one !== undefined).join(', ')}`;
    }),
  ]);
  await expect(`${lines.join('\n')}\n`).toMatchFileSnapshot('frames/keys.txt');
});

/** What a letter does, in the words of the screens that have it; where they are not one thing, it is seen here. */
it('letters mean what they meant before', async () => {
  const words = new Map<string, Map<string, string[]>>();
  const say = (letter: string, label: string, where: string) => {
    const labels = words.get(letter) ?? new Map<string, string[]>();
    labels.set(label, [...(labels.get(label) ?? []), where]);
    words.set(letter, labels);
  };
  for (const kind of KINDS) {
    for (const { keys, label } of SCREENS[kind].keys) {
      const told = typeof label === 'string' ? label : '(by what is chosen)';
      for (const key of keys) if (/^[a-z]$/.test(key)) say(key, told, kind);
    }
  }
  const lines = [...words]
    .toSorted()
    .flatMap(([letter, labels]) => [
      letter,
      ...[...labels].map(([label, kinds]) => `  ${label}: ${kinds.join(', ')}`),
    ]);
  await expect(`${lines.join('\n')}\n`).toMatchFileSnapshot('frames/letters.txt');
});

it('takes away by d, brings back by u, and goes to the program by e, wherever that can be done', () => {
  const lettersOf = (word: RegExp) =>
    new Set(
      KINDS.flatMap((kind) =>
        SCREENS[kind].keys.flatMap(({ keys, label }) =>
          typeof label === 'string' && word.test(label)
            ? keys.filter((key) => /^[a-z]$/.test(key))
            : [],
        ),
      ),
    );
  expect([...lettersOf(/^(delete|remove|take out|leave out)/)]).toEqual(['d']);
  expect([...lettersOf(/^undo/)]).toEqual(['u']);
  expect([...lettersOf(/the program$/)]).toEqual(['e']);
  expect([...lettersOf(/pain|hurts/)]).toEqual(['m']);
  expect([...lettersOf(/^why/)]).toEqual(['w']);
  expect([...lettersOf(/history|readings/)]).toEqual(['h']);
  expect([...lettersOf(/^add/)]).toEqual(['a']);
});
