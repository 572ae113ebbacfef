import { type Mass, massOf, micrograms, type Quantity } from './mass.ts';

/** Pieces of one mass that can be put together: pairs of a plate, single plates, bands. */
export interface Piece {
  /** What one piece is. */
  readonly one: Quantity;
  readonly count: number;
}

/** Everything that pieces add up to, nothing included. */
export interface PieceSums {
  readonly largest: Mass;
  /** The largest sum at or below `wish`; null under 0. */
  readonly atOrBelow: (wish: Mass) => Mass | null;
  /** The smallest sum at or above `wish`; null above the largest. */
  readonly atOrAbove: (wish: Mass) => Mass | null;
  /**
   * Every way to make `sum` with the fewest pieces: how many of each piece, in the order given.
   * None where it cannot be made.
   */
  readonly fewest: (sum: Mass) => readonly (readonly number[])[];
}

/** A table of sums that grew past this goes on in the other one, where that is smaller. */
const LARGE_TABLE = 4000;

/**
 * Gear that makes more sums than any gym's: further pieces are left aside, so that every load that
 * is named can still be made, and no question takes seconds.
 */
const MOST_SUMS = 20_000;
/** Sums looked at for one table; a full rack in which each plate was weighed looks at far fewer. */
const MOST_LOOKS = 200_000;
/** As many ways to make a sum as anybody chooses among. */
const MOST_WAYS = 200;
/** Micrograms; nobody puts half a tonne on one side. */
const HEAVIEST = 5e11;

/**
 * The sums of pieces, exact. Within one unit they fall on few values (some hundreds in a full
 * rack), across units on every product of these. So each unit has its own table, and a question is
 * one search in the larger table for each sum of the smaller.
 */
export function pieceSums(pieces: readonly Piece[]): PieceSums {
  const key = JSON.stringify(pieces);
  const known = KNOWN.get(key);
  if (known) return known;
  const [oldest] = KNOWN.keys();
  if (KNOWN.size >= MOST_KNOWN && oldest !== undefined) KNOWN.delete(oldest);
  const sums = sumsOf(pieces);
  KNOWN.set(key, sums);
  return sums;
}

/** The same few sets of pieces are asked for by every lift of a session. */
const KNOWN = new Map<string, PieceSums>();
const MOST_KNOWN = 16;

function sumsOf(pieces: readonly Piece[]): PieceSums {
  const [few, many] = tablesOf(pieces);
  const largest = few.sums.at(-1)! + many.sums.at(-1)!;

  const atOrBelow = (wish: Mass): Mass | null => {
    let best = -1;
    for (const part of few.sums) {
      if (part > wish) break;
      const rest = many.sums[countUpTo(many.sums, wish - part) - 1]!;
      best = Math.max(best, part + rest);
    }
    return best < 0 ? null : micrograms(best);
  };

  const atOrAbove = (wish: Mass): Mass | null => {
    let best = Number.POSITIVE_INFINITY;
    for (const part of few.sums) {
      const rest = many.sums[countUpTo(many.sums, wish - part - 1)];
      if (rest !== undefined) best = Math.min(best, part + rest);
      if (part >= wish) break;
    }
    return Number.isFinite(best) ? micrograms(best) : null;
  };

  const fewest = (sum: Mass): readonly (readonly number[])[] => {
    const countWith = (part: number): number => few.fewest(part) + many.fewest(sum - part);
    const least = few.sums.reduce(
      (best, part) => Math.min(best, countWith(part)),
      Number.POSITIVE_INFINITY,
    );
    if (!Number.isFinite(least)) return [];
    return few.sums
      .filter((part) => countWith(part) === least)
      .flatMap((part) =>
        few
          .ways(part)
          .flatMap((a) =>
            many.ways(sum - part).map((b) => pieces.map((_, at) => a.get(at) ?? b.get(at) ?? 0)),
          ),
      );
  };

  return { largest: micrograms(largest), atOrBelow, atOrAbove, fewest };
}

/** The two tables, the smaller one first. */
function tablesOf(pieces: readonly Piece[]): readonly [SumTable, SumTable] {
  const tables = { kg: EMPTY_TABLE, lb: EMPTY_TABLE };
  for (const [at, piece] of pieces.entries()) {
    const weights: Weights = { at, masses: massesOf(piece) };
    const own = piece.one.unit;
    const other = own === 'kg' ? 'lb' : 'kg';
    const grown = tables[own].with(weights);
    const isLarge =
      grown.sums.length > LARGE_TABLE && tables[other].sums.length < tables[own].sums.length;
    if (isLarge) tables[other] = tables[other].with(weights);
    else tables[own] = grown;
  }
  const { kg, lb } = tables;
  return kg.sums.length <= lb.sums.length ? [kg, lb] : [lb, kg];
}

/** Masses of none, one, two … of a piece; rounded once, so that two of 0.25 lb are 0.5 lb exactly. */
function massesOf({ one, count }: Piece): readonly number[] {
  const most = massOf(one) > 0 ? Math.max(0, count) : 0;
  return Array.from({ length: most + 1 }, (_, n) => massOf({ ...one, amount: one.amount * n }));
}

/** How many of the rising `values` are at or below `limit`. */
function countUpTo(values: readonly number[], limit: number): number {
  let [from, to] = [0, values.length];
  while (from < to) {
    const middle = (from + to) >> 1;
    if (values[middle]! <= limit) from = middle + 1;
    else to = middle;
  }
  return from;
}

/** So many of one thing, and what 0, 1, 2 … of it weigh, in micrograms. */
interface Weights {
  /** Position among all pieces. */
  readonly at: number;
  readonly masses: readonly number[];
}

/** Every sum of some pieces, with the fewest pieces that make it. */
interface SumTable {
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
const EMPTY_TABLE: SumTable = tableOf(new Map([[0, 0]]), () => [new Map()], 0);

function tableOf(
  counts: ReadonlyMap<number, number>,
  ways: (sum: number) => readonly ReadonlyMap<number, number>[],
  looks: number,
): SumTable {
  const fewest = (sum: number): number => counts.get(sum) ?? Number.POSITIVE_INFINITY;
  const table: SumTable = {
    sums: [...counts.keys()].sort((a, b) => a - b),
    fewest,
    ways,
    with: ({ at, masses }) => {
      if (counts.size > MOST_SUMS || looks > MOST_LOOKS) return table;
      const more = new Map(counts);
      let looked = looks;
      for (const [pieces, added] of masses.entries()) {
        if (pieces === 0) continue;
        if (more.size > MOST_SUMS || looked > MOST_LOOKS) break;
        looked += counts.size;
        for (const [sum, count] of counts) {
          const total = sum + added;
          if (total > HEAVIEST) continue;
          if (count + pieces < (more.get(total) ?? Number.POSITIVE_INFINITY)) {
            more.set(total, count + pieces);
          }
        }
      }
      const waysWith = (sum: number): readonly ReadonlyMap<number, number>[] => {
        const found: ReadonlyMap<number, number>[] = [];
        for (const [pieces, added] of masses.entries()) {
          if (fewest(sum - added) + pieces !== more.get(sum)) continue;
          for (const way of ways(sum - added)) found.push(new Map(way).set(at, pieces));
          if (found.length >= MOST_WAYS) break;
        }
        return found;
      };
      return tableOf(more, waysWith, looked);
    },
  };
  return table;
}
