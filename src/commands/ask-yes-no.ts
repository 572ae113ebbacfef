import { createInterface } from 'node:readline/promises';
import type { Call } from './call.ts';

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
