import type { Reading } from '../training/reading.ts';

/** The one way to know the time and to wait. */
export interface Clock {
  read(): Reading;
  /** Minutes that local time is ahead of UTC at an instant. */
  zone(wall: number): number;
  /** Calls `act` once after `ms`; the returned function calls it off. */
  after(ms: number, act: () => void): () => void;
}
