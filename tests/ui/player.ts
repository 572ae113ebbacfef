import type { Cue } from '../../src/terminal/cue.ts';
import { decodeKeys } from '../../src/terminal/key-decoder.ts';
import { type Frame, frameOf } from '../../src/ui/frame.ts';
import { textOf } from '../../src/ui/line.ts';
import type { Size } from '../../src/ui/model.ts';
import { spokenLines } from '../../src/ui/spoken/spoken-lines.ts';
import { createStore, type Store } from '../../src/ui/store.ts';
import type { Screen } from '../../src/ui/ui-state.ts';
import { type Scene, type SceneOptions, scene } from './scene.ts';

export const LAPTOP: Size = { columns: 80, rows: 24 };
export const PHONE: Size = { columns: 34, rows: 16 };
export const WIDE: Size = { columns: 120, rows: 40 };

/** The keys, screens and cues of the program over the invented day, without a terminal. */
export class Player {
  readonly scene: Scene;
  readonly store: Store;
  readonly cues: Cue[] = [];
  readonly left: number[] = [];
  /** Keys pressed so far. */
  pressed = 0;

  constructor(size: Size = LAPTOP, options: SceneOptions & { start?: Screen; over?: Scene } = {}) {
    this.scene = options.over ?? scene(options);
    const { coach, clock } = this.scene;
    const start = options.start ?? { kind: 'preview', today: coach.today(), chosen: 0 };
    this.store = createStore(start, size, {
      coach,
      clock,
      play: (cue) => this.cues.push(cue),
      type: () => {},
      leave: (status) => this.left.push(status),
    });
  }

  /**
   * Types keys as a terminal sends them; `<down>` and the like stand for named ones. A key comes a
   * quarter of a second after the one before, a space two seconds: nobody lifts a bar in less.
   */
  keys(text: string): this {
    const bytes = text.replace(/<([a-z-]+)>/g, (_, name: string) => NAMED[name] ?? '');
    const { keys } = decodeKeys(bytes, null, 0);
    const escaped = bytes.endsWith('\u001b')
      ? decodeKeys('', { text: '\u001b', since: 0 }, 1_000)
      : null;
    for (const key of [...keys, ...(escaped?.keys ?? [])]) {
      this.pressed += 1;
      this.wait(key.kind === 'named' && key.name === 'space' ? A_SET_S : A_KEY_S);
      this.store.key(key);
    }
    return this;
  }

  tap(column: number, row: number): this {
    this.wait(A_SET_S);
    this.store.key({ kind: 'tap', column, row });
    return this;
  }

  /** Lets seconds go by. */
  wait(seconds: number): this {
    this.scene.clock.pass(seconds * 1000);
    return this;
  }

  frame(): Frame {
    return frameOf(this.store.model(), this.scene.coach);
  }

  screen(): string {
    return this.frame()
      .lines.map((line) => textOf(line).trimEnd())
      .join('\n');
  }

  spoken(): readonly string[] {
    return spokenLines(this.store.model(), this.scene.coach);
  }

  /** The work sets of an exercise as `count@reserve`. */
  sets(exercise: number): string {
    const { done = [] } = this.scene.session().exercises[exercise] ?? {};
    return done.map(({ count, reserve }) => `${count}@${reserve ?? '-'}`).join(' ');
  }

  /** Goes from the preview to the first work set of the first lift, ready to be lifted. */
  atFirstSet(): this {
    return this.keys(' s');
  }

  /** Goes on to the cluster: its lead set is next. */
  atCluster(): this {
    return this.keys(' x<down><down> s');
  }
}

const A_SET_S = 2;
const A_KEY_S = 0.25;

const NAMED: Readonly<Record<string, string>> = {
  up: '\u001b[A',
  down: '\u001b[B',
  right: '\u001b[C',
  left: '\u001b[D',
  enter: '\r',
  esc: '\u001b',
  tab: '\t',
  'shift-tab': '\u001b[Z',
  backspace: '\u007f',
  'ctrl-c': '\u0003',
  'ctrl-u': '\u0015',
};
