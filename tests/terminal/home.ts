import { execFile } from 'node:child_process';
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Driver, openDriver } from './driver.ts';
import { Terminal } from './terminal.ts';

export const BUILT = fileURLToPath(new URL('../../dist/cli.js', import.meta.url));
const DRIVEN = fileURLToPath(new URL('../.built/driven.js', import.meta.url));

export interface Size {
  readonly columns: number;
  readonly rows: number;
}

export const SIZES = {
  upright: { columns: 34, rows: 16 },
  usual: { columns: 80, rows: 24 },
  wide: { columns: 120, rows: 40 },
} as const satisfies Record<string, Size>;

/** An event as it stands in the journal; read here without the program's own reader. */
export interface WrittenEvent {
  readonly id: string;
  readonly type: string;
  readonly at: { readonly wall: number };
  readonly [field: string]: unknown;
}

/** A lifter's home: folders of their own, thrown away with the test. */
export class Home {
  readonly folder = mkdtempSync(join(tmpdir(), 'holdfast-'));
  readonly data = join(this.folder, 'data');

  constructor({ cautionsRead = true } = {}) {
    mkdirSync(join(this.folder, 'config', 'holdfast'), { recursive: true });
    if (cautionsRead) this.settings({ cautions: 'read', weightAdvice: 'yes' });
  }

  /** Writes a program file of the lifter's own; gives its path. */
  program(text: string, name = 'own.yaml'): string {
    const path = join(this.folder, name);
    writeFileSync(path, text);
    return path;
  }

  settings(settings: Record<string, unknown>): void {
    writeFileSync(
      join(this.folder, 'config', 'holdfast', 'settings.json'),
      JSON.stringify(settings),
    );
  }

  env(extra: Record<string, string> = {}): Record<string, string> {
    return {
      PATH: process.env.PATH ?? '',
      HOME: this.folder,
      XDG_CONFIG_HOME: join(this.folder, 'config'),
      XDG_STATE_HOME: join(this.folder, 'state'),
      XDG_DATA_HOME: join(this.folder, 'share'),
      HOLDFAST_DATA: this.data,
      TERM: 'xterm-256color',
      TZ: 'UTC',
      LANG: 'C.UTF-8',
      ...extra,
    };
  }

  /** The program as it is shipped, in a terminal. */
  open(
    args: readonly string[],
    size: Size = SIZES.usual,
    env: Record<string, string> = {},
  ): Terminal {
    return new Terminal({
      command: process.execPath,
      args: [BUILT, ...args],
      env: this.env(env),
      cwd: this.folder,
      ...size,
    });
  }

  /** The program with a clock and a disk that obey, in a terminal. `wall`: epoch ms at the start. */
  async openDriven(
    args: readonly string[],
    {
      size = SIZES.usual,
      wall,
      env = {},
    }: { size?: Size; wall: number; env?: Record<string, string> },
  ): Promise<{ terminal: Terminal; driver: Driver }> {
    const driver = await openDriver(
      join(this.folder, `d${Math.random().toString(36).slice(2, 8)}`),
    );
    const terminal = new Terminal({
      command: process.execPath,
      args: [DRIVEN, ...args],
      env: this.env({
        HOLDFAST_DRIVEN: driver.path,
        HOLDFAST_DRIVEN_WALL: String(wall),
        ...env,
      }),
      cwd: this.folder,
      ...size,
    });
    const ended = terminal.end().then(() => {
      throw new Error(`The driven program ended at once:\n${terminal.screen()}`);
    });
    await Promise.race([driver.connected, ended]);
    return { terminal, driver };
  }

  /** Runs the program without a terminal. */
  run(
    args: readonly string[],
    env: Record<string, string> = {},
  ): Promise<{ status: number; stdout: string; stderr: string }> {
    return new Promise((resolve) => {
      const child = execFile(
        process.execPath,
        [BUILT, ...args],
        { env: this.env(env), cwd: this.folder },
        (error, stdout, stderr) =>
          resolve({ status: error ? Number(error.code ?? 1) : 0, stdout, stderr }),
      );
      child.stdin?.end();
    });
  }

  /** Every whole line of the journal, file by file in the order in which they were begun. */
  events(): WrittenEvent[] {
    const journal = join(this.data, 'journal');
    if (!existsSync(journal)) return [];
    return readdirSync(journal, { recursive: true, encoding: 'utf8' })
      .filter((name) => name.endsWith('.jsonl'))
      .map((name) => readFileSync(join(journal, name), 'utf8').split('\n').slice(0, -1))
      .map((lines) => lines.map((line) => JSON.parse(line.slice(line.indexOf(' ') + 1))))
      .toSorted(([a], [b]) => a.at.wall - b.at.wall)
      .flat();
  }

  of(type: string): WrittenEvent[] {
    return this.events().filter((event) => event.type === type);
  }

  throwAway(): void {
    rmSync(this.folder, { recursive: true, force: true });
  }
}
