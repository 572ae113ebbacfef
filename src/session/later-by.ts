import type { Reading } from '../training/reading.ts';

/** The reading that the clock gives `ms` after another, as long as nobody sets it. */
export const laterBy = ({ wall, up, boot }: Reading, ms: number): Reading => ({
  wall: wall + ms,
  up: up === null ? null : up + ms,
  boot,
});
