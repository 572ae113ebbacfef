import type { Call } from './call.ts';

/** So long may work go on before it looks whether the lifter wants it to stop. */
const BREATH_MS = 50;

/** Ends the line that progress is written on. */
const CLEARED = '\r\u001b[K';

/**
 * Does one step after the other, and shows on a terminal how far it is. Ctrl-c stops between two
 * steps, never within one; gives what the steps gave that were done.
 * @param what `Importing`: what is going on
 */
export async function longWork<T>(
  call: Pick<Call, 'ports' | 'global'>,
  what: string,
  steps: readonly (() => T)[],
): Promise<readonly T[]> {
  const line = progressLine(call, what, steps.length);
  const now = () => call.ports.clock.read().wall;
  const done: T[] = [];
  let isStopped = false;
  const stop = () => {
    isStopped = true;
  };
  process.on('SIGINT', stop);
  try {
    let breath = now();
    for (const step of steps) {
      done.push(step());
      // A clock that was set back only lets the next breath come late.
      if (now() - breath < BREATH_MS) continue;
      line.show(done.length);
      await new Promise(setImmediate);
      breath = now();
      if (isStopped) break;
    }
  } finally {
    process.off('SIGINT', stop);
    line.clear();
  }
  return done;
}

/** A line on stderr that says how far something is; nothing where nobody watches. */
export function progressLine(
  { ports: { stderr }, global }: Pick<Call, 'ports' | 'global'>,
  what: string,
  all: number,
) {
  const isShown = stderr.isTTY === true && !global.quiet;
  return {
    show: (done: number): void => {
      if (isShown) stderr.write(`\r${what}: ${done} of ${all}`);
    },
    clear: (): void => {
      if (isShown) stderr.write(CLEARED);
    },
  };
}
