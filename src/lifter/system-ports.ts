import { accessSync, constants, readFileSync } from 'node:fs';
import { homedir, hostname, uptime } from 'node:os';
import { basename, delimiter, join } from 'node:path';
import { nodeFiles } from '../journal/disk/files.ts';
import type { Clock, Ports } from './ports.ts';

/** The real machine. `shippedPrograms`: folder of the programs that holdfast ships. */
export function systemPorts(shippedPrograms: string): Ports {
  const { env, platform, stdin, stdout, stderr } = process;
  return {
    clock: systemClock(platform),
    files: nodeFiles,
    env,
    platform,
    home: homedir(),
    cwd: process.cwd(),
    machineName: hostname(),
    shippedPrograms,
    stdin,
    stdout,
    stderr,
    spawn: (command, args) => {
      // Few starts speak or ring, and it is slow to load.
      void import('node:child_process').then(({ spawn }) => {
        const child = spawn(command, [...args], { stdio: 'ignore', detached: true });
        // A missing program is no reason to stop a session.
        child.on('error', () => {});
        child.unref();
      });
    },
    build: buildOf(import.meta.url),
  };
}

/** The parts of a build are named after what is in them, and in all that they lead to. */
const buildOf = (url: string): string | null => (url.endsWith('.ts') ? null : basename(url));

/**
 * The machine's clock. `up` counts sleep on Linux and Windows (`os.uptime`, CLOCK_BOOTTIME on
 * Linux) and is only trusted where a boot id tells one run of the machine from the next.
 */
function systemClock(platform: NodeJS.Platform): Clock {
  const boot = bootId(platform);
  return {
    read: () => ({
      wall: Date.now(),
      up: boot === null ? null : Math.round(uptime() * 1000),
      boot,
    }),
    zone: (wall) => -new Date(wall).getTimezoneOffset(),
    after: (ms, act) => {
      const timer = setTimeout(act, ms);
      return () => clearTimeout(timer);
    },
  };
}

function bootId(platform: NodeJS.Platform): string | null {
  if (platform !== 'linux') return null;
  try {
    return readFileSync('/proc/sys/kernel/random/boot_id', 'utf8').trim();
  } catch {
    // Not every container has it; the wall clock serves then.
    return null;
  }
}

/** Is there a program of that name on the search path? */
export function hasProgram(
  command: string,
  env: Readonly<Record<string, string | undefined>>,
): boolean {
  return (env.PATH ?? '').split(delimiter).some((folder) => {
    try {
      accessSync(join(folder, command), constants.X_OK);
      return folder !== '';
    } catch {
      return false;
    }
  });
}
