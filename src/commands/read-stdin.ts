import { Refusal } from '../text/problem.ts';
import type { Call } from './call.ts';

/** Ten years of training, exported, are a tenth of it. */
const MOST_BYTES = 512 * 1024 * 1024;

/** Everything that comes on stdin, as text. @throws Refusal for what is no text, or endless */
export async function readStdin({ ports, tell }: Pick<Call, 'ports' | 'tell'>): Promise<string> {
  if (ports.stdin.isTTY === true) tell('Reading what you type; ctrl-d ends it.');
  const chunks: Uint8Array[] = [];
  let size = 0;
  for await (const chunk of ports.stdin) {
    const bytes = typeof chunk === 'string' ? Buffer.from(chunk) : (chunk as Uint8Array);
    size += bytes.length;
    if (size > MOST_BYTES) throw new Refusal({ what: 'More came on stdin than can be read.' });
    chunks.push(bytes);
  }
  return new TextDecoder().decode(Buffer.concat(chunks));
}

/** Does an operand name stdin? */
export const isStdin = (operand: string | null | undefined): boolean => operand === '-';
