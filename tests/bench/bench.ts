import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { Temporal } from 'temporal-polyfill';
import { readProgramFile } from '../../src/program/read-file.ts';
import { rehearsedHistory } from '../../src/rehearsal/rehearsed-history.ts';
import { bundle } from '../../src/tooling/build.mjs';
import { defaultGear } from '../../src/training/default-gear.ts';
import { kilograms } from '../../src/training/mass.ts';
import { firstFrame } from './first-frame.ts';
import { ownTimeOfLoad } from './load-in-mixed-gear.ts';
import { age, writeLongHistory } from './long-history.ts';

/**
 * What whole commands cost, as ratios of processor time taken in turn (A B A B …), so that they hold
 * on a busy machine: `npm run bench`, or `npm run bench -- 3` for three years in place of ten. `today`
 * is asked time and again on one day, as by a prompt, and for the first time on a day; the screens are
 * opened so, too.
 * Exit 1 where the median ratio is over its bar.
 */
const YEARS = Number(process.argv[2] ?? 10);
const PAIRS = 9;
const SESSIONS_A_YEAR = 156;
/** Milliseconds for a load out of plates in both units, without the start of the program. */
const MOST_OF_LOAD = 50;

const CLI = fileURLToPath(new URL('../../dist/cli.js', import.meta.url));
const PROGRAM = fileURLToPath(new URL('../../programs/three-day.yaml', import.meta.url));

await bundle('tests/bench/hello.tsx', 'tests/.built/hello/hello.js');
const HELLO = fileURLToPath(new URL('../.built/hello/hello.js', import.meta.url));

const say = (line: string) => process.stdout.write(`${line}\n`);

/** Writes the process's own processor time to a fourth stream when it ends. */
const TELL_CPU = `data:text/javascript,${encodeURIComponent(
  `import { writeSync } from 'node:fs';
   process.on('exit', () => {
     const { user, system } = process.cpuUsage();
     writeSync(3, String((user + system) / 1000));
   });`,
)}`;

/** Processor time of a process in milliseconds. */
function take(args: readonly string[], home: string, data = join(home, 'data')): number {
  const env = {
    PATH: process.env.PATH,
    HOME: home,
    HOLDFAST_DATA: data,
    XDG_CONFIG_HOME: join(home, 'config'),
    XDG_STATE_HOME: join(home, 'state'),
  };
  const { status, stderr, output } = spawnSync(process.execPath, ['--import', TELL_CPU, ...args], {
    env,
    maxBuffer: 2 ** 30,
    stdio: ['ignore', 'pipe', 'pipe', 'pipe'],
  });
  // 1 is an answer as well: a load that cannot be made exactly.
  if (status !== 0 && status !== 1) throw new Error(`${args.join(' ')}: ${status} ${stderr}`);
  return Number(String(output[3]));
}

/** Smallest, median and largest. */
function spread(of: readonly number[]): readonly [number, number, number] {
  const sorted = of.toSorted((a, b) => a - b);
  return [sorted[0] ?? 0, sorted[Math.floor(sorted.length / 2)] ?? 0, sorted.at(-1) ?? 0];
}

const over: string[] = [];

type Measure = () => number | Promise<number>;

/** One row: A's processor time, and A ÷ B pair by pair against its bar. */
async function compare(
  name: string,
  a: Measure,
  b: Measure,
  against: string,
  bar: number,
  unit = 'ms',
): Promise<void> {
  await a();
  await b();
  const pairs: [number, number][] = [];
  while (pairs.length < PAIRS) pairs.push([await a(), await b()]);
  const [least, middle, most] = spread(pairs.map(([one, two]) => one / two));
  const [used] = spread(pairs.map(([one]) => one));
  const ratio = `${middle.toFixed(2)} (${least.toFixed(2)} to ${most.toFixed(2)})`;
  say(
    `${name.padEnd(34)} ${`${used.toFixed(0)} ${unit}`.padStart(8)}  ÷ ${against.padEnd(18)} ${ratio.padEnd(24)} bar ${bar}`,
  );
  if (middle > bar) over.push(`${name}: ${middle.toFixed(2)} × ${against}, over ${bar}`);
}

const read = readProgramFile(PROGRAM);
if (!read.ok) throw new Error('The shipped program cannot be read.');
const { program } = read;
say(`Rehearsing ${YEARS} years …`);
const history = rehearsedHistory(program, {
  until: Temporal.Now.plainDateISO('UTC'),
  weeks: YEARS * 52,
  loss: 0,
  seed: 1,
  gear: defaultGear(program.unit),
  bodyMass: kilograms(84.6),
});

const homes: string[] = [];
function newHome(): string {
  const home = mkdtempSync(join(tmpdir(), 'holdfast-bench-'));
  homes.push(home);
  return home;
}

/** The program that was trained by is remembered, as after any session, and nothing was changed just now. */
function remember(home: string): string {
  mkdirSync(join(home, 'config', 'holdfast'), { recursive: true });
  const programs = { [join(home, 'data')]: PROGRAM };
  const settings = JSON.stringify({ programs, cautions: 'read', weightAdvice: 'no' });
  writeFileSync(join(home, 'config', 'holdfast', 'settings.json'), settings);
  // The first start gives this device its id.
  take([CLI, 'today'], home);
  age(home);
  return home;
}

/** The same years as this machine wrote them, and as they came out of one exported file. */
function layouts(years: number): readonly (readonly [name: string, home: string])[] {
  const { folder } = writeLongHistory(history, years * SESSIONS_A_YEAR, 'bench');
  homes.push(folder);
  const [imported, file] = [newHome(), join(folder, 'history.json')];
  take([CLI, 'export', '--as', 'json', '--out', file], folder);
  take([CLI, 'import', file], imported);
  age(join(imported, 'data'));
  return [
    [`${years} y`, remember(folder)],
    [`${years} y imported`, remember(imported)],
  ];
}

try {
  const empty = remember(newHome());
  const bare = () => take(['-e', ''], empty);
  const today = (home: string) => () => take([CLI, 'today', '--json'], home);
  // Its answer is kept for this very command line alone.
  const firstToday = (home: string) => () => take([CLI, 'today', '--json', '--quiet'], home);
  const hello = async () => (await firstFrame(HELLO, empty)).cpu;
  const frame = (home: string) => async () => (await firstFrame(CLI, home)).cpu;
  /** As for the first time on a day. */
  const withoutPicture = (home: string) => {
    rmSync(join(home, '.cache', 'holdfast', 'picture.kept'), { force: true });
    return firstFrame(CLI, home);
  };
  const newFrame = (home: string) => async () => (await withoutPicture(home)).cpu;
  const memory = (home: string) => async () => (await withoutPicture(home)).memory;
  say('Least ms of processor time; ratios as median (least to most).');
  await compare('--version', () => take([CLI, '--version'], empty), bare, 'bare Node', 1.5);
  await compare('today, empty', today(empty), bare, 'bare Node', 2.5);
  await compare('first frame, empty', frame(empty), hello, 'bare Ink hello', 1.3);
  await compare('first of a day, empty', newFrame(empty), hello, 'bare Ink hello', 2.5);
  for (const [name, home] of [...layouts(1), ...layouts(YEARS)]) {
    await compare(`today, ${name}`, today(home), today(empty), 'today, empty', 1.1);
    await compare(`first today, ${name}`, firstToday(home), firstToday(empty), 'first, empty', 4);
    await compare(`first frame, ${name}`, frame(home), hello, 'bare Ink hello', 1.3);
    await compare(`first of a day, ${name}`, newFrame(home), hello, 'bare Ink hello', 4.5);
    await compare(`memory, ${name}`, memory(home), memory(empty), 'memory, empty', 1.2, 'MB');
    for (const command of ['review', 'history']) {
      const ms = Math.min(...Array.from({ length: 5 }, () => take([CLI, command], home)));
      say(`${`${command}, ${name}`.padEnd(34)} ${`${ms.toFixed(0)} ms`.padStart(8)}  bar 1000 ms`);
      if (ms > 1000) over.push(`${command}, ${name}: ${ms.toFixed(0)} ms`);
    }
  }
  const home = newHome();
  const load = ownTimeOfLoad((...args) => take([CLI, ...args], home));
  say(`load, twelve plate sizes ${load.toFixed(0)} ms of its own  bar ${MOST_OF_LOAD} ms`);
  if (load > MOST_OF_LOAD) over.push(`load: over ${MOST_OF_LOAD} ms of its own`);
} finally {
  for (const folder of homes) rmSync(folder, { recursive: true, force: true });
}
if (over.length > 0) say(['', 'Over a bar:', ...over.map((each) => `  ${each}`)].join('\n'));
process.exitCode = over.length > 0 ? 1 : 0;
