import type { Ports } from '../lifter/ports.ts';
import { isPlainLocale, plainText } from '../text/plain.ts';
import { safeOutput } from '../text/safe-text.ts';
import type { Call } from './call.ts';

/**
 * The ways out of a command. Names of files, notes and arguments may hold what a terminal acts on; all
 * of it goes through here.
 */
export function outputOf({
  env,
  stdout,
  stderr,
}: Pick<Ports, 'env' | 'stdout' | 'stderr'>): Pick<Call, 'print' | 'write' | 'warn'> {
  const safe = (text: string) => `${safeOutput(text)}\n`;
  const isPlain = isPlainLocale(env);
  const words = (text: string) => (isPlain ? plainText(safe(text)) : safe(text));
  return {
    print: (text) => void stdout.write(words(text)),
    write: (text) => void stdout.write(safe(text)),
    warn: (text) => void stderr.write(words(text)),
  };
}
