import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { rolldown } from 'rolldown';
import { bundle } from '../../src/tooling/build.mjs';

/**
 * Processor time of one second of a rest against a bare Ink app: `node tests/bench/tick.ts`, or
 * `node tests/bench/tick.ts 1000` for real seconds in place of every 40 ms. Exit 1 when the program
 * takes more than 1.5 times what a bare app takes for the same picture.
 */
const EVERY = process.argv[2] ?? '40';
const TICKS = EVERY === '1000' ? '60' : '100';
const MOST = 1.5;
const ROUNDS = 3;
const SIZES = [
  [34, 16],
  [80, 24],
  [120, 40],
] as const;

const at = (path: string) => fileURLToPath(new URL(path, import.meta.url));
const BUILT = '../.built/bench';

await bundle('tests/bench/rest-ticks.ts', 'tests/.built/bench/rest-ticks.js');
// Ink as it is published, without what the build of this program changes in it.
const bare = await rolldown({
  input: at('./bare-ticks.tsx'),
  platform: 'node',
  external: /^[^./]/,
});
await bare.write({ dir: at(BUILT) });

const median = (values: readonly number[]): number =>
  values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;

/** Milliseconds of processor time that a tick takes, the median of all. */
function tickOf(file: string, columns: number, rows: number, ...more: string[]): number {
  const { CI: _, ...env } = process.env;
  const args = [at(`${BUILT}/${file}.js`), String(columns), String(rows), EVERY, TICKS, ...more];
  const { stdout, stderr } = spawnSync(process.execPath, args, {
    encoding: 'utf8',
    env: { ...env, NODE_ENV: 'production', FORCE_COLOR: '1' },
  });
  const times = /\[[\d,]+\]/.exec(stdout)?.[0];
  if (!times) throw new Error(`${file} measured nothing: ${stderr}`);
  return median(JSON.parse(times) as number[]) / 1000;
}

const say = (...columns: string[]) =>
  process.stdout.write(
    `${columns.map((one, index) => (index ? one.padStart(22) : one.padEnd(10))).join('')}\n`,
  );
say('', 'bare, one line', 'bare, same picture', 'holdfast', 'to the same picture');
for (const [columns, rows] of SIZES) {
  // Taken in turn, so that another load of the machine falls on all of them.
  const rounds = Array.from({ length: ROUNDS }, () => [
    tickOf('bare-ticks', columns, rows, 'line'),
    tickOf('bare-ticks', columns, rows, 'screen'),
    tickOf('rest-ticks', columns, rows),
  ]);
  const [line = 0, screen = 0, rest = 0] = [0, 1, 2].map((one) =>
    median(rounds.map((round) => round[one] ?? 0)),
  );
  const shown = [line, screen, rest].map((ms) => `${ms.toFixed(2)} ms`);
  say(`${columns}×${rows}`, ...shown, (rest / screen).toFixed(2));
  if (rest > MOST * screen) process.exitCode = 1;
}
