import type { Coach } from '../lifter/coach.ts';
import type { Clock, Spawn } from '../lifter/ports.ts';
import { cuePlayer } from '../terminal/cue-player.ts';
import { progressCode, tapMode, titleCode } from '../terminal/modes.ts';
import { speechProgram } from '../terminal/speech.ts';
import { terminalKind } from '../terminal/terminal-kind.ts';
import { App } from './app.tsx';
import type { Model } from './model.ts';
import { onScreen, type ScreenPorts } from './on-screen.ts';
import { progressOf, titleOf } from './phase.ts';
import { createStore } from './store.ts';
import type { Screen } from './ui-state.ts';

export interface AppPorts extends ScreenPorts {
  readonly clock: Clock;
  readonly platform: NodeJS.Platform;
  readonly spawn: Spawn;
  /** Is there such a program on the search path? */
  readonly hasProgram: (command: string) => boolean;
}

/** How the screens were left. */
export interface Left {
  readonly status: number;
  readonly onto: 'demo' | null;
}

/** Runs the screens until the lifter leaves, and gives back how. */
export async function runApp(start: Screen, coach: Coach, ports: AppPorts): Promise<Left> {
  let next: Left['onto'] = null;
  const { clock, screenReader } = ports;
  const { progress, notice } = terminalKind(ports.env);
  const status = await onScreen(ports, ({ size, write, type, leave }) => {
    const player = cuePlayer(
      {
        write,
        spawn: ports.spawn,
        after: (ms, act) => clock.after(ms, act),
        now: () => clock.read().wall,
      },
      speechProgram(ports.platform, ports.hasProgram),
      notice,
    );
    const store = createStore(start, size, {
      coach,
      clock,
      play: (cue) => player.play(cue, coach.choices()),
      type,
      leave: (status, onto) => {
        next = onto ?? null;
        leave(status);
      },
    });
    return {
      view: <App store={store} coach={coach} />,
      taps: store.model().choices.taps,
      opened: () => {
        const outside = outsideWriter(write, progress, screenReader);
        outside(store.model());
        store.subscribe(() => outside(store.model()));
      },
      key: store.key,
      resized: store.resize,
      stopped: () => {
        player.stop();
        store.stop();
      },
    };
  });
  return { status, onto: next };
}

/** Title, progress and taps, written when they change. */
function outsideWriter(write: (bytes: string) => void, progress: boolean, screenReader: boolean) {
  let title = '';
  let share: string | null = null;
  let taps: boolean | null = null;
  return (model: Model) => {
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
