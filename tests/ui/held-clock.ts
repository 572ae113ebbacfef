import type { Clock } from '../../src/lifter/ports.ts';
import type { Reading } from '../../src/training/reading.ts';

/** A clock that moves only when told to, and fires what has come due on the way. */
export class HeldClock implements Clock {
  #wall: number;
  #waiting: { at: number; act: () => void }[] = [];

  constructor(start: number) {
    this.#wall = start;
  }

  read(): Reading {
    return { wall: this.#wall, up: null, boot: null };
  }

  zone(): number {
    return 0;
  }

  after(ms: number, act: () => void): () => void {
    const one = { at: this.#wall + ms, act };
    this.#waiting.push(one);
    return () => {
      this.#waiting = this.#waiting.filter((other) => other !== one);
    };
  }

  /** Lets time go by. */
  pass(ms: number): void {
    const end = this.#wall + ms;
    for (;;) {
      const next = this.#waiting.filter(({ at }) => at <= end).toSorted((a, b) => a.at - b.at)[0];
      if (!next) break;
      this.#waiting = this.#waiting.filter((one) => one !== next);
      this.#wall = Math.max(this.#wall, next.at);
      next.act();
    }
    this.#wall = end;
  }

  /** Time goes by while nothing can run, as in a stopped process. */
  jump(ms: number): void {
    this.#wall += ms;
  }

  /** Another time altogether. */
  set(wall: number): void {
    this.#wall = wall;
  }
}
