import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

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
 * Milliseconds that `load` takes of its own, the start of Node and of the command line left out:
 * the slowest of several loads, each at the best of its runs.
 */
export function ownTimeOfLoad(cli: string): number {
  const folder = mkdtempSync(join(tmpdir(), 'holdfast-bench-'));
  const env = {
    PATH: process.env.PATH,
    HOME: folder,
    HOLDFAST_DATA: join(folder, 'data'),
    XDG_CONFIG_HOME: join(folder, 'config'),
    XDG_STATE_HOME: join(folder, 'state'),
  };
  const run = (...args: readonly string[]): number => {
    const start = performance.now();
    const { status, stderr } = spawnSync(process.execPath, [cli, ...args], { env });
    // 1 is an answer as well: the load cannot be made exactly.
    if (status !== 0 && status !== 1) throw new Error(`${args.join(' ')}: ${status} ${stderr}`);
    return performance.now() - start;
  };
  const best = (...args: readonly string[]): number =>
    Math.min(...Array.from({ length: RUNS }, () => run(...args)));
  try {
    run('gear', '--bars', 'bar=20kg, long bar=45lb', '--plates', ...PLATES);
    // The empty bar needs no search.
    const start = best('load', '20', '--bar', 'bar');
    return Math.max(...LOADS.map((load) => best('load', ...load))) - start;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
