import { spawn } from 'node:child_process';
import { homedir, hostname } from 'node:os';
import { nodeFiles } from '../journal/disk/node-files.ts';
import type { Ports } from './ports.ts';
import { systemClock } from './system-clock.ts';

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
      const child = spawn(command, [...args], { stdio: 'ignore', detached: true });
      // A missing program is no reason to stop a session.
      child.on('error', () => {});
      child.unref();
    },
  };
}
