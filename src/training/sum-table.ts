/** So many of one thing, and what 0, 1, 2 … of it weigh, in micrograms. */
export interface Weights {
  /** Position among all pieces. */
  readonly at: number;
  readonly masses: readonly number[];
}

/** Every sum of some pieces, with the fewest pieces that make it. */
export interface SumTable {
  /** Sums in rising order; 0 is the first. */
  readonly sums: readonly number[];
  /** Fewest pieces that make `sum`; infinite where none do. */
  readonly fewest: (sum: number) => number;
  /** Every way to make `sum` with the fewest pieces: counts by position among all pieces. */
  readonly ways: (sum: number) => readonly ReadonlyMap<number, number>[];
  /** The table with one more kind of piece. */
  readonly with: (weights: Weights) => SumTable;
}

/** Nothing to put together: the only sum is 0. */
export const EMPTY_TABLE: SumTable = tableOf(new Map([[0, 0]]), () => [new Map()]);

function tableOf(
  counts: ReadonlyMap<number, number>,
  ways: (sum: number) => readonly ReadonlyMap<number, number>[],
): SumTable {
  const fewest = (sum: number): number => counts.get(sum) ?? Number.POSITIVE_INFINITY;
  return {
    sums: [...counts.keys()].sort((a, b) => a - b),
    fewest,
    ways,
    with: ({ at, masses }) => {
      const more = new Map<number, number>();
      for (const [sum, count] of counts) {
        for (const [pieces, added] of masses.entries()) {
          const total = sum + added;
          if (count + pieces < (more.get(total) ?? Number.POSITIVE_INFINITY)) {
            more.set(total, count + pieces);
          }
        }
      }
      const waysWith = (sum: number): readonly ReadonlyMap<number, number>[] =>
        masses.flatMap((added, pieces) =>
          fewest(sum - added) + pieces === more.get(sum)
            ? ways(sum - added).map((way) => new Map(way).set(at, pieces))
            : [],
        );
      return tableOf(more, waysWith);
    },
  };
}
