import { type Instance, type RenderOptions, render } from 'ink';
import type { ReactElement } from 'react';
import type { Clock } from '../lifter/ports.ts';
import type { Key, NamedKey } from '../terminal/key-decoder.ts';
import { type KeyStream, keySource, StandInStdin } from '../terminal/key-source.ts';
import {
  EMPTY_SCREEN,
  enterModes,
  leaveModes,
  REPEATS_OFF,
  REPEATS_ON,
  writeLast,
} from '../terminal/modes.ts';
import { inOneWrite, type Picture } from '../terminal/picture.ts';
import { plainStdout } from '../terminal/plain-stdout.ts';
import { terminalKind } from '../terminal/terminal-kind.ts';
import { type SignalSource, waysOut } from '../terminal/ways-out.ts';
import type { Size } from './model.ts';

/** The terminal and what ends the program. */
export interface ScreenPorts {
  readonly stdin: KeyStream;
  readonly stdout: NodeJS.WriteStream;
  readonly clock: Pick<Clock, 'read' | 'after'>;
  readonly env: Readonly<Record<string, string | undefined>>;
  /** The process, whose signals and uncaught errors end the program in order. */
  readonly signals: SignalSource;
  readonly screenReader: boolean;
  /** What stands on the terminal since the program was started; it is drawn over. */
  readonly picture?: Picture | undefined;
  /** Called with what the first frame was drawn with. */
  readonly drawn?: (bytes: string) => void;
}

/** What an app may do with the terminal it runs on. */
export interface OwnTerminal {
  readonly size: Size;
  readonly write: (bytes: string) => void;
  /** Hands a key to the text field that has the focus. */
  readonly type: (key: Key) => void;
  readonly leave: (status: number) => void;
}

/** An app that owns the terminal. */
export interface OnScreen {
  readonly view: ReactElement;
  /** Are taps on the screen wanted from the start? */
  readonly taps: boolean;
  /** The terminal is ready; nothing is drawn yet. */
  readonly opened: () => void;
  readonly key: (key: Key) => void;
  readonly resized: (size: Size) => void;
  /** The end: nothing may be written any more. */
  readonly stopped: () => void;
}

/**
 * Runs an app on the whole terminal until it leaves, and gives back the exit status: its own, 130
 * after ctrl-c, 143 after SIGTERM, 129 after a hang-up. The terminal is as it was before, whatever
 * happened; a bug comes back as a rejection after that.
 */
export function onScreen(
  ports: ScreenPorts,
  open: (terminal: OwnTerminal) => OnScreen,
): Promise<number> {
  const { stdin, clock, screenReader } = ports;
  const stdout = plainStdout(ports.stdout, ports.env);
  const { progress } = terminalKind(ports.env);
  const write = (bytes: string) => void stdout.write(bytes);
  const standIn = new StandInStdin();
  return new Promise((resolve, reject) => {
    let over = false;
    const finish = (status: number, error: unknown) => {
      if (over) return;
      over = true;
      app.stopped();
      stopKeys();
      stdout.off('resize', resized);
      stopWatching();
      // To a terminal that hung up Ink's own farewell would be written when it is gone.
      if (status === HUNG_UP) writeLast(ports.stdout as { fd?: number }, leaveModes({ progress }));
      else {
        try {
          if (!screenReader) write(REPEATS_OFF);
          // Before the modes go back: its last frame belongs on the alternate screen.
          instance.unmount();
        } finally {
          write(leaveModes({ progress }));
        }
      }
      if (error === null) resolve(status);
      else reject(error);
    };
    const restore = () => {
      if (!over) write(leaveModes({ progress }));
    };
    const stopWatching = waysOut(ports.signals, restore, finish);
    const app = open({
      size: sizeOf(stdout),
      write,
      type: (key) => {
        const bytes = keyBytes(key);
        if (bytes !== null) standIn.type(bytes);
      },
      leave: (status) => finish(status, null),
    });
    const resized = () => app.resized(sizeOf(stdout));
    const keyPorts = {
      now: () => clock.read().wall,
      after: (ms: number, act: () => void) => clock.after(ms, act),
    };
    // Before anything is drawn: what is typed meanwhile must not be echoed into it.
    const stopKeys = keySource(stdin, keyPorts, app.key, () => finish(HUNG_UP, null));
    if (!screenReader) write(enterModes({ taps: app.taps, progress }));
    app.opened();
    const options: RenderOptions = {
      stdout,
      // Ink reads no more of a stdin than the stand-in has.
      stdin: standIn as unknown as NodeJS.ReadStream,
      interactive: true,
      exitOnCtrlC: false,
      patchConsole: false,
      incrementalRendering: true,
      alternateScreen: !screenReader,
      isScreenReaderEnabled: screenReader,
    };
    let instance!: Instance;
    // With the first frame: the screen is cleared when it is entered, and would stay empty meanwhile.
    const bytes = inOneWrite(ports.stdout, () => {
      // In the place of the picture, where the terminal does not clear a screen that is on already.
      if (ports.picture?.takenOver()) write(EMPTY_SCREEN);
      instance = render(app.view, options);
    });
    ports.drawn?.(bytes);
    if (!screenReader) write(REPEATS_ON);
    instance.waitUntilExit().then(
      () => finish(0, null),
      (error: unknown) => finish(1, error),
    );
    stdout.on('resize', resized);
    stdout.on('error', () => finish(HUNG_UP, null));
  });
}

const HUNG_UP = 129;

const sizeOf = ({ columns, rows }: NodeJS.WriteStream): Size => ({
  columns: columns || 80,
  rows: rows || 24,
});

const BYTES: Readonly<Partial<Record<NamedKey, string>>> = {
  space: ' ',
  enter: '\r',
  backspace: '\u007f',
  delete: '\u001b[3~',
  left: '\u001b[D',
  right: '\u001b[C',
};

/** A key in the bytes that a text field reads; null for keys that it should not see. */
function keyBytes(key: Key): string | null {
  if (key.kind === 'text' || key.kind === 'paste') return key.text;
  return key.kind === 'named' ? (BYTES[key.name] ?? null) : null;
}
