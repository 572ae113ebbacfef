/** The part of `process` that ways out are watched on. */
export type SignalSource = Pick<NodeJS.EventEmitter, 'on' | 'off'>;

/** Exit status after a signal: 128 and its number. */
const SIGNALS: Readonly<Record<string, number>> = { SIGINT: 130, SIGTERM: 143, SIGHUP: 129 };

/**
 * Calls `restore` on every way out that the program does not choose itself: a signal, an error
 * that nobody caught, the end of the process. `leave` then ends the program with the status. The
 * returned function stops watching.
 */
export function waysOut(
  source: SignalSource,
  restore: () => void,
  leave: (status: number, error: unknown) => void,
): () => void {
  const listeners: [string, (error: unknown) => void][] = [
    ['exit', restore],
    ...['uncaughtException', 'unhandledRejection'].map(
      (event): [string, (error: unknown) => void] => [
        event,
        (error) => {
          restore();
          leave(1, error);
        },
      ],
    ),
    ...Object.entries(SIGNALS).map(([signal, status]): [string, () => void] => [
      signal,
      () => {
        // After a hang-up there is no terminal to write to.
        if (signal !== 'SIGHUP') restore();
        leave(status, null);
      },
    ]),
  ];
  for (const [event, listener] of listeners) source.on(event, listener);
  return () => {
    for (const [event, listener] of listeners) source.off(event, listener);
  };
}
