/**
 * One reading of the clock. `wall` may jump when the clock is set; `up` counts time since the
 * machine started, sleep included, and can only be compared within one `boot`.
 */
export interface Reading {
  /** Epoch milliseconds. */
  wall: number;
  /** Milliseconds since the machine started, or null where the platform has no such clock. */
  up: number | null;
  /** Names the machine's present run; null where it is not known. */
  boot: string | null;
}

/** Milliseconds passed from `from` to `to`, never below 0, right across sleep and a clock that was set. */
export function elapsedMs(from: Reading, to: Reading): number {
  return Math.max(0, steadyMs(from, to) ?? to.wall - from.wall);
}

/** How far the wall clock was set between two readings, in ms; 0 where it cannot be known. */
export function clockSetByMs(from: Reading, to: Reading): number {
  const steady = steadyMs(from, to);
  return steady === null ? 0 : to.wall - from.wall - steady;
}

function steadyMs(from: Reading, to: Reading): number | null {
  if (from.boot === null || from.boot !== to.boot || from.up === null || to.up === null)
    return null;
  return to.up - from.up;
}
