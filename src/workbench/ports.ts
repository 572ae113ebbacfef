import type { Files } from '../journal/disk/files.ts';
import type { Clock } from './clock.ts';

/** Starts another program without a shell and without waiting for it; failure is silent. */
export type Spawn = (command: string, args: readonly string[]) => void;

/** Everything outside the program, so that tests can stand in for it. */
export interface Ports {
  readonly clock: Clock;
  readonly files: Files;
  readonly env: Readonly<Record<string, string | undefined>>;
  readonly platform: NodeJS.Platform;
  readonly home: string;
  readonly cwd: string;
  readonly machineName: string;
  /** Folder of the programs that holdfast ships. */
  readonly shippedPrograms: string;
  readonly stdin: NodeJS.ReadStream;
  readonly stdout: NodeJS.WriteStream;
  readonly stderr: NodeJS.WriteStream;
  readonly spawn: Spawn;
  /** Folder of the demo, whose data are invented; absent for the lifter's own. */
  readonly demoFolder?: string;
}
