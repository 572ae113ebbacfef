import { type ChildProcess, spawn } from 'node:child_process';
import {
  cpSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { seededRandom } from '../../src/rehearsal/seeded-random.ts';
import { type Mutant, mutantsOf, withProbes } from './mutants-of.ts';

/**
 * Changes one place of `src/` at a time and runs the tests that meet it, to see which changes no
 * test notices. `npm run mutants -- 24 --seed 7,8 --room progression` draws them, and
 * `npm run mutants -- --again FILE` takes those that a file names, such as what an earlier run printed.
 *
 * First every test runs once, unchanged, and notes which of the drawn places it works out and how
 * long it takes; then each mutant is given to the tests that meet it, those of its file and room and
 * the quick ones first, for two minutes of tests in all: what none of those notices, and the types neither,
 * counts as a survivor. Tests that fail already are left out and named.
 *
 * A survivor is a test that is missing, or a change that makes no difference: those are listed in
 * `equivalent.txt`, a line each, and not drawn. Of the files in `data.txt` no numbers are drawn. All
 * of it happens in copies, so that one who stops it in the middle is left with their own files.
 */
const HOME = fileURLToPath(new URL('../../', import.meta.url));
/** So many mutants at a time, a copy of the project for each. */
const AT_ONCE = 2;
const MOST_TEST_MS = 120_000;
/** A mutant that loops for ever is noticed, too: after so many times what its tests take, and the start of them. */
const MOST_TIMES = 4;
const START_MS = 30_000;
const MOST_SURVIVING = 1 / 12;

const ROOT = mkdtempSync(join(tmpdir(), 'holdfast-mutants-'));
const running = new Set<ChildProcess>();
process.on('exit', () => {
  for (const child of running) child.kill('SIGKILL');
  rmSync(ROOT, { recursive: true, force: true });
});
process.on('SIGINT', () => process.exit(130));
process.on('SIGTERM', () => process.exit(143));
const COPIES = Array.from({ length: AT_ONCE }, (_, index) => copyOfProject(`${index}`));

/** Rooms whose tests need no terminal. */
const ROOMS = readdirSync(join(HOME, 'src'), { withFileTypes: true })
  .filter((entry) => entry.isDirectory() && entry.name !== 'tooling')
  .map(({ name }) => name);

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    seed: { type: 'string', default: '1' },
    room: { type: 'string', multiple: true, default: ROOMS },
    again: { type: 'string' },
  },
});
const known = new Set(listed('equivalent.txt'));
const data = new Set(listed('data.txt').map((line) => line.split(':')[0]));
const byRoom = values.room.map((room) => sourcesOf(room).flatMap(mutantsIn));

const wanted = Number(positionals[0] ?? 24);
const seeds = values.seed.split(',').map(Number);
const again = values.again === undefined ? null : readFileSync(values.again, 'utf8');
const drawn =
  again === null
    ? seeds.map((seed) => ({ of: `seed ${seed}`, mutants: draw(wanted, seed) }))
    : [{ of: values.again, mutants: byRoom.flat().filter(({ change }) => again.includes(change)) }];
const all = [...new Map(drawn.flatMap(({ mutants }) => mutants.map((one) => [one.change, one])))]
  .map(([, mutant]) => mutant)
  .map((mutant, id) => ({ ...mutant, id }));

// Types that are wrong already would notice whatever comes.
if (!(await typesFit(COPIES[0] ?? ROOT))) throw new Error('The types are wrong: mend them first.');
const met = await testsThatMeet(all);
const survivors = new Set<string>();
const waiting = [...all];
let done = 0;
await Promise.all(
  COPIES.map(async (copy) => {
    for (let next = waiting.shift(); next; next = waiting.shift()) {
      const tests = met.get(next.id) ?? [];
      const by = await noticedBy(next, tests, copy);
      if (by === null) survivors.add(next.change);
      const said = by ?? (tests.length > 0 ? 'SURVIVED' : 'NOT MET ');
      done += 1;
      console.log(`${done}/${all.length} ${said} line ${next.line}, ${next.change}`);
    }
  }),
);

for (const { of, mutants } of drawn) {
  const left = mutants.filter(({ change }) => survivors.has(change));
  console.log(`\n${of}: ${left.length} of ${mutants.length} survived`);
  for (const { change } of left) console.log(`  ${change}`);
  if (left.length > mutants.length * MOST_SURVIVING) process.exitCode = 1;
}

function copyOfProject(name: string): string {
  const to = join(ROOT, name);
  const isLeftOut = (path: string) => /\/(node_modules|\.git|\.built)$/.test(path);
  cpSync(HOME, to, { recursive: true, filter: (path) => !isLeftOut(path) });
  symlinkSync(join(HOME, 'node_modules'), join(to, 'node_modules'), 'junction');
  return to;
}

function listed(name: string): string[] {
  return readFileSync(new URL(name, import.meta.url), 'utf8')
    .split('\n')
    .filter(Boolean);
}

/** Rooms are drawn first, so that a large one does not crowd out a small one. */
function draw(count: number, seed: number): Mutant[] {
  const random = seededRandom(seed);
  const drawn = new Map<string, Mutant>();
  for (let tries = 0; drawn.size < count && tries < count * 50; tries += 1) {
    const room = byRoom[Math.floor(random.uniform() * byRoom.length)] ?? [];
    const mutant = room[Math.floor(random.uniform() * room.length)];
    if (mutant && !known.has(mutant.change)) drawn.set(mutant.change, mutant);
  }
  return [...drawn.values()];
}

function sourcesOf(room: string): string[] {
  return readdirSync(join(HOME, 'src', room), { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.tsx?$/.test(name))
    .map((name) => `src/${room}/${name.replaceAll('\\', '/')}`)
    .toSorted();
}

function mutantsIn(path: string): readonly Mutant[] {
  const text = readFileSync(join(HOME, path), 'utf8');
  return mutantsOf(path, text, { numbersAreData: data.has(path) });
}

interface TestFile {
  readonly path: string;
  /** How long it took, unchanged. */
  readonly ms: number;
}

/** Of each mutant the test files that work out its place: those of its file, of its room, the quickest first. */
async function testsThatMeet(
  mutants: readonly (Mutant & { readonly id: number })[],
): Promise<ReadonlyMap<number, readonly TestFile[]>> {
  const copy = COPIES[0] ?? ROOT;
  const folder = join(ROOT, 'met');
  const report = join(ROOT, 'report.json');
  mkdirSync(folder);
  for (const { path, before } of mutants) {
    const here = mutants.filter((other) => other.path === path);
    writeFileSync(join(copy, path), withProbes(before, here));
  }
  await vitest(copy, ['--maxWorkers=2', '--reporter=json', `--outputFile=${report}`], {
    HOLDFAST_MET: folder,
  });
  for (const { path, before } of mutants) writeFileSync(join(copy, path), before);

  const { testResults }: { testResults: { name: string; status: string }[] } = JSON.parse(
    readFileSync(report, 'utf8'),
  );
  const failing = new Set(
    testResults.filter(({ status }) => status === 'failed').map(({ name }) => name),
  );
  for (const name of failing) console.log(`left out, for it fails: ${relative(copy, name)}`);
  const files = readdirSync(folder)
    .map((name) => JSON.parse(readFileSync(join(folder, name), 'utf8')))
    .filter(({ test }) => !failing.has(test))
    .toSorted((a, b) => a.ms - b.ms);
  // The tests of a file, then those of its room: on a busy machine the time is over before the rest.
  const farness = (test: string, path: string): number => {
    const [, room = '', ...inside] = path.split('/');
    const name = inside.at(-1)?.replace(/\.tsx?$/, '') ?? '';
    if (test.endsWith(`/${name}.test.ts`)) return 0;
    return test.includes(`/tests/${room}/`) ? 1 : 2;
  };
  console.log(`${files.length} test files, ${mutants.length} mutants`);
  const testsOf = ({ id, path }: Mutant & { readonly id: number }): readonly TestFile[] => {
    let all = 0;
    return files
      .filter(({ ids }) => ids.includes(id))
      .toSorted((a, b) => farness(a.test, path) - farness(b.test, path))
      .map(({ test, ms }) => ({ path: relative(copy, test), ms }))
      .filter(({ ms }, at) => {
        all += ms;
        return at === 0 || all <= MOST_TEST_MS;
      });
  };
  return new Map(mutants.map((mutant) => [mutant.id, testsOf(mutant)]));
}

/** What `npm test` notices a mutant by: a test, or the types, which many a guard is there for; null: nothing. */
async function noticedBy(
  { path, before, after }: Mutant,
  tests: readonly TestFile[],
  copy: string,
): Promise<'noticed ' | 'by types' | null> {
  writeFileSync(join(copy, path), after);
  try {
    if (tests.length > 0 && (await isNoticed(tests, copy))) return 'noticed ';
    return (await typesFit(copy)) ? null : 'by types';
  } finally {
    writeFileSync(join(copy, path), before);
  }
}

async function typesFit(copy: string): Promise<boolean> {
  const tsc = ['node_modules/typescript/bin/tsc', '-p', '.', '--tsBuildInfoFile', `${copy}.json`];
  return (await node(copy, tsc)) === 0;
}

async function isNoticed(tests: readonly TestFile[], copy: string): Promise<boolean> {
  const list = `${copy}-tests.json`;
  const paths = tests.map(({ path: test }) => test);
  const ms = tests.reduce((sum, test) => sum + test.ms, 0);
  writeFileSync(list, JSON.stringify(paths));
  const args = [...paths, '--maxWorkers=1', '--bail=1', '--silent'];
  const status = await vitest(copy, args, { HOLDFAST_TESTS: list }, START_MS + MOST_TIMES * ms);
  return status !== 0;
}

function vitest(
  cwd: string,
  args: readonly string[],
  env: Readonly<Record<string, string>>,
  mostMs: number | null = null,
): Promise<number | null> {
  const run = ['node_modules/vitest/vitest.mjs', 'run', '--config=tests/mutants/vitest.config.ts'];
  return node(cwd, [...run, ...args], env, mostMs);
}

/** @returns the exit code, or null when it took too long */
function node(
  cwd: string,
  args: readonly string[],
  env: Readonly<Record<string, string>> = {},
  mostMs: number | null = null,
): Promise<number | null> {
  const child = spawn(process.execPath, [...args], {
    cwd,
    stdio: 'ignore',
    env: { ...process.env, ...env },
  });
  running.add(child);
  const limit = mostMs === null ? undefined : setTimeout(() => child.kill('SIGKILL'), mostMs);
  return new Promise((resolve) => {
    child.on('close', (code) => {
      clearTimeout(limit);
      running.delete(child);
      resolve(code);
    });
  });
}
