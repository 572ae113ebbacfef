import { spawn } from 'node:child_process';
import {
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { ROOT } from '../../src/tooling/root.mjs';

/** Stands in for npm: notes how it was called, and installs unless told to fail at it. */
const NPM = `
import { appendFileSync, mkdirSync, writeFileSync } from 'node:fs';
const words = process.argv.slice(2).filter((word) => !/^--(log|no-|inc|fore)/.test(word)).join(' ');
appendFileSync('npm-calls', words + '\\n');
const fails = process.env.NPM_FAILS ?? 'never';
const scripts = !words.includes('--ignore-scripts');
if (fails === 'always' || (fails === 'scripts' && scripts)) {
  console.error('npm error code EWHY\\nnpm error there is no way');
  process.exit(1);
}
mkdirSync('node_modules/node/bin', { recursive: true });
const packages = { 'node_modules/a': { version: process.env.A_VERSION ?? '1.0.0' } };
writeFileSync('node_modules/.package-lock.json', JSON.stringify({ packages }));
const own = '#!/bin/sh\\nOWN_NODE=yes exec "' + process.execPath + '" "$@"\\n';
if (scripts) writeFileSync('node_modules/node/bin/node', own, { mode: 0o755 });
`;

/** Stands in for the build; what it builds tells how it was run, then ends as it is told to. */
const BUILD = `
import { appendFileSync, mkdirSync, writeFileSync } from 'node:fs';
if (process.env.BUILD_FAILS) process.exit(1);
appendFileSync('builds', 'built\\n');
mkdirSync('dist', { recursive: true });
writeFileSync('dist/cli.js', ${JSON.stringify(`
const [end, ...rest] = process.argv.slice(2);
console.log(JSON.stringify({ rest, own: process.env.OWN_NODE ?? 'no' }));
if (end === 'wait') setInterval(() => {}, 1000);
else if (end?.startsWith('SIG')) process.kill(process.pid, end);
else process.exitCode = Number(end ?? 0);
`)});
`;

let root: string;

beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'holdfast-start-'));
  mkdirSync(join(root, 'src/tooling'), { recursive: true });
  for (const name of ['root.mjs', 'set-up.mjs', 'start.mjs']) {
    cpSync(join(ROOT, 'src/tooling', name), join(root, 'src/tooling', name));
  }
  write('src/tooling/build.mjs', BUILD);
  write('npm-cli.js', NPM);
  write('package.json', { type: 'module', dependencies: { a: '^1.0.0' } });
  lock('1.0.0');
});

afterEach(() => rmSync(root, { recursive: true }));

function write(path: string, content: string | object) {
  writeFileSync(join(root, path), typeof content === 'string' ? content : JSON.stringify(content));
}

function lock(version: string) {
  const packages = {
    '': { dependencies: { a: '^1.0.0' } },
    'node_modules/a': { version },
    'node_modules/for-another-machine': { version: '1.0.0', optional: true },
  };
  write('package-lock.json', { packages });
}

interface Ended {
  code: number | null;
  signal: string | null;
  out: string;
  err: string;
}

function start(args: string[], env: Record<string, string> = {}, kill?: NodeJS.Signals) {
  return new Promise<Ended>((resolve) => {
    const child = spawn(process.execPath, ['src/tooling/start.mjs', ...args], {
      cwd: root,
      env: { ...process.env, npm_execpath: join(root, 'npm-cli.js'), ...env },
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    const ended: Ended = { code: null, signal: null, out: '', err: '' };
    child.stdout.on('data', (data) => {
      ended.out += data;
      if (kill) child.kill(kill);
    });
    child.stderr.on('data', (data) => {
      ended.err += data;
    });
    child.on('close', (code, signal) => resolve({ ...ended, code, signal }));
  });
}

const lines = (name: string) =>
  existsSync(join(root, name)) ? readFileSync(join(root, name), 'utf8').trim().split('\n') : [];

test('a fresh clone is installed from the lock file and built, once', async () => {
  const first = await start(['0', 'today', '--json']);
  expect(JSON.parse(first.out)).toEqual({ rest: ['today', '--json'], own: 'yes' });
  expect(first.err).toMatch(/^holdfast: setting up .*\n$/);
  expect(await start(['0'])).toMatchObject({ code: 0, err: '' });
  expect(lines('npm-calls')).toEqual(['ci']);
  expect(lines('builds')).toEqual(['built']);
});

test('a changed source is built again, a changed lock file installed over what runs', async () => {
  await start(['0']);
  write('src/cli.ts', 'changed');
  await start(['0']);
  expect(lines('builds')).toHaveLength(2);
  lock('1.0.1');
  await start(['0'], { A_VERSION: '1.0.1' });
  expect(lines('npm-calls')).toEqual(['ci', 'install']);
  expect(lines('builds')).toHaveLength(3);
});

test('packages that a contributor installed are left alone', async () => {
  await start(['0']);
  rmSync(join(root, 'node_modules/.cache'), { recursive: true });
  expect(await start(['0'])).toMatchObject({ code: 0, err: '' });
  expect(lines('npm-calls')).toEqual(['ci']);
});

test("where the clone's own Node cannot be fetched, the machine's runs the program", async () => {
  const { code, out } = await start(['0'], { NPM_FAILS: 'scripts' });
  expect(code).toBe(0);
  expect(JSON.parse(out).own).toBe('no');
  expect(lines('npm-calls')).toEqual(['ci', 'ci --ignore-scripts']);
  expect(await start(['0'], { NPM_FAILS: 'scripts' })).toMatchObject({ code: 0, err: '' });
  expect(lines('npm-calls')).toHaveLength(2);
});

test('an install that fails and a build that fails are one sentence each', async () => {
  const noInstall = await start(['0'], { NPM_FAILS: 'always' });
  expect(noInstall).toMatchObject({ code: 1, out: '' });
  expect(noInstall.err.split('\n').slice(1)).toEqual([
    'holdfast could not install its packages; npm says: there is no way',
    '',
  ]);
  const noBuild = await start(['0'], { BUILD_FAILS: 'yes' });
  expect(noBuild).toMatchObject({ code: 1, out: '' });
  expect(noBuild.err).toContain('holdfast could not be built; the reason stands above.');
});

test.each(['yes', 'no'])('ends as the program ends, on its own Node: %s', async (own) => {
  const env: Record<string, string> = own === 'yes' ? {} : { NPM_FAILS: 'scripts' };
  expect(await start(['3'], env)).toMatchObject({ code: 3, signal: null });
  expect(await start(['SIGTERM'], env)).toMatchObject({ code: null, signal: 'SIGTERM' });
  expect(await start(['SIGKILL'], env)).toMatchObject({ code: null, signal: 'SIGKILL' });
  expect(await start(['wait'], env, 'SIGTERM')).toMatchObject({ signal: 'SIGTERM' });
  expect(await start(['wait'], env, 'SIGINT')).toMatchObject({ signal: 'SIGINT' });
  expect(await start(['wait'], env, 'SIGHUP')).toMatchObject({ signal: 'SIGHUP' });
});
