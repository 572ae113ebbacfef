import type { Temporal } from 'temporal-polyfill';
import type { Journal } from '../journal/disk/journal.ts';
import { nodeDevice } from '../journal/disk/node-device.ts';
import { openJournal } from '../journal/disk/open-journal.ts';
import { fileProblemText } from '../program/file-problem.ts';
import type { Program } from '../program/program.ts';
import { readProgramFile } from '../program/read-file.ts';
import type { Circumstances } from '../progression/past.ts';
import { type Folders, foldersFor } from '../settings/folders.ts';
import { readSettings, type SettingsRead } from '../settings/read-settings.ts';
import { Refusal } from '../text/problem.ts';
import { defaultGear } from '../training/default-gear.ts';
import type { Gear } from '../training/gear.ts';
import type { Unit } from '../training/mass.ts';
import { localDay } from './local-day.ts';
import type { Ports } from './ports.ts';
import { chooseProgram, ownCopy, type ProgramSources } from './program-choice.ts';

/** What the lifter asked for on the command line. */
export interface Wishes {
  readonly data: string | null;
  readonly program: string | null;
}

/** Everything of the lifter's that the program works with, each opened when it is first asked for. */
export interface Workbench {
  readonly ports: Ports;
  readonly folders: Folders;
  readonly settings: () => SettingsRead;
  readonly journal: () => Journal;
  /** Path of the program in use. */
  readonly programPath: () => string;
  /** A path of the same program that may be edited. */
  readonly ownProgramPath: () => string;
  /** @throws Refusal with everything that is wrong with the file. */
  readonly program: () => Program;
  /** Reads the program anew the next time, for its file was changed. */
  readonly forgetProgram: () => void;
  /** As last set on any device, else as this machine knows it, else a usual home gym. */
  readonly gear: () => Gear;
  readonly today: () => Temporal.PlainDate;
  readonly circumstances: () => Circumstances;
}

export function openWorkbench(ports: Ports, wishes: Wishes): Workbench {
  const folders = foldersFor({ ...ports, dataOption: wishes.data });
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
  const sources = (): ProgramSources => ({
    asked: wishes.program,
    last: settings().settings.program,
    dataFolder: folders.data,
    shippedPrograms: ports.shippedPrograms,
    cwd: ports.cwd,
  });
  const chosen = () => chooseProgram(sources());
  let programPath = once(chosen);
  let readProgram = once(() => readOrRefuse(programPath()));
  const program = () => readProgram();
  const gear = (): Gear =>
    journal().history().gear ?? settings().settings.gear ?? defaultGear(unitOf(program));
  const today = () => localDay(ports.clock);
  return {
    ports,
    folders,
    settings,
    journal,
    programPath: () => programPath(),
    ownProgramPath: () => ownCopy(programPath(), sources()),
    program,
    forgetProgram: () => {
      // A shipped program may have become the lifter's own copy.
      programPath = once(chosen);
      readProgram = once(() => readOrRefuse(programPath()));
    },
    gear,
    today,
    circumstances: () => ({ today: today(), gear: gear() }),
  };
}

/** A program that cannot be read is no reason not to answer what to put on the bar. */
function unitOf(program: () => Program): Unit {
  try {
    return program().unit;
  } catch (error) {
    if (error instanceof Refusal) return 'kg';
    throw error;
  }
}

function readOrRefuse(path: string): Program {
  const read = readProgramFile(path);
  if (read.ok) return read.program;
  throw new Refusal(...read.problems.map((problem) => ({ what: fileProblemText(problem) })));
}

function once<T>(make: () => T): () => T {
  let made: { readonly value: T } | null = null;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
}
