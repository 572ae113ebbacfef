import type { Temporal } from 'temporal-polyfill';
import { nodeDevice } from '../journal/disk/device.ts';
import type { Journal } from '../journal/disk/journal.ts';
import { openJournal } from '../journal/disk/open-journal.ts';
import { type Folders, foldersFor } from '../settings/folders.ts';
import { readSettings, type SettingsRead } from '../settings/read-settings.ts';
import { once } from '../text/once.ts';
import type { Gear } from '../training/gear.ts';
import { localDay, type Ports } from './ports.ts';

/**
 * What is kept of the lifter, each opened when it is first asked for. Without the program, so that
 * a command that only asks for gear never loads what reads one.
 */
export interface LifterFiles {
  readonly ports: Ports;
  readonly folders: Folders;
  readonly settings: () => SettingsRead;
  readonly journal: () => Journal;
  /** As last set on any device, else as this machine knows it; null where it never was. */
  readonly knownGear: () => Gear | null;
  /** The local day; after a journey west over midnight still that of what was done already. */
  readonly today: () => Temporal.PlainDate;
}

/** Those of a day that is among the latest, out of what is in order of time; years before are not looked at. */
function onDay<T extends { readonly date: Temporal.PlainDate }>(
  all: readonly T[],
  day: Temporal.PlainDate,
): readonly T[] {
  const before = all.findLastIndex(({ date }) => date.until(day).sign > 0);
  return all.slice(before + 1).filter(({ date }) => date.equals(day));
}

/** Opens what is kept. `data` is the folder asked for on the command line. */
export function openLifterFiles(
  ports: Ports,
  { data }: { readonly data: string | null },
): LifterFiles {
  const folders = foldersFor({ ...ports, dataOption: data });
  const settings = once(() => readSettings(folders.config));
  const journal = once(() =>
    openJournal({
      dataDir: folders.data,
      stateDir: folders.state,
      configDir: folders.config,
      cacheDir: folders.cache,
      files: ports.files,
      clock: ports.clock,
      device: nodeDevice(ports.machineName),
    }),
  );
  return {
    ports,
    folders,
    settings,
    journal,
    knownGear: () => journal().history().gear ?? settings().settings.gear,
    today: () => {
      const day = localDay(ports.clock);
      const { lately, weighIns } = journal().history();
      const { wall } = ports.clock.read();
      const tomorrow = day.add({ days: 1 });
      // Further west it may be the day before still; what was recorded under a clock that was ahead
      // lies in the future, and is not followed.
      const isAhead =
        onDay(lately.sessions, tomorrow).some(({ start }) => start <= wall) ||
        onDay(weighIns, tomorrow).some(({ at }) => at <= wall);
      return isAhead ? tomorrow : day;
    },
  };
}
