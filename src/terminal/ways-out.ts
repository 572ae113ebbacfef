/** The part of `process` that ways out are watched on. */
export type SignalSource = Pick<NodeJS.EventEmitter, 'on' | 'off'>;

/** Exit status after a signal: 128 and its number. */
const SIGNALS: Readonly<Record<string, number>> = { SIGINT: 130, SIGTERM: 143, SIGHUP: 129 };

/**
 * Watches every way out that the program does not choose itself. A signal or an error that nobody
 * caught calls `leave` with the status; the end of the process calls `restore`, for what left
 * without either. The returned function stops watching all but signals: a library that raises a
 * signal again must not end the program before its own end, with another status.
 */
export function waysOut(
  source: SignalSource,
  restore: () => void,
  leave: (status: number, error: unknown) => void,
): () => void {
  const crashed = (error: unknown) => leave(1, error);
  const listeners: readonly [string, (error: unknown) => void][] = [
    ['exit', restore],
    ['uncaughtException', crashed],
    ['unhandledRejection', crashed],
  ];
  for (const [event, listener] of listeners) source.on(event, listener);
  for (const [signal, status] of Object.entries(SIGNALS)) {
    source.on(signal, () => leave(status, null));
  }
  return () => {
    for (const [event, listener] of listeners) source.off(event, listener);
  };
}
