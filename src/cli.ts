import { lstatSync, mkdirSync } from 'node:fs';
import module from 'node:module';
import { homedir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { VERSION } from './commands/version.ts';
import { foldersFor } from './settings/folders.ts';
import { tellWriteErrors } from './terminal/write-errors.ts';

// The same from src/ and from dist/.
const shippedPrograms = fileURLToPath(new URL('../programs/', import.meta.url));

// Compiled code is kept from one start to the next, where this Node can (from 22.1): in a folder of
// this user's alone, for what lies in it is run.
const compiled = compiledFolder();
if (compiled !== null) module.enableCompileCache?.(compiled);

/** Null where it cannot be made, or is open to others. */
function compiledFolder(): string | null {
  const { env, platform } = process;
  const sources = { env, platform, home: homedir(), dataOption: null, cwd: '/' };
  const folder = join(foldersFor(sources).cache, 'compiled');
  try {
    mkdirSync(folder, { recursive: true, mode: 0o700 });
    const { mode, uid } = lstatSync(folder);
    const isOwn = process.getuid === undefined || uid === process.getuid();
    return isOwn && (platform === 'win32' || (mode & 0o077) === 0) ? folder : null;
  } catch {
    return null;
  }
}

const argv = process.argv.slice(2);

// Scripts ask for the version alone, and nothing has to be read for it.
if (argv.length === 1 && (argv[0] === '--version' || argv[0] === '-V')) {
  tellWriteErrors(process.stdout);
  process.stdout.write(`${VERSION}\n`);
} else {
  const [{ runCli }, { systemPorts }] = await Promise.all([
    import('./commands/run-cli.ts'),
    import('./lifter/system-ports.ts'),
  ]);
  await runCli(systemPorts(shippedPrograms), argv);
}
