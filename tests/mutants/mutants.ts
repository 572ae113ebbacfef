import { spawnSync } from 'node:child_process';
import {
  cpSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { seededRandom } from '../../src/rehearsal/seeded-random.ts';
import { type Mutant, mutantsOf } from './mutants-of.ts';

/**
 * Changes one line of `src/` at a time and runs the tests that import the file, to see which
 * changes no test notices. `npm run mutants -- 24 --seed 7 --room progression`
 *
 * A survivor is a test that is missing, or a change that makes no difference: those are listed in
 * `equivalent.txt`, a line each, and not drawn. All of it happens in a copy, so that one who stops
 * it in the middle is left with their own files.
 */
const HOME = fileURLToPath(new URL('../../', import.meta.url));
const ROOT = mkdtempSync(join(tmpdir(), 'holdfast-mutants-'));
process.on('exit', () => rmSync(ROOT, { recursive: true, force: true }));
process.on('SIGINT', () => process.exit(130));
const NOT_COPIED = /\/(node_modules|dist|\.git|\.built)$/;
cpSync(HOME, ROOT, { recursive: true, filter: (path) => !NOT_COPIED.test(path) });
symlinkSync(join(HOME, 'node_modules'), join(ROOT, 'node_modules'), 'junction');

/** Rooms whose tests need no terminal. */
const ROOMS = readdirSync(join(ROOT, 'src'), { withFileTypes: true })
  .filter((entry) => entry.isDirectory() && entry.name !== 'tooling')
  .map(({ name }) => name);
/** A mutant that loops for ever is noticed, too. */
const MOST_MS = 180_000;
const MOST_SURVIVING = 1 / 12;

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    seed: { type: 'string', default: '1' },
    room: { type: 'string', multiple: true, default: ROOMS },
  },
});
const wanted = Number(positionals[0] ?? 24);
const random = seededRandom(Number(values.seed));
const known = new Set(readFileSync(new URL('equivalent.txt', import.meta.url), 'utf8').split('\n'));

const survivors: Mutant[] = [];
const drawn = draw(wanted);
for (const [index, mutant] of drawn.entries()) {
  const noticed = isNoticed(mutant);
  if (!noticed) survivors.push(mutant);
  const said = noticed ? 'noticed ' : 'SURVIVED';
  console.log(`${index + 1}/${drawn.length} ${said} line ${mutant.line}, ${mutant.change}`);
}
console.log(`\nseed ${values.seed}: ${survivors.length} of ${drawn.length} survived`);
for (const { change } of survivors) console.log(`  ${change}`);
if (survivors.length > drawn.length * MOST_SURVIVING) process.exitCode = 1;

/** Rooms are drawn first, so that a large one does not crowd out a small one. */
function draw(count: number): Mutant[] {
  const byRoom = values.room.map((room) => sourcesOf(room).flatMap(mutantsIn));
  const drawn = new Map<string, Mutant>();
  for (let tries = 0; drawn.size < count && tries < count * 50; tries += 1) {
    const room = byRoom[Math.floor(random.uniform() * byRoom.length)] ?? [];
    const mutant = room[Math.floor(random.uniform() * room.length)];
    if (mutant && !known.has(mutant.change)) drawn.set(mutant.change, mutant);
  }
  return [...drawn.values()];
}

function sourcesOf(room: string): string[] {
  return readdirSync(join(ROOT, 'src', room), { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.tsx?$/.test(name))
    .map((name) => `src/${room}/${name.replaceAll('\\', '/')}`)
    .toSorted();
}

function mutantsIn(path: string): readonly Mutant[] {
  return mutantsOf(path, readFileSync(join(ROOT, path), 'utf8'));
}

function isNoticed({ path, before, after }: Mutant): boolean {
  const file = join(ROOT, path);
  writeFileSync(file, after);
  try {
    const run = spawnSync(
      process.execPath,
      [
        'node_modules/vitest/vitest.mjs',
        'related',
        path,
        '--run',
        '--bail=1',
        '--config=tests/vitest.config.ts',
        '--project=cores',
        '--silent',
      ],
      { cwd: ROOT, encoding: 'utf8', timeout: MOST_MS },
    );
    return run.status !== 0;
  } finally {
    writeFileSync(file, before);
  }
}
