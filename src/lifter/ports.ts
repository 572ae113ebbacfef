import type { Temporal } from 'temporal-polyfill';
import type { Files } from '../journal/disk/files.ts';
import { localDate } from '../session/results.ts';
import type { Settings } from '../settings/settings.ts';
import type { Picture } from '../terminal/picture.ts';
import type { Reading } from '../training/reading.ts';

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
  /**
   * Names the build, for another may answer otherwise; null where the sources run, which change without
   * a sign.
   */
  readonly build: string | null;
  /** What the screens began with the last time, where it stands on the terminal already. */
  readonly picture?: Picture;
  /** Folder of the demo, whose data are invented; absent for the lifter's own. */
  readonly demoFolder?: string;
}

/** The one way to know the time and to wait. */
export interface Clock {
  read(): Reading;
  /** Minutes that local time is ahead of UTC at an instant. */
  zone(wall: number): number;
  /** Calls `act` once after `ms`; the returned function calls it off. */
  after(ms: number, act: () => void): () => void;
}

/** The lifter's calendar day now. */
export function localDay(clock: Clock): Temporal.PlainDate {
  const { wall } = clock.read();
  return localDate(wall, clock.zone(wall));
}

/** Writes settings of this machine. Given from outside, since what writes them is slow to load. */
export type KeepSettings = (change: Partial<Settings>) => Settings;

/** Settings as they are now, and the way to change them. */
export interface SettingsKeeper {
  readonly now: () => Settings;
  readonly keep: KeepSettings;
}
