import { expect, it } from 'vitest';
import type { Ports } from '../../src/lifter/ports.ts';
import { Player } from './player.ts';

/** The same ports, which tell each look at the disk or the clock. */
function watched(ports: Ports, tell: (call: string) => void): Ports {
  const telling = <Port extends object>(port: Port, name: string): Port =>
    new Proxy(port, {
      get: (target, key) => {
        const value: unknown = Reflect.get(target, key);
        if (typeof value !== 'function') return value;
        return (...args: readonly unknown[]) => {
          tell(`${name}.${String(key)} ${String(args[0] ?? '')}`);
          return value.apply(target, args);
        };
      },
    });
  return { ...ports, files: telling(ports.files, 'files'), clock: telling(ports.clock, 'clock') };
}

/** Keys that lead through the screens, one after the other. */
const WAYS: Readonly<Record<string, readonly string[]>> = {
  'before the session': [
    'w',
    '<esc>',
    'd',
    'k',
    '<down>',
    '?',
    '<esc>',
    'g',
    '<esc>',
    'o',
    '<esc>',
  ],
  'looking back': [
    't',
    '<down>',
    '<esc>',
    'h',
    '<enter>',
    '<enter>',
    '<esc>',
    '<esc>',
    '<esc>',
    'b',
  ],
  'the program': ['e', '<down>', '<right>', 'a', 'c', '<esc>', '<esc>'],
  'a new program': [
    'e',
    'c',
    '<enter>',
    '<enter>',
    '<enter>',
    '<enter>',
    '<enter>',
    '<enter>',
    '<enter>',
  ],
  'a session': [
    ' ',
    's',
    ' ',
    '5',
    ' ',
    'x',
    '<down>',
    'l',
    '<esc>',
    '<esc>',
    'c',
    '<esc>',
    'm',
    '<esc>',
  ],
  'its end': [' ', 's', ' ', ' ', 'f', '<down>', ' ', '<down>'],
};

it.each(Object.entries(WAYS))(
  '%s is drawn and spoken without a look at disk or clock',
  (_, ways) => {
    const calls: string[] = [];
    const player = new Player(undefined, {
      ports: (ports) => watched(ports, (call) => calls.push(call)),
    });
    const seen = new Set<string>();
    for (const keys of ways) {
      player.keys(keys);
      calls.length = 0;
      const screen = player.screen();
      player.spoken();
      expect([`after ${keys}`, ...calls]).toEqual([`after ${keys}`]);
      expect(player.screen()).toBe(screen);
      seen.add(player.store.model().ui.screen.kind);
    }
    expect(seen.size).toBeGreaterThan(1);
  },
);
