import { type IPty, spawn } from '@lydell/node-pty';
import headless from '@xterm/headless';

export interface Launch {
  readonly command: string;
  readonly args: readonly string[];
  readonly env: Readonly<Record<string, string>>;
  readonly cwd: string;
  readonly columns?: number;
  readonly rows?: number;
}

/** What a screen is waited for to say. */
export type Wanted = string | RegExp | ((screen: string) => boolean);

const says = (screen: string, wanted: Wanted): boolean =>
  typeof wanted === 'function'
    ? wanted(screen)
    : typeof wanted === 'string'
      ? screen.includes(wanted)
      : wanted.test(screen);

/** Synchronized output, mode 2026. */
const FRAME_BEGINS = '\u001b[?2026h';
const FRAME_ENDS = '\u001b[?2026l';
const LONGEST_FRAME = 20_000;

const A_LIFT_MS = 2_000;
/** The same key again so soon is taken for a bounce. */
const BOUNCE_MS = 250;

/** The main key does nothing yet. */
const MUST_WAIT = /space:? wait|│ +WAIT +│/;

/** How long a screen may take to say what a test waits for, on a busy machine. */
const PATIENCE_MS = 20_000;

/** A program in a real pseudo-terminal, its screen read back through a terminal emulator. */
export class Terminal {
  readonly #pty: IPty;
  readonly #emulator: headless.Terminal;
  readonly #exit: Promise<{ exitCode: number; signal: number }>;
  #exited: { exitCode: number; signal: number } | null = null;
  #bytes = 0;
  #raw = '';
  /** The end of what the emulator has drawn. */
  #drawn = '';
  #bells = 0;
  #title = '';
  #lastKey = '';
  #changed: (() => void)[] = [];

  constructor({ command, args, env, cwd, columns = 80, rows = 24 }: Launch) {
    this.#emulator = new headless.Terminal({ cols: columns, rows, allowProposedApi: true });
    this.#pty = spawn(command, [...args], {
      name: env.TERM ?? 'xterm-256color',
      cols: columns,
      rows,
      cwd,
      env: { ...env },
    });
    this.#emulator.onBell(() => {
      this.#bells += 1;
    });
    this.#emulator.onTitleChange((title) => {
      this.#title = title;
    });
    this.#pty.onData((data) => {
      this.#bytes += Buffer.byteLength(data);
      this.#raw += data;
      this.#emulator.write(data, () => {
        this.#drawn = (this.#drawn + data).slice(-LONGEST_FRAME);
        this.#wake();
      });
    });
    this.#exit = new Promise((resolve) => {
      this.#pty.onExit(({ exitCode, signal }) => {
        this.#exited = { exitCode, signal: signal ?? 0 };
        resolve(this.#exited);
        this.#wake();
      });
    });
  }

  get pid(): number {
    return this.#pty.pid;
  }

  /** Bytes that the program wrote so far. */
  get bytesWritten(): number {
    return this.#bytes;
  }

  /** Everything written so far, codes included. */
  get raw(): string {
    return this.#raw;
  }

  /** Strokes of the bell that the terminal heard so far. */
  get bells(): number {
    return this.#bells;
  }

  get title(): string {
    return this.#title;
  }

  get hasEnded(): boolean {
    return this.#exited !== null;
  }

  /** The visible screen, without trailing blanks. */
  screen(): string {
    const buffer = this.#emulator.buffer.active;
    const lines = Array.from(
      { length: this.#emulator.rows },
      (_, row) =>
        buffer
          .getLine(buffer.viewportY + row)
          // A line that was longer before the screen was made narrower keeps its old end out of sight.
          ?.translateToString(true, 0, this.#emulator.cols)
          .trimEnd() ?? '',
    );
    return lines.join('\n').trimEnd();
  }

  /** Which screen buffer is shown, and what the program left switched on. */
  modes() {
    const { mouseTrackingMode, bracketedPasteMode } = this.#emulator.modes;
    return {
      buffer: this.#emulator.buffer.active.type,
      mouse: mouseTrackingMode,
      paste: bracketedPasteMode,
      cursorHidden: this.#raw.lastIndexOf('\u001b[?25l') > this.#raw.lastIndexOf('\u001b[?25h'),
    };
  }

  send(keys: string): void {
    this.#pty.write(keys);
  }

  /** Sends keys and waits until the screen says what it did not say before. */
  async press(keys: string, wanted: Wanted): Promise<string> {
    const before = this.screen();
    if (says(before, wanted)) {
      throw new Error(`The screen says ${wanted} before the key was pressed:\n${before}`);
    }
    if (keys.startsWith(' ')) await this.#breath();
    if (keys.at(0) === this.#lastKey) await this.breathe(BOUNCE_MS);
    this.#lastKey = keys.at(-1) ?? '';
    this.send(keys);
    return this.until(wanted);
  }

  /** As a person, who is not quicker than the screen says. */
  async #breath(): Promise<void> {
    // A frame that is half here may not have come to the wait yet.
    await this.until(() => true);
    // Spoken, the screen says nothing of a wait that short.
    if (this.screen().includes('Keys. ')) await this.breathe(A_LIFT_MS);
    if (!MUST_WAIT.test(this.screen())) return;
    await this.breathe(A_LIFT_MS);
    await this.until((screen) => !MUST_WAIT.test(screen));
  }

  /** Lets time pass; a program whose clock obeys is told to in its place. */
  breathe: (ms: number) => Promise<void> = async (ms) => {
    // What the screen does meanwhile makes no time go by.
    for (const end = Date.now() + ms; Date.now() < end; ) await this.#change(end - Date.now());
  };

  resize(columns: number, rows: number): void {
    this.#emulator.resize(columns, rows);
    this.#pty.resize(columns, rows);
  }

  kill(signal: string): void {
    this.#pty.kill(signal);
  }

  /** Closes the terminal under the program, as a closed window does. */
  hangUp(): void {
    // Its types leave out what every terminal of this library has.
    (this.#pty as IPty & { destroy: () => void }).destroy();
  }

  /** Waits until the screen says `wanted`; fails with the screen as it is. */
  async until(wanted: Wanted, patienceMs = PATIENCE_MS): Promise<string> {
    const end = Date.now() + patienceMs;
    for (;;) {
      const screen = this.screen();
      if (!this.#isInMidFrame() && says(screen, wanted)) return screen;
      if (this.#exited || Date.now() > end) {
        throw new Error(
          `The screen never said ${wanted}${this.#exited ? ' (the program ended)' : ''}:\n${screen}`,
        );
      }
      await this.#change(end - Date.now());
    }
  }

  /** Waits until the program has ended. */
  async end(): Promise<{ exitCode: number; signal: number }> {
    let timer: NodeJS.Timeout | undefined;
    const late = new Promise<never>((_, reject) => {
      timer = setTimeout(
        () => reject(new Error(`The program did not end:\n${this.screen()}`)),
        PATIENCE_MS,
      );
    });
    try {
      const exit = await Promise.race([this.#exit, late]);
      // What the program wrote last may still be on its way through the emulator.
      await new Promise<void>((resolve) => this.#emulator.write('', resolve));
      return exit;
    } finally {
      clearTimeout(timer);
    }
  }

  /** Ends the program with the test that started it. */
  throwAway(): void {
    if (!this.#exited) process.kill(this.#pty.pid, 'SIGKILL');
  }

  /** A frame that has begun and not ended says two things at once. */
  #isInMidFrame(): boolean {
    return this.#drawn.lastIndexOf(FRAME_BEGINS) > this.#drawn.lastIndexOf(FRAME_ENDS);
  }

  #wake(): void {
    for (const wake of this.#changed.splice(0)) wake();
  }

  #change(atMost: number): Promise<void> {
    return new Promise((resolve) => {
      const timer = setTimeout(resolve, atMost);
      this.#changed.push(() => {
        clearTimeout(timer);
        resolve();
      });
    });
  }
}
