import { EventEmitter } from 'node:events';
import { expect, it } from 'vitest';
import { ESCAPE_WAIT_MS, type Key } from '../../src/terminal/key-decoder.ts';
import { keySource, StandInStdin } from '../../src/terminal/key-source.ts';

class Stream extends EventEmitter {
  raw: boolean | null = null;
  setRawMode(on: boolean) {
    this.raw = on;
  }
  setEncoding() {}
  resume() {}
  pause() {}
}

function listening() {
  const stream = new Stream();
  const keys: Key[] = [];
  let now = 0;
  let due: { at: number; act: () => void } | null = null;
  let ended = 0;
  const stop = keySource(
    stream,
    {
      now: () => now,
      after: (ms, act) => {
        due = { at: now + ms, act };
        return () => {
          due = null;
        };
      },
    },
    (key) => keys.push(key),
    () => {
      ended += 1;
    },
  );
  const pass = (ms: number) => {
    now += ms;
    if (due && due.at <= now) due.act();
  };
  return { stream, keys, stop, pass, ended: () => ended };
}

it('reads raw, in order, and gives the terminal back', () => {
  const { stream, keys, stop } = listening();
  expect(stream.raw).toBe(true);
  stream.emit('data', ' 5\r');
  expect(keys).toHaveLength(3);
  stop();
  expect(stream.raw).toBe(false);
  stream.emit('data', 'x');
  expect(keys).toHaveLength(3);
});

it('waits for the rest of an escape sequence, then takes it for the key', () => {
  const { stream, keys, pass } = listening();
  stream.emit('data', '\u001b');
  pass(ESCAPE_WAIT_MS - 1);
  expect(keys).toEqual([]);
  pass(1);
  expect(keys).toEqual([{ kind: 'named', name: 'esc' }]);
});

it('tries to give back a terminal that is gone, and bears its complaint', () => {
  const { stream, stop, ended } = listening();
  stream.emit('error', new Error('EIO'));
  expect(ended()).toBe(1);
  let tried: boolean | null = null;
  stream.setRawMode = (on) => {
    tried = on;
    stream.emit('error', new Error('EIO'));
  };
  expect(stop).not.toThrow();
  expect(tried).toBe(false);
});

it('tells the end of the input', () => {
  const { stream, ended } = listening();
  stream.emit('end');
  expect(ended()).toBe(1);
});

it('the stand-in hands over one key at a time, in order', async () => {
  const standIn = new StandInStdin();
  // Ink reads keys of a terminal only.
  expect(standIn.isTTY).toBe(true);
  const read: string[] = [];
  let perTurn = 0;
  const done = new Promise<void>((resolve) => {
    standIn.on('readable', () => {
      const bytes = standIn.read();
      expect(bytes).not.toBeNull();
      expect(standIn.read()).toBeNull();
      perTurn += 1;
      expect(perTurn).toBe(1);
      setImmediate(() => {
        perTurn = 0;
      });
      read.push(bytes ?? '');
      if (read.length === 5) resolve();
    });
  });
  for (const key of 'abc5\r') standIn.type(key);
  await done;
  expect(read.join('')).toBe('abc5\r');
});
