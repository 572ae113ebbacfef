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

/** Stops reading; `terminalIsGone` leaves its mode alone, which could not be changed any more. */
export type StopKeys = (terminalIsGone: boolean) => void;

/**
 * The one owner of stdin: reads it raw and calls `onKey` for each key, in order, until the
 * returned function is called. `onEnd` is called when there is no more input to come.
 */
export function keySource(
  stream: KeyStream,
  ports: KeyPorts,
  onKey: (key: Key) => void,
  onEnd: () => void,
): StopKeys {
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
  return (terminalIsGone) => {
    callOff();
    stream.off('data', take);
    stream.off('end', onEnd);
    if (!terminalIsGone) stream.setRawMode?.(false);
    stream.pause();
  };
}
