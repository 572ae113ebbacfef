/** Twelve sizes in both units, most of them in few pairs, so that plates run out. */
const PLATES = [
  '25kg=2, 20kg=4, 15kg=2, 10kg=4, 5kg=2, 2.5kg=4, 1.25kg=2',
  '45lb=4, 35lb=2, 25lb=2, 10lb=4, 2.5lb=6',
];
/** One that can be made and one that cannot, on each bar. */
const LOADS = [
  ['82.5', '--bar', 'bar'],
  ['103.3', '--bar', 'bar'],
  ['315lb', '--bar', 'long bar'],
  ['200', '--bar', 'long bar'],
];
const RUNS = 15;

/**
 * Milliseconds that a load takes of its own, the start of Node and of the command line left out: the
 * slowest of several loads, each at the best of its runs.
 * @param run runs a command in an empty home, and gives its milliseconds
 */
export function ownTimeOfLoad(run: (...args: readonly string[]) => number): number {
  const best = (...args: readonly string[]): number =>
    Math.min(...Array.from({ length: RUNS }, () => run(...args)));
  run('gear', '--bars', 'bar=20kg, long bar=45lb', '--plates', ...PLATES);
  // The empty bar needs no search.
  const start = best('load', '20', '--bar', 'bar');
  return Math.max(...LOADS.map((load) => best('load', ...load))) - start;
}
