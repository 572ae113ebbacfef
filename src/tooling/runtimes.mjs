import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { ROOT } from './root.mjs';

const OLDEST = '20.15.0';
const RUNTIMES = [OLDEST, '20', '22', '24', '26'];

/**
 * @typedef {object} Smoke
 * @property {string[]} args
 * @property {RegExp} says what must stand in what the program prints
 */

/** @type {Smoke[]} */
const SMOKE = [
  { args: ['--version'], says: /^\d+\.\d+\.\d+\s*$/ },
  { args: ['--help'], says: /holdfast/ },
  { args: ['today'], says: /\S/ },
  { args: ['today', '--json'], says: /^\{[\s\S]*\}\s*$/ },
];

/** Where the program keeps things; none of the person's own is read or written here. */
const OWN_FOLDERS = [
  'HOLDFAST_DATA',
  'XDG_CONFIG_HOME',
  'XDG_DATA_HOME',
  'XDG_STATE_HOME',
  'XDG_CACHE_HOME',
];

const given = process.argv.slice(2);
const mayMiss = given.includes('--oldest');
const wanted = mayMiss ? [OLDEST] : given.length > 0 ? given : RUNTIMES;
const folder = mkdtempSync(join(tmpdir(), 'holdfast-runtimes-'));
try {
  const program = unpacked(folder);
  for (const version of wanted) tryOut(version, program);
} finally {
  rmSync(folder, { recursive: true, force: true });
}

/**
 * The program as it would be published, so that a file left out of the package is missed here.
 * @param {string} into
 * @returns {string} the packed program's entry
 */
function unpacked(into) {
  // Not by npm's own prepack: that clears dist/, which a running session may still load from.
  must(process.execPath, ['src/tooling/build.mjs'], ROOT);
  const args = ['pack', '--ignore-scripts', '--loglevel=error', `--pack-destination=${into}`];
  must('tar', ['-xf', must('npm', args, ROOT).trim()], into);
  return join(into, 'package/dist/cli.js');
}

/**
 * @param {string} version
 * @param {string} program
 */
function tryOut(version, program) {
  const home = mkdtempSync(join(folder, 'home-'));
  /** @param {string[]} args */
  const node = (args) =>
    run(
      'npm',
      ['exec', '--yes', '--loglevel=error', `--package=node@${version}`, '--', 'node', ...args],
      home,
      Object.fromEntries(OWN_FOLDERS.map((name) => [name, join(home, name)])),
    );
  const found = node(['--version']);
  if (found.status !== 0) {
    // The test command must not fail for want of a network alone.
    const offline = /ENOTFOUND|EAI_AGAIN|ECONNREFUSED|ETIMEDOUT|ENOTCACHED/.test(found.stderr);
    console.log(`Node ${version}: ${offline ? 'not tried, no network' : 'could not be fetched'}`);
    if (!(offline && mayMiss)) fail(found.stderr);
    return;
  }
  for (const { args, says } of SMOKE) {
    const { status, stdout, stderr } = node([program, ...args]);
    const right = status === 0 && says.test(stdout);
    console.log(`Node ${found.stdout.trim()}: ${args.join(' ')} ${right ? 'ok' : 'FAILED'}`);
    if (!right) fail(`exit ${status}\n${stdout}${stderr}`);
  }
}

/**
 * @param {string} command
 * @param {string[]} args
 * @param {string} cwd
 */
function must(command, args, cwd) {
  const { status, stdout, stderr } = run(command, args, cwd);
  if (status !== 0) throw new Error(`${command} ${args[0]} ended with ${status}: ${stderr}`);
  return stdout;
}

/** @param {string} words */
function fail(words) {
  console.error(words);
  process.exitCode = 1;
}

/**
 * @param {string} command
 * @param {string[]} args
 * @param {string} cwd
 * @param {Record<string, string>} [env]
 */
function run(command, args, cwd, env = {}) {
  const { status, stdout, stderr, error } = spawnSync(command, args, {
    cwd,
    encoding: 'utf8',
    env: { ...process.env, ...env },
    stdio: ['ignore', 'pipe', 'pipe'],
    shell: process.platform === 'win32' && command === 'npm',
  });
  if (error) throw error;
  return { status, stdout, stderr };
}
