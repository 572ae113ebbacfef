import { EMPTY_SCREEN, ENTER_SCREEN, LEAVE_SCREEN, writeLast } from './modes.ts';
import type { SignalSource } from './ways-out.ts';

/** The first frame of an earlier start, on the terminal until the screens are drawn over it. */
export interface Picture {
  /** The screens take the terminal over; does the picture still stand? */
  readonly takenOver: () => boolean;
  /** Takes it away, where nothing took it over, and gives the terminal back as it was. */
  readonly takenAway: () => void;
}

const SIGNALS = ['SIGINT', 'SIGTERM', 'SIGHUP'] as const;

/**
 * Shows what {@link inOneWrite} gave. What is typed meanwhile waits for the screens.
 * @param source the process, whose end takes it away
 */
export function showPicture(
  bytes: string,
  { stdin, stdout }: { readonly stdin: NodeJS.ReadStream; readonly stdout: NodeJS.WriteStream },
  source: SignalSource,
): Picture {
  let stands = true;
  const takenOver = (): boolean => {
    const stood = stands;
    stands = false;
    source.off('exit', takenAway);
    for (const signal of SIGNALS) source.off(signal, ended);
    return stood;
  };
  const takenAway = (): void => {
    if (!takenOver()) return;
    writeLast(stdout as { fd?: number }, LEAVE_SCREEN);
    stdin.setRawMode?.(false);
  };
  const ended = (signal: NodeJS.Signals): void => {
    takenAway();
    // Nobody listens any more: it ends the process as usual.
    process.kill(process.pid, signal);
  };
  source.on('exit', takenAway);
  for (const signal of SIGNALS) source.on(signal, ended);
  stdin.setRawMode?.(true);
  // Both it and what is drawn over it begin in one place, wherever the cursor stood.
  stdout.write(`\r${bytes.replace(ENTER_SCREEN, ENTER_SCREEN + EMPTY_SCREEN)}`);
  return { takenOver, takenAway };
}

/** Writes at once what `act` writes to a stream piece by piece, so that no terminal shows half of it, and gives it back. */
export function inOneWrite(stream: Pick<NodeJS.WriteStream, 'write'>, act: () => void): string {
  const { write } = stream;
  let all = '';
  stream.write = (chunk: unknown) => {
    all += chunk;
    return true;
  };
  try {
    act();
  } finally {
    stream.write = write;
    stream.write(all);
  }
  return all;
}
