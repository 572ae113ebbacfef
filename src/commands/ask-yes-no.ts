import { createInterface } from 'node:readline/promises';
import type { Call } from './call.ts';

/** Is somebody there to be asked: a terminal on both sides, and no document wanted? */
export const isAttended = ({ ports: { stdin, stdout }, global }: Pick<Call, 'ports' | 'global'>) =>
  stdin.isTTY === true && stdout.isTTY === true && !global.json;

/** Asks on the terminal; enter alone is the usual answer, and so is what is neither yes nor no. */
export async function askYesNo(
  { ports }: Pick<Call, 'ports'>,
  question: string,
  usual: 'yes' | 'no',
): Promise<boolean> {
  const lines = createInterface({ input: ports.stdin, output: ports.stdout });
  try {
    const answer = (await lines.question(`${question} [${usual}]: `)).trim();
    return (/^[yn]/i.test(answer) ? answer : usual).toLowerCase().startsWith('y');
  } finally {
    lines.close();
  }
}
