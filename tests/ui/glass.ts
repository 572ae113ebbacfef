import { EventEmitter } from 'node:events';
import { type AppPorts, runApp } from '../../src/ui/run-app.tsx';
import type { Screen } from '../../src/ui/ui-state.ts';
import { Emulated } from './emulated.ts';
import { type Scene, type SceneOptions, scene } from './scene.ts';

export interface GlassOptions extends SceneOptions {
  readonly columns?: number;
  readonly rows?: number;
  readonly start?: (scene: Scene) => Screen;
  readonly screenReader?: boolean;
  readonly env?: Record<string, string>;
}

/**
 * The real screens over the invented day: drawn by Ink into a terminal emulator, with a clock
 * that is held by the test.
 */
export class Glass extends Emulated {
  readonly scene: Scene;
  readonly signals = new EventEmitter();
  readonly spoken: string[] = [];
  readonly end: Promise<number>;

  constructor(options: GlassOptions = {}) {
    const { columns, rows, start, screenReader = false, env = {} } = options;
    super(columns, rows);
    this.scene = scene(options);
    const first = start?.(this.scene) ?? {
      kind: 'preview',
      today: this.scene.coach.today(),
      chosen: 0,
    };
    const ports: AppPorts = {
      stdin: this.keyboard,
      stdout: this.stdout,
      clock: this.scene.clock,
      env,
      platform: 'linux',
      spawn: (_, args) => this.spoken.push(args.at(-1) ?? ''),
      hasProgram: (command) => command === 'espeak-ng',
      signals: this.signals,
      screenReader,
    };
    this.end = runApp(first, this.scene.coach, ports).then(({ status }) => status);
  }

  /** Types keys, each as long after the one before as a lift takes at least. */
  override type(keys: string): void {
    super.type(keys, () => this.scene.clock.pass(2_000));
  }
}
