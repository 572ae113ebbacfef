import { spawn } from 'node:child_process';
import { realpathSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { ROOT } from './root.mjs';
import { CannotSetUp, setUpMachine } from './set-up.mjs';

const program = join(ROOT, 'dist/cli.js');

try {
  const node = setUpMachine({ oldest: [20, 15] });
  if (realpathSync(node) === realpathSync(process.execPath)) {
    // From the second start on npm itself finds the clone's own Node: no second process is needed.
    process.argv[1] = program;
    await import(pathToFileURL(program).href);
  } else {
    runWith(node);
  }
} catch (error) {
  if (!(error instanceof CannotSetUp)) throw error;
  process.stderr.write(`${error.message}\n`);
  process.exitCode = 1;
}

/**
 * Stays until the program ends, and ends as it ended.
 * @param {string} node
 */
function runWith(node) {
  const child = spawn(node, [program, ...process.argv.slice(2)], { stdio: 'inherit' });
  /** @type {NodeJS.Signals[]} */
  const signals = ['SIGINT', 'SIGTERM', 'SIGHUP'];
  /** @param {NodeJS.Signals} signal */
  const passOn = (signal) => {
    // A terminal sends its interrupt to both processes; the program must not see it twice.
    if (signal !== 'SIGINT' || !process.stdin.isTTY) child.kill(signal);
  };
  for (const signal of signals) process.on(signal, passOn);
  child.on('error', (error) => {
    process.stderr.write(`holdfast could not be started: ${error.message}\n`);
    process.exitCode = 1;
  });
  child.on('exit', (code, signal) => {
    for (const each of signals) process.off(each, passOn);
    if (signal) process.kill(process.pid, signal);
    else process.exitCode = code ?? 1;
  });
}
