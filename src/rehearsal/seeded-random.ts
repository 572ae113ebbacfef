/** Random numbers that are the same for the same seed. */
export interface SeededRandom {
  /** From 0 to 1, 1 excluded. */
  readonly uniform: () => number;
  /** Mean 0, standard deviation 1. */
  readonly normal: () => number;
}

/**
 * Mulberry32 (Tommy Ettinger, public domain): a 32-bit state that goes on by a fixed odd number and
 * is then scrambled; period 2³². Good enough to play lifters with, not for secrets. The normal
 * numbers are Box and Muller's (1958).
 */
export function seededRandom(seed: number): SeededRandom {
  let state = seed | 0;
  const uniform = (): number => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
  const normal = (): number =>
    Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
  return { uniform, normal };
}
