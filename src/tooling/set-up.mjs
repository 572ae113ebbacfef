import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { ROOT } from './root.mjs';

// This file and start.mjs run before anything is installed, on whatever Node the machine has: no
// dependency, and nothing newer than Node 18.

const STAMP = join(ROOT, 'node_modules/.cache/holdfast/set-up.json');
const OWN_NODE = join(
  ROOT,
  'node_modules/node/bin',
  process.platform === 'win32' ? 'node.exe' : 'node',
);
const BUILT = 'dist/cli.js';

/** Below it npm leaves out what the build and the tests are run with. */
const NEEDED_BY_TOOLS = /** @type {const} */ ([22, 13]);

/**
 * What the last set-up left behind.
 * @typedef {object} Stamp
 * @property {string} installed what the installed packages were made from
 * @property {boolean} own the clone's own runtime works here
 * @property {string} [built] what the last build was made from
 */

/** A reason to stop that the person at the terminal can act on: one sentence, no stack. */
export class CannotSetUp extends Error {}

/**
 * Makes sure that packages are installed, and that the program is built unless the caller builds.
 * Does nothing but compare two stamps when all is in place.
 * @param {{ oldest: readonly [number, number], builds?: boolean }} needs the oldest Node that will do
 * @returns {string} the Node to run the program with
 */
export function setUpMachine({ oldest, builds = false }) {
  const before = readStamp();
  const stamp = installed(before, oldest);
  const node = stamp.own ? OWN_NODE : process.execPath;
  if (!stamp.own && isOlder(process.versions.node, oldest)) {
    throw new CannotSetUp(
      `holdfast could not install its own Node and this machine has ${process.versions.node}: install Node ${oldest.join('.')} or newer (24 is best) and try again.`,
    );
  }
  if (!builds) {
    const sources = sourcesPrint();
    if (stamp.built !== sources || !existsSync(join(ROOT, BUILT))) {
      build(node);
      stamp.built = sources;
    }
  }
  if (JSON.stringify(stamp) !== JSON.stringify(before)) writeStamp(stamp);
  return node;
}

/**
 * @param {Stamp | null} before
 * @param {readonly [number, number]} oldest
 * @returns {Stamp}
 */
function installed(before, oldest) {
  const print = packagesPrint();
  const hasNode = before?.own ? existsSync(OWN_NODE) : !isOlder(process.versions.node, oldest);
  if (before?.installed === print && hasNode) return { ...before };
  if (!packagesArePresent()) install();
  else if (!ownNodeWorks()) npm(['rebuild', 'node', '--foreground-scripts=false']);
  const own = ownNodeWorks();
  // What npm left out because the machine's Node is too old for it, the clone's own can run.
  if (own && isOlder(process.versions.node, NEEDED_BY_TOOLS)) npm(['install'], OWN_NODE);
  return { installed: print, own };
}

function install() {
  say('holdfast: setting up (once, up to a minute) …');
  // `npm ci` starts by deleting all packages, under the feet of anything that runs from them.
  const kept = existsSync(join(ROOT, 'node_modules/.package-lock.json'));
  const way = kept || !lockIsInStep() ? 'install' : 'ci';
  const first = npm([way]);
  if (first.ok) return;
  // Without scripts everything works but the clone's own runtime, which one of them fetches.
  const second = npm([way, '--ignore-scripts']);
  if (second.ok) return;
  throw new CannotSetUp(
    `holdfast could not install its packages; npm says: ${firstLine(second.words) || firstLine(first.words) || 'nothing'}`,
  );
}

/** @param {string} node */
function build(node) {
  const { status } = spawnSync(node, [join(ROOT, 'src/tooling/build.mjs')], {
    stdio: ['ignore', 2, 2],
  });
  if (status !== 0) throw new CannotSetUp('holdfast could not be built; the reason stands above.');
}

/**
 * @param {string[]} args
 * @param {string} node to run npm with, where its path is known
 * @returns {{ ok: boolean, words: string }}
 */
function npm(args, node = process.execPath) {
  const own = process.env.npm_execpath ?? '';
  const isNpm = /^npm(-cli)?\.c?js$/.test(basename(own));
  const windows = process.platform === 'win32';
  const [command, before] = isNpm ? [node, [own]] : ['npm', []];
  const quiet = ['--loglevel=error', '--no-audit', '--no-fund', '--no-progress', '--include=dev'];
  const { status, error, stderr } = spawnSync(command, [...before, ...args, ...quiet], {
    cwd: ROOT,
    encoding: 'utf8',
    stdio: ['ignore', 'ignore', 'pipe'],
    shell: windows && !isNpm,
  });
  return { ok: status === 0, words: error?.message ?? stderr ?? '' };
}

/** Whether every package of the lock file is there, in the version it names. */
function packagesArePresent() {
  const present = readJson('node_modules/.package-lock.json')?.packages;
  const locked = readJson('package-lock.json')?.packages;
  if (!present || !locked || !lockIsInStep()) return false;
  return Object.entries(locked).every(
    ([path, { version, optional, peer }]) =>
      path === '' || present[path]?.version === version || (!present[path] && (optional || peer)),
  );
}

function lockIsInStep() {
  const wanted = readJson('package.json');
  const locked = readJson('package-lock.json')?.packages?.[''];
  return ['dependencies', 'devDependencies'].every(
    (kind) => JSON.stringify(wanted?.[kind]) === JSON.stringify(locked?.[kind]),
  );
}

function ownNodeWorks() {
  return existsSync(OWN_NODE) && spawnSync(OWN_NODE, ['--version']).status === 0;
}

function packagesPrint() {
  const { dependencies, devDependencies } = readJson('package.json') ?? {};
  const lock = readFileSync(join(ROOT, 'package-lock.json'));
  return createHash('sha1')
    .update(JSON.stringify([process.platform, process.arch, dependencies, devDependencies]))
    .update(lock)
    .digest('hex');
}

/** Sizes and times rather than contents: they change with every edit, and cost a tenth. */
function sourcesPrint() {
  const hash = createHash('sha1').update(packagesPrint());
  for (const path of ['package.json', ...filesUnder('src'), ...filesUnder('programs')]) {
    const { size, mtimeMs } = statSync(join(ROOT, path));
    hash.update(`${path}\n${size}\n${mtimeMs}\n`);
  }
  return hash.digest('hex');
}

/**
 * @param {string} folder
 * @returns {string[]}
 */
function filesUnder(folder) {
  if (!existsSync(join(ROOT, folder))) return [];
  return readdirSync(join(ROOT, folder), { withFileTypes: true })
    .sort((a, b) => (a.name < b.name ? -1 : 1))
    .flatMap((entry) => {
      const path = `${folder}/${entry.name}`;
      return entry.isDirectory() ? filesUnder(path) : [path];
    });
}

/** @returns {Stamp | null} */
function readStamp() {
  return readJson('node_modules/.cache/holdfast/set-up.json');
}

/** @param {Stamp} stamp */
function writeStamp(stamp) {
  mkdirSync(join(STAMP, '..'), { recursive: true });
  writeFileSync(STAMP, JSON.stringify(stamp));
}

/** @param {string} path */
function readJson(path) {
  try {
    return JSON.parse(readFileSync(join(ROOT, path), 'utf8'));
  } catch {
    return null; // missing or cut short by an interrupted install: both mean "set up again"
  }
}

/**
 * @param {string} version
 * @param {readonly [number, number]} oldest
 */
function isOlder(version, oldest) {
  const [major = 0, minor = 0] = version.split('.').map(Number);
  return major < oldest[0] || (major === oldest[0] && minor < oldest[1]);
}

/** @param {string} words */
function firstLine(words) {
  const lines = words.split('\n').map((line) => line.replace(/^npm (error|ERR!) ?/, '').trim());
  const isField = /^(code|syscall|errno|path|dest|command|cwd|type) /;
  return lines.find((line) => line !== '' && !isField.test(line)) ?? '';
}

/** @param {string} words */
function say(words) {
  process.stderr.write(`${words}\n`);
}
