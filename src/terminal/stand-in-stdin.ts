import { EventEmitter } from 'node:events';

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
    this.#timer ??= setTimeout(() => this.#next(), 0);
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
    if (this.#waiting.length > 0) this.#timer = setTimeout(() => this.#next(), 0);
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
