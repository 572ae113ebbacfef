import { type RenderOptions, render } from 'ink';
import { cuePlayer } from '../terminal/cue-player.ts';
import { type KeyStream, keySource } from '../terminal/key-source.ts';
import { enterModes, leaveModes, progressCode, tapMode, titleCode } from '../terminal/modes.ts';
import { speechProgram } from '../terminal/speech.ts';
import { StandInStdin } from '../terminal/stand-in-stdin.ts';
import { terminalKind } from '../terminal/terminal-kind.ts';
import { type SignalSource, waysOut } from '../terminal/ways-out.ts';
import type { Bench } from '../workbench/bench.ts';
import type { Clock } from '../workbench/clock.ts';
import type { Spawn } from '../workbench/ports.ts';
import { App } from './app.tsx';
import { keyBytes } from './key-bytes.ts';
import { createStore } from './store.ts';
import { progressOf, titleOf } from './title.ts';
import type { Screen } from './ui-state.ts';

export interface AppPorts {
  readonly stdin: KeyStream;
  readonly stdout: NodeJS.WriteStream;
  readonly clock: Clock;
  readonly env: Readonly<Record<string, string | undefined>>;
  readonly platform: NodeJS.Platform;
  readonly spawn: Spawn;
  /** Is there such a program on the search path? */
  readonly hasProgram: (command: string) => boolean;
  /** The process, whose signals and uncaught errors end the program in order. */
  readonly signals: SignalSource;
  readonly screenReader: boolean;
}

/**
 * Runs the screens until the lifter leaves, and gives back the exit status: 0, 130 after ctrl-c,
 * 143 after SIGTERM, 129 after a hang-up. The terminal is as it was before, whatever happened; a
 * bug comes back as a rejection after that.
 */
export async function runApp(start: Screen, bench: Bench, ports: AppPorts): Promise<number> {
  const { stdin, stdout, clock, screenReader } = ports;
  const kind = terminalKind(ports.env);
  const { progress } = kind;
  const write = (bytes: string) => void stdout.write(bytes);
  const now = () => clock.read().wall;
  const after = (ms: number, act: () => void) => clock.after(ms, act);
  const player = cuePlayer(
    { write, spawn: ports.spawn, after, now },
    speechProgram(ports.platform, ports.hasProgram),
    kind.notice,
  );
  const standIn = new StandInStdin();
  return new Promise((resolve, reject) => {
    let over = false;
    const finish = (status: number, error: unknown) => {
      if (over) return;
      over = true;
      player.stop();
      store.stop();
      stopKeys(status === HUNG_UP);
      stdout.off('resize', resized);
      stopWatching();
      // A terminal that hung up must not be written to, and Ink's own farewell would be.
      if (status !== HUNG_UP) {
        try {
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
    const store = createStore(start, sizeOf(stdout), {
      bench,
      clock,
      play: (cue) => player.play(cue, bench.choices()),
      type: (key) => {
        const bytes = keyBytes(key);
        if (bytes !== null) standIn.type(bytes);
      },
      leave: (status) => finish(status, null),
    });
    const resized = () => store.resize(sizeOf(stdout));
    // Before anything is drawn: what is typed meanwhile must not be echoed into it.
    const stopKeys = keySource(stdin, { now, after }, store.key, () => finish(HUNG_UP, null));
    if (!screenReader) write(enterModes({ taps: store.model().choices.taps, progress }));
    const outside = outsideWriter(write, progress, screenReader);
    outside(store.model());
    store.subscribe(() => outside(store.model()));
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
    const instance = render(<App store={store} bench={bench} />, options);
    instance.waitUntilExit().then(
      () => finish(0, null),
      (error: unknown) => finish(1, error),
    );
    stdout.on('resize', resized);
    stdout.on('error', () => finish(HUNG_UP, null));
  });
}

const HUNG_UP = 129;

const sizeOf = ({ columns, rows }: NodeJS.WriteStream) => ({
  columns: columns || 80,
  rows: rows || 24,
});

/** Title, progress and taps, written when they change. */
function outsideWriter(write: (bytes: string) => void, progress: boolean, screenReader: boolean) {
  let title = '';
  let share: string | null = null;
  let taps: boolean | null = null;
  return (model: Parameters<typeof titleOf>[0]) => {
    const nextTitle = titleOf(model);
    if (nextTitle !== title) write(titleCode(nextTitle));
    title = nextTitle;
    const nextShare = progress ? progressCode(progressOf(model)) : null;
    if (nextShare !== null && nextShare !== share) write(nextShare);
    share = nextShare;
    if (taps !== null && taps !== model.choices.taps && !screenReader)
      write(tapMode(model.choices.taps));
    taps = model.choices.taps;
  };
}
