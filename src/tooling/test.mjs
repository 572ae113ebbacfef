import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs';
import { delimiter, dirname, join } from 'node:path';
import { ROOT } from './root.mjs';
import { CannotSetUp, setUpMachine } from './set-up.mjs';

const RESULT = join(ROOT, 'node_modules/.cache/holdfast/tests.json');

/**
 * @typedef {object} Step
 * @property {string} name
 * @property {string[]} args for Node
 * @property {boolean} [enabled] true when left out
 */

try {
  process.exitCode = runAll(
    setUpMachine({ oldest: [22, 12], builds: true }),
    process.argv.slice(2),
  );
} catch (error) {
  if (!(error instanceof CannotSetUp)) throw error;
  process.stderr.write(`${error.message}\n`);
  close(0, 1);
  process.exitCode = 1;
}

/**
 * Runs every check in order, the quick ones first, up to the first that fails.
 * @param {string} node
 * @param {string[]} options
 * @returns {number} exit code
 */
function runAll(node, options) {
  const quick = options.includes('--check');
  const forTests = options.filter((option) => option !== '--check');
  rmSync(RESULT, { force: true });
  mkdirSync(dirname(RESULT), { recursive: true });
  for (const step of steps(quick, forTests)) {
    if (step.enabled === false) continue;
    process.stdout.write(`\n── ${step.name}\n`);
    const start = performance.now();
    const { status } = spawnSync(node, step.args, {
      cwd: ROOT,
      stdio: ['ignore', 'inherit', 'inherit'],
      env: { ...process.env, PATH: `${dirname(node)}${delimiter}${process.env.PATH ?? ''}` },
    });
    const seconds = ((performance.now() - start) / 1000).toFixed(1);
    process.stdout.write(`${status === 0 ? '✓' : '✗'} ${step.name}, ${seconds} s\n`);
    if (status === 0) continue;
    const { passed, failed } = counts();
    close(passed, Math.max(failed, 1));
    return 1;
  }
  const { passed, failed } = counts();
  close(passed, failed);
  return failed > 0 || passed === 0 ? 1 : 0;
}

/**
 * @param {boolean} quick without what needs a terminal or the network
 * @param {string[]} forTests
 * @returns {Step[]}
 */
function steps(quick, forTests) {
  const tool = (/** @type {string} */ path) => join('node_modules', path);
  const driven = existsSync(join(ROOT, 'tests/terminal/driven.ts')) ? ['--driven'] : [];
  return [
    { name: 'types', args: [tool('typescript/bin/tsc')] },
    { name: 'lint and format', args: [tool('@biomejs/biome/bin/biome'), 'check', '.'] },
    { name: 'unused code', args: [tool('knip/bin/knip.js'), '--no-progress'] },
    { name: 'rooms', args: ['src/tooling/check-rooms.mjs'] },
    { name: 'build', args: ['src/tooling/build.mjs', ...driven] },
    {
      name: 'oldest Node',
      args: ['src/tooling/runtimes.mjs', '--oldest'],
      enabled: !quick,
    },
    {
      name: 'tests',
      args: [
        tool('vitest/vitest.mjs'),
        'run',
        '--config=tests/vitest.config.ts',
        '--reporter=default',
        '--reporter=json',
        `--outputFile.json=${RESULT}`,
        ...(quick ? ['--project=cores'] : []),
        ...forTests,
      ],
    },
  ];
}

/** What vitest counted; a test file that could not even be read counts as one failure. */
function counts() {
  if (!existsSync(RESULT)) return { passed: 0, failed: 0 };
  const { numPassedTests, numFailedTests, testResults } = JSON.parse(readFileSync(RESULT, 'utf8'));
  const unread = testResults.filter(
    (/** @type {{status: string, assertionResults: {status: string}[]}} */ file) =>
      file.status === 'failed' && !file.assertionResults.some(({ status }) => status === 'failed'),
  );
  return { passed: numPassedTests, failed: numFailedTests + unread.length };
}

/**
 * @param {number} passed
 * @param {number} failed
 */
function close(passed, failed) {
  process.stdout.write(`\n${passed} passed, ${failed} failed\n`);
}
