import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { main } from '../../src/commands/main.ts';
import { nodeFiles } from '../../src/journal/disk/files.ts';
import type { Ports } from '../../src/lifter/ports.ts';

const PROGRAMS = fileURLToPath(new URL('../../programs/', import.meta.url));

export interface Answer {
  readonly status: number;
  readonly out: string;
  readonly err: string;
}

/** A lifter's home on the real disk, in which commands run within the test, at a time of its own. */
export class AHome {
  readonly folder = mkdtempSync(join(tmpdir(), 'holdfast-'));
  readonly data = join(this.folder, 'data');
  readonly config = join(this.folder, 'config', 'holdfast');
  /** Wed 25 Nov 2026, 18:00 UTC. */
  wall = Date.UTC(2026, 10, 25, 18);
  /** Minutes that local time is ahead of UTC. */
  zone = 0;
  /** Null: answers are not kept. */
  build: string | null = null;
  /** Of the terminal. */
  columns = 80;

  /** Runs a command as if typed, without a terminal. */
  async run(...args: string[]): Promise<Answer> {
    const out: string[] = [];
    const err: string[] = [];
    const status = await main(this.ports(out, err), args);
    return { status, out: out.join(''), err: err.join('') };
  }

  /** What a read command prints as JSON. */
  async json(...args: string[]): Promise<Record<string, unknown>> {
    const { out } = await this.run(...args, '--json');
    return JSON.parse(out) as Record<string, unknown>;
  }

  writeSettings(settings: Record<string, unknown>): void {
    mkdirSync(this.config, { recursive: true });
    writeFileSync(join(this.config, 'settings.json'), JSON.stringify(settings));
  }

  ports(out: string[] = [], err: string[] = []): Ports {
    const to = (lines: string[]) =>
      ({
        columns: this.columns,
        write: (text: string) => lines.push(text) > 0,
      }) as unknown as NodeJS.WriteStream;
    return {
      clock: {
        // Each look at the clock is two seconds later: no two events share an instant, no key bounces.
        read: () => {
          this.wall += 2000;
          return { wall: this.wall, up: null, boot: null };
        },
        zone: () => this.zone,
        after: () => () => {},
      },
      files: nodeFiles,
      env: {
        XDG_CONFIG_HOME: join(this.folder, 'config'),
        XDG_STATE_HOME: join(this.folder, 'state'),
        HOLDFAST_DATA: this.data,
      },
      platform: 'linux',
      home: this.folder,
      cwd: this.folder,
      machineName: 'laptop',
      shippedPrograms: PROGRAMS,
      stdin: { isTTY: false } as unknown as NodeJS.ReadStream,
      stdout: to(out),
      stderr: to(err),
      spawn: () => {},
      build: this.build,
    };
  }

  throwAway(): void {
    rmSync(this.folder, { recursive: true, force: true });
  }
}
