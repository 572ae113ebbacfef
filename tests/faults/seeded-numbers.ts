/** A whole number from 0 up to, and without, `below`. */
export type Numbers = (below: number) => number;

/** Numbers that look random and are the same each time (Park and Miller's generator, 48271). */
export function seededNumbers(seed: number): Numbers {
  let state = (seed * 7919) % 2_147_483_647 || 1;
  return (below) => {
    state = (state * 48_271) % 2_147_483_647;
    return state % below;
  };
}
