import { EventEmitter } from 'node:events';
import { decodeKeys, ESCAPE_WAIT_MS, type Key, type Pending } from './key-decoder.ts';

/** The part of stdin that keys are read from. */
export interface KeyStream {
  setRawMode?(on: boolean): unknown;
  setEncoding(encoding: 'utf8'): unknown;
  on(event: 'data', listener: (chunk: string) => void): unknown;
  on(event: 'end' | 'error', listener: () => void): unknown;
  off(event: 'data', listener: (chunk: string) => void): unknown;
  off(event: 'end', listener: () => void): unknown;
  resume(): unknown;
  pause(): unknown;
}

export interface KeyPorts {
  /** Epoch ms. */
  readonly now: () => number;
  readonly after: (ms: number, act: () => void) => () => void;
}

/**
 * The one owner of stdin: reads it raw and calls `onKey` for each key, in order, until the
 * returned function is called. `onEnd` is called when there is no more input to come.
 */
export function keySource(
  stream: KeyStream,
  ports: KeyPorts,
  onKey: (key: Key) => void,
  onEnd: () => void,
): () => void {
  let pending: Pending | null = null;
  let callOff = () => {};
  const take = (chunk: string) => {
    callOff();
    const decoded = decodeKeys(chunk, pending, ports.now());
    pending = decoded.pending;
    for (const key of decoded.keys) onKey(key);
    if (pending) callOff = ports.after(ESCAPE_WAIT_MS, () => take(''));
  };
  stream.setEncoding('utf8');
  stream.setRawMode?.(true);
  stream.on('data', take);
  stream.on('end', onEnd);
  // Stays for good: a terminal that is gone may complain once more after the last key.
  stream.on('error', onEnd);
  stream.resume();
  return () => {
    callOff();
    stream.off('data', take);
    stream.off('end', onEnd);
    // Where the terminal is gone this is one complaint more.
    stream.setRawMode?.(false);
    stream.pause();
  };
}

/**
 * What Ink is given in place of the real stdin, which {@link keySource} owns: raw chunks read by
 * two readers lose keys. Only what a focused text field should see is written to it, one key a
 * timer turn, because a field that gets two keys in one turn keeps only the last.
 */
export class StandInStdin extends EventEmitter {
  readonly isTTY = true;
  readonly #waiting: string[] = [];
  #ready: string | null = null;
  #timer: NodeJS.Timeout | null = null;

  /** Hands one key on, in the bytes that a terminal would send. */
  type(bytes: string): void {
    this.#waiting.push(bytes);
    this.#timer ??= setTimeout(() => this.#next());
  }

  read(): string | null {
    const bytes = this.#ready;
    this.#ready = null;
    return bytes;
  }

  #next(): void {
    this.#timer = null;
    const bytes = this.#waiting.shift();
    if (bytes === undefined) return;
    this.#ready = bytes;
    this.emit('readable');
    if (this.#waiting.length > 0) this.#timer = setTimeout(() => this.#next());
  }

  // The rest is what Ink calls on a terminal's stdin; the real one is set up by its owner.
  setRawMode(): this {
    return this;
  }
  setEncoding(): this {
    return this;
  }
  ref(): this {
    return this;
  }
  unref(): this {
    return this;
  }
  resume(): this {
    return this;
  }
  pause(): this {
    return this;
  }
}
