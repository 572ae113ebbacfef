import type { Coach } from '../lifter/coach.ts';
import type { Clock, Spawn } from '../lifter/ports.ts';
import { cuePlayer } from '../terminal/cue-player.ts';
import { progressCode, tapMode, titleCode } from '../terminal/modes.ts';
import { speechProgram } from '../terminal/speech.ts';
import { terminalKind } from '../terminal/terminal-kind.ts';
import { App } from './app.tsx';
import type { Model } from './model.ts';
import { onScreen, type ScreenPorts } from './on-screen.ts';
import { phaseOf } from './phase.ts';
import { createStore } from './store.ts';
import type { Screen } from './ui-state.ts';
import { countdownText } from './words.ts';

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

/** Title of the window: the time left, so that a glance at the tab is enough. */
function titleOf({ session, now }: Model): string {
  if (!session || session.stage.kind === 'closed') return 'holdfast';
  if (session.pausedSince) return 'paused';
  const phase = phaseOf(session, now);
  if (phase.kind === 'resting') return `${countdownText(coarse(phase.leftMs))} rest`;
  if (phase.kind === 'over' || phase.kind === 'lifting') return 'lift';
  return phase.kind === 'all-done' ? 'done' : 'ready';
}

/** In steps of fifteen seconds until the last fifteen: a tab that flickers is noise, and costs bytes. */
const coarse = (ms: number): number => (ms > 15_000 ? Math.ceil(ms / 15_000) * 15_000 : ms);

/** Share of the rest that is over, 0 to 1; null while none runs. */
function progressOf({ session, now }: Model): number | null {
  const phase = session && !session.pausedSince ? phaseOf(session, now) : null;
  if (phase?.kind !== 'resting') return null;
  const whole = phase.running.rest.to * 1000;
  return whole > 0 ? Math.min(1, phase.elapsedMs / whole) : null;
}
