import { spawnSync } from 'node:child_process';
import { safeOutput } from '../text/safe-text.ts';
import type { Call } from './call.ts';

/** The pager shows colours and short texts as they are, begins at the end, and goes where one screen is enough. */
const USUAL_PAGER = 'less -FRX +G';

/**
 * Prints text; on a terminal that is too small for it through the lifter's pager, `PAGER`. An empty
 * one, or `cat`, prints at once, and so does a pager that is not there.
 */
export function printLong({ ports, print }: Pick<Call, 'ports' | 'print'>, text: string): void {
  const { stdin, stdout, env } = ports;
  const pager = (env.PAGER ?? USUAL_PAGER).trim();
  const isShort = text.split('\n').length < (stdout.rows ?? Number.POSITIVE_INFINITY);
  if (stdout.isTTY !== true || stdin.isTTY !== true || isShort || env.TERM === 'dumb' || !pager) {
    print(text);
    return;
  }
  const [command = '', ...options] = pager.split(/\s+/);
  const { status, error } = spawnSync(command, options, {
    input: `${safeOutput(text)}\n`,
    stdio: ['pipe', 'inherit', 'inherit'],
  });
  // 127 and ENOENT: there is no such program. A pager that was left early has shown enough.
  if (status === 127 || (error && 'code' in error && error.code === 'ENOENT')) print(text);
}
