import { spawnSync } from 'node:child_process';
import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { Temporal } from 'temporal-polyfill';
import { readProgramFile } from '../../src/program/read-file.ts';
import { rehearsedHistory } from '../../src/rehearsal/rehearsed-history.ts';
import { defaultGear } from '../../src/training/default-gear.ts';
import { kilograms } from '../../src/training/mass.ts';
import { ownTimeOfLoad } from './load-in-mixed-gear.ts';
import { writeLongHistory } from './long-history.ts';

/**
 * How long whole commands take on years of training: `npm run bench`, or `npm run bench -- 312` for
 * two years in place of ten. Exit 1 when a limit is not kept.
 */
const MOST = Number(process.argv[2] ?? 1560);
const SIZES = [MOST / 10, MOST / 2, MOST].map(Math.round);
/** Milliseconds for a load out of plates in both units, without the start of the program. */
const MOST_OF_LOAD = 50;
/** The best of so many runs counts: whatever else the machine does only ever adds to it. */
const RUNS = 9;

const COMMANDS: readonly { readonly args: readonly string[]; readonly limit?: number }[] = [
  { args: ['--version'] },
  { args: ['today', '--json'] },
  { args: ['review'], limit: 1000 },
  { args: ['history'], limit: 1000 },
  { args: ['history', 'back-squat'], limit: 1000 },
  { args: ['export', '--as', 'csv'] },
  { args: ['export', '--as', 'html'] },
];

const CLI = fileURLToPath(new URL('../../dist/cli.js', import.meta.url));
const PROGRAM = fileURLToPath(new URL('../../programs/three-day.yaml', import.meta.url));

const say = (line: string) => process.stdout.write(`${line}\n`);

interface Took {
  /** Milliseconds from the start of Node to the end of the output. */
  readonly wall: number;
  /** Milliseconds of processor time: what is left to tell on a machine with other work. */
  readonly cpu: number;
}

/** Writes the process's own processor time to a fourth stream when it ends. */
const TELL_CPU = `data:text/javascript,${encodeURIComponent(
  `import { writeSync } from 'node:fs';
   process.on('exit', () => {
     const { user, system } = process.cpuUsage();
     writeSync(3, String((user + system) / 1000));
   });`,
)}`;

function take(args: readonly string[], folder: string, data: string): Took {
  const env = {
    PATH: process.env.PATH,
    HOME: folder,
    HOLDFAST_DATA: data,
    XDG_CONFIG_HOME: join(folder, 'config'),
    XDG_STATE_HOME: join(folder, 'state'),
  };
  const start = performance.now();
  const { status, stderr, output } = spawnSync(
    process.execPath,
    ['--import', TELL_CPU, CLI, ...args],
    { env, maxBuffer: 2 ** 30, stdio: ['ignore', 'pipe', 'pipe', 'pipe'] },
  );
  if (status !== 0) throw new Error(`${args.join(' ')}: ${status} ${stderr}`);
  return { wall: performance.now() - start, cpu: Number(String(output[3])) };
}

/** The best of all runs, each number for itself. */
const best = (runs: readonly Took[]): Took => ({
  wall: Math.min(...runs.map(({ wall }) => wall)),
  cpu: Math.min(...runs.map(({ cpu }) => cpu)),
});

const read = readProgramFile(PROGRAM);
if (!read.ok) throw new Error('The shipped program cannot be read.');
const { program } = read;
say(`Rehearsing ${MOST} sessions …`);
const history = rehearsedHistory(program, {
  until: Temporal.Now.plainDateISO('UTC'),
  weeks: Math.ceil(MOST / program.daysPerWeek),
  loss: 0,
  seed: 1,
  gear: defaultGear(program.unit),
  bodyMass: kilograms(84.6),
});

const written = SIZES.map((sessions) => writeLongHistory(history, sessions, 'bench'));
const late: string[] = [];
try {
  say('Best of all runs, in ms: wall clock, and processor time in brackets.');
  say(['command'.padEnd(20), ...SIZES.map((size) => `${size} sessions`.padStart(16))].join(''));
  for (const { args, limit } of COMMANDS) {
    const took = written.map(({ folder, data }) =>
      best(Array.from({ length: RUNS }, () => take(args, folder, data))),
    );
    const name = args.join(' ');
    const cells = took.map(({ wall, cpu }) =>
      `${wall.toFixed(0)} (${cpu.toFixed(0)})`.padStart(16),
    );
    say([name.padEnd(20), ...cells].join(''));
    if (limit !== undefined && (took.at(-1)?.wall ?? 0) > limit)
      late.push(`${name}: over ${limit} ms`);
  }
} finally {
  for (const { folder } of written) rmSync(folder, { recursive: true, force: true });
}
const load = ownTimeOfLoad(CLI);
say(`load, twelve plate sizes ${load.toFixed(0)} ms of its own`);
if (load > MOST_OF_LOAD) late.push(`load: over ${MOST_OF_LOAD} ms of its own`);
for (const each of late) say(each);
process.exitCode = late.length > 0 ? 1 : 0;
