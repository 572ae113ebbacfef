import type { Clock } from '../../src/lifter/ports.ts';
import type { Reading } from '../../src/training/reading.ts';

interface Waiting {
  readonly at: number;
  readonly act: () => void;
}

/** A clock that stands still until it is told to move; what waits on it is called in order of its time. */
export class DrivenClock implements Clock {
  #wall: number;
  #up: number;
  readonly #boot: string;
  #zone: number;
  #waiting: Waiting[] = [];

  /** Two programs started on one `boot` read the same machine's time. */
  constructor(wall: number, zone: number, boot: string) {
    this.#wall = wall;
    this.#up = wall;
    this.#boot = boot;
    this.#zone = zone;
  }

  read(): Reading {
    return { wall: this.#wall, up: this.#up, boot: this.#boot };
  }

  zone(): number {
    return this.#zone;
  }

  after(ms: number, act: () => void): () => void {
    const waiting = { at: this.#up + Math.max(0, ms), act };
    this.#waiting.push(waiting);
    return () => {
      this.#waiting = this.#waiting.filter((each) => each !== waiting);
    };
  }

  /** Time passes while the program runs: every timer due is called at its own time. */
  pass(ms: number): void {
    const end = this.#up + ms;
    for (;;) {
      const next = this.#waiting
        .filter(({ at }) => at <= end)
        .reduce<Waiting | null>(
          (first, each) => (first && first.at <= each.at ? first : each),
          null,
        );
      if (!next) break;
      this.#waiting = this.#waiting.filter((each) => each !== next);
      this.#move(Math.max(0, next.at - this.#up));
      next.act();
    }
    this.#move(end - this.#up);
  }

  /** The machine sleeps: time passes and no timer is called until it wakes. */
  sleep(ms: number): void {
    this.#move(ms);
    this.pass(0);
  }

  /** Somebody sets the wall clock. */
  setWallBy(ms: number): void {
    this.#wall += ms;
  }

  setZone(minutes: number): void {
    this.#zone = minutes;
  }

  #move(ms: number): void {
    this.#up += ms;
    this.#wall += ms;
  }
}
