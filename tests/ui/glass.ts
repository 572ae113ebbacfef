import { EventEmitter } from 'node:events';
import headless from '@xterm/headless';
import { vi } from 'vitest';
import type { KeyStream } from '../../src/terminal/key-source.ts';
import { type AppPorts, runApp } from '../../src/ui/run-app.tsx';
import type { Screen } from '../../src/ui/ui-state.ts';
import { type Scene, type SceneOptions, scene } from './scene.ts';

/** How long a busy machine may take to draw what a test waits for. */
const PATIENCE_MS = 15_000;
vi.setConfig({ testTimeout: 2 * PATIENCE_MS });

/** One key as a terminal sends it: an escape sequence, or a character. */
const KEY = /\u001b\[200~[\s\S]*?\u001b\[201~|\u001b\[[0-9;?<]*[A-Za-z~]|[\s\S]/gu;

class Keyboard extends EventEmitter implements KeyStream {
  raw = false;
  setRawMode(on: boolean) {
    this.raw = on;
  }
  setEncoding() {}
  resume() {}
  pause() {}
}

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
export class Glass {
  readonly scene: Scene;
  readonly signals = new EventEmitter();
  readonly spoken: string[] = [];
  readonly keyboard = new Keyboard();
  readonly end: Promise<number>;
  readonly #emulator: headless.Terminal;
  readonly #stdout: EventEmitter & { columns: number; rows: number };
  #raw = '';

  constructor(options: GlassOptions = {}) {
    const { columns = 80, rows = 24, start, screenReader = false, env = {} } = options;
    this.scene = scene(options);
    this.#emulator = new headless.Terminal({ cols: columns, rows, allowProposedApi: true });
    const stdout = Object.assign(new EventEmitter(), {
      columns,
      rows,
      isTTY: true,
      write: (data: string, done?: () => void) => {
        this.#raw += data;
        // What a terminal's line discipline does in raw mode with output processing on.
        this.#emulator.write(data.replace(/\r?\n/g, '\r\n'));
        done?.();
        return true;
      },
    });
    this.#stdout = stdout;
    const first = start?.(this.scene) ?? {
      kind: 'preview',
      today: this.scene.coach.today(),
      chosen: 0,
    };
    const ports: AppPorts = {
      stdin: this.keyboard,
      stdout: stdout as unknown as NodeJS.WriteStream,
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

  /** Everything written so far. */
  get raw(): string {
    return this.#raw;
  }

  async screen(): Promise<string> {
    await new Promise<void>((resolve) => this.#emulator.write('', resolve));
    const { active } = this.#emulator.buffer;
    return Array.from({ length: this.#emulator.rows }, (_, row) => {
      // After the window got narrower the emulator keeps the cells beyond its edge.
      const line = active.getLine(active.viewportY + row);
      return line?.translateToString(true, 0, this.#emulator.cols).trimEnd() ?? '';
    }).join('\n');
  }

  modes() {
    const { mouseTrackingMode, bracketedPasteMode } = this.#emulator.modes;
    return {
      buffer: this.#emulator.buffer.active.type,
      mouse: mouseTrackingMode,
      paste: bracketedPasteMode,
      cursorHidden: this.#raw.lastIndexOf('\u001b[?25l') > this.#raw.lastIndexOf('\u001b[?25h'),
      raw: this.keyboard.raw,
    };
  }

  /** Types keys, each as long after the one before as a lift takes at least. */
  type(keys: string): void {
    for (const key of keys.match(KEY) ?? []) {
      this.scene.clock.pass(2_000);
      this.keyboard.emit('data', key);
    }
  }

  resize(columns: number, rows: number): void {
    this.#emulator.resize(columns, rows);
    Object.assign(this.#stdout, { columns, rows });
    this.#stdout.emit('resize');
  }

  /** Waits until the screen says `wanted`; fails with the screen as it is. */
  async until(wanted: string | RegExp): Promise<string> {
    const end = Date.now() + PATIENCE_MS;
    for (;;) {
      const screen = await this.screen();
      if (typeof wanted === 'string' ? screen.includes(wanted) : wanted.test(screen)) return screen;
      if (Date.now() > end) throw new Error(`The screen never said ${wanted}:\n${screen}`);
      await new Promise((resolve) => setTimeout(resolve, 5));
    }
  }

  /** Waits until more than so many characters were written in all. */
  async written(length: number): Promise<void> {
    const end = Date.now() + PATIENCE_MS;
    while (this.#raw.length <= length) {
      if (Date.now() > end) throw new Error(`Nothing was written:\n${await this.screen()}`);
      await new Promise((resolve) => setTimeout(resolve, 5));
    }
  }
}
