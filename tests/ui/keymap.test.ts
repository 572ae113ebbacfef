import { describe, expect, it } from 'vitest';
import type { KeyName } from '../../src/ui/binding.ts';
import { KEYMAP } from '../../src/ui/keymap.ts';
import type { ScreenKind } from '../../src/ui/ui-state.ts';
import { Player } from './player.ts';

const SCREENS = [...new Set(KEYMAP.flatMap(({ screens }) => screens))];

describe('the table of keys', () => {
  it('gives no key two meanings on one screen', () => {
    const seen = new Map<string, string>();
    for (const { screens, keys, act } of KEYMAP) {
      for (const screen of screens) {
        for (const key of keys) {
          const before = seen.get(`${screen} ${key}`);
          expect(before, `${key} on ${screen}: ${before} and ${act}`).toBeUndefined();
          seen.set(`${screen} ${key}`, act);
        }
      }
    }
  });

  const boundOn = (screen: ScreenKind, key: KeyName) =>
    KEYMAP.some(({ screens, keys }) => screens.includes(screen) && keys.includes(key));

  it.each(SCREENS)('has a way out of %s, and ctrl-c', (screen) => {
    expect(boundOn(screen, 'esc')).toBe(true);
    expect(boundOn(screen, 'ctrl-c')).toBe(true);
  });

  const TYPED: readonly ScreenKind[] = ['note', 'search', 'add-lift'];

  it.each(SCREENS.filter((screen) => !TYPED.includes(screen)))(
    'shows the keys of %s with ?',
    (screen) => {
      expect(boundOn(screen, '?')).toBe(true);
    },
  );

  it('has short labels', () => {
    for (const { label } of KEYMAP) {
      const text = typeof label === 'string' ? label : label(null, false);
      expect(text.split(' ').length, text).toBeLessThanOrEqual(4);
    }
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
