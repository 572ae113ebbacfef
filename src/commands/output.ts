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
  picture,
}: Pick<Ports, 'env' | 'stdout' | 'stderr' | 'picture'>): Pick<Call, 'print' | 'write' | 'warn'> {
  const safe = (text: string) => `${safeOutput(text)}\n`;
  const isPlain = isPlainLocale(env);
  const words = (text: string) => (isPlain ? plainText(safe(text)) : safe(text));
  const onto = (stream: NodeJS.WriteStream, text: string) => {
    // What is written over a picture of the screens would go with it.
    picture?.takenAway();
    stream.write(text);
  };
  return {
    print: (text) => onto(stdout, words(text)),
    write: (text) => onto(stdout, safe(text)),
    warn: (text) => onto(stderr, words(text)),
  };
}
