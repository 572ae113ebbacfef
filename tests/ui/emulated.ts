import { EventEmitter } from 'node:events';
import headless from '@xterm/headless';
import { vi } from 'vitest';
import type { KeyStream } from '../../src/terminal/key-source.ts';

/** How long a busy machine may take to draw what a test waits for. */
const PATIENCE_MS = 30_000;
vi.setConfig({ testTimeout: 4 * PATIENCE_MS });

/** One key as a terminal sends it: an escape sequence, or a character. */
const KEY = /\u001b\[200~[\s\S]*?\u001b\[201~|\u001b\[[0-9;?<]*[A-Za-z~]|[\s\S]/gu;

class Keyboard extends EventEmitter implements KeyStream {
  readonly isTTY = true;
  raw = false;
  setRawMode(on: boolean) {
    this.raw = on;
  }
  setEncoding() {}
  resume() {}
  pause() {}
}

/** A terminal within the test: a keyboard, and a glass that shows what was written to it. */
export class Emulated {
  readonly keyboard = new Keyboard();
  readonly stdout: NodeJS.WriteStream;
  readonly #emulator: headless.Terminal;
  readonly #size: EventEmitter & { columns: number; rows: number };
  #raw = '';

  constructor(columns = 80, rows = 24) {
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
    this.#size = stdout;
    this.stdout = stdout as unknown as NodeJS.WriteStream;
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

  /** Types keys; `before` is done before each. */
  type(keys: string, before: () => void = () => {}): void {
    for (const key of keys.match(KEY) ?? []) {
      before();
      this.keyboard.emit('data', key);
    }
  }

  resize(columns: number, rows: number): void {
    this.#emulator.resize(columns, rows);
    Object.assign(this.#size, { columns, rows });
    this.#size.emit('resize');
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
