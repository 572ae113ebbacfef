import { existsSync, readFileSync } from 'node:fs';
import { basename } from 'node:path';
import type { Temporal } from 'temporal-polyfill';
import { nodeDevice } from '../journal/disk/device.ts';
import type { Journal } from '../journal/disk/journal.ts';
import { openJournal } from '../journal/disk/open-journal.ts';
import type { History } from '../journal/history.ts';
import { fileProblemText } from '../program/file-problem.ts';
import type { Program } from '../program/program.ts';
import { readProgramFile } from '../program/read-file.ts';
import type { Circumstances } from '../progression/past.ts';
import { type Folders, foldersFor } from '../settings/folders.ts';
import { readSettings, type SettingsRead } from '../settings/read-settings.ts';
import { lastOf, once } from '../text/once.ts';
import { type Problem, Refusal } from '../text/problem.ts';
import { defaultGear } from '../training/default-gear.ts';
import type { Gear } from '../training/gear.ts';
import type { Unit } from '../training/mass.ts';
import { keptProgram } from './kept-program.ts';
import { kitNamed, kitNow, kitsOf } from './kits.ts';
import { localDay, type Ports } from './ports.ts';
import {
  chooseProgram,
  latestOwn,
  ownCopy,
  type ProgramSources,
  rememberedProgram,
} from './program-choice.ts';

/** What the lifter asked for on the command line. */
export interface AskedFor {
  readonly data: string | null;
  readonly program: string | null;
  /** Name of the kit that is trained with today; left out: as the lifter said before. */
  readonly kit?: string | null;
}

/** What is kept of the lifter beside the program. */
interface Kept {
  readonly ports: Ports;
  readonly folders: Folders;
  readonly settings: () => SettingsRead;
  readonly journal: () => Journal;
  /** As last set on any device, else as this machine knows it; null where it never was. */
  readonly knownGear: () => Gear | null;
  /** The local day; after a journey west over midnight still that of what was done already. */
  readonly today: () => Temporal.PlainDate;
}

/** Everything of the lifter's that the program works with, each opened when it is first asked for. */
export interface Lifter extends Kept {
  /** Path of the program in use. */
  readonly programPath: () => string;
  /** Was a program ever trained by here, or one asked for or taken? */
  readonly hasOwnProgram: () => boolean;
  /** The program that was trained by last is not there any more; null where it is. */
  readonly programGone: () => Problem | null;
  /** A path of the same program that may be edited. */
  readonly ownProgramPath: () => string;
  /** @throws Refusal with everything that is wrong with the file. */
  readonly program: () => Program;
  /**
   * The unit of bare loads: the program's, also of one with mistakes elsewhere; without a program
   * that of the last session, else of the gear, else kg.
   */
  readonly unit: () => Unit;
  /** Does its file hold another text than the one that was read, or none? */
  readonly programChanged: () => boolean;
  /** Reads the program anew the next time, for its file was changed. */
  readonly forgetProgram: () => void;
  /** Goes on with another program from now on; what remembers it for the next run is the settings. */
  readonly takeProgram: (path: string) => void;
  /** As last set on any device, else as this machine knows it, else a usual home gym. */
  readonly gear: () => Gear;
  /** What is trained with today: a kit of another place, where the lifter said so, else the gear. */
  readonly gearToday: () => Gear;
  /** The name of that kit; null: what is owned. */
  readonly kitToday: () => string | null;
  readonly circumstances: () => Circumstances;
}

export function openLifter(ports: Ports, wishes: AskedFor): Lifter {
  const files = openKept(ports, wishes);
  const { folders, settings, knownGear, today } = files;
  /** Taken in this run: it beats what was asked for at its start. */
  let taken: string | null = null;
  const sources = (): ProgramSources => ({
    asked: taken === null ? wishes.program : null,
    last: taken ?? rememberedProgram(settings().settings, folders),
    lastName: () => {
      const history = files.journal().history();
      return programNameIn(history.lately) ?? programNameIn(history);
    },
    gearUnit: () => knownGear()?.unit ?? 'kg',
    dataFolder: folders.data,
    shippedPrograms: ports.shippedPrograms,
    cwd: ports.cwd,
  });
  const chosen = () => chooseProgram(sources());
  /** The data came from another machine without the program that they were trained by. */
  const programElsewhere = (): Problem | null => {
    const name = sources().lastName();
    if (name === null || name === programName(program)) return null;
    return {
      what: `"${name}", the program of the last session, is not here.`,
      why: `${basename(programPath())} is used in its place.`,
      fix: 'Bring its file along, or name one once with --program.',
    };
  };
  const programGone = (): Problem | null => {
    const { asked, last } = sources();
    if (asked !== null || (last !== null && existsSync(last))) return null;
    if (last === null) return programElsewhere();
    return {
      what: `The program of the last session is gone: ${last}.`,
      why: `${basename(programPath())} is used in its place.`,
      fix: 'Bring the file back, or name another one once with --program.',
    };
  };
  let programPath = once(chosen);
  /** What lay there when it was read; null before, and where there was nothing. */
  let read: string | null = null;
  const parse = keptProgram(ports.files, folders.cache, () => `${process.pid}`);
  const reading = () => {
    read = textOrNull(programPath());
    return readOrRefuse(programPath(), parse);
  };
  let readProgram = once(reading);
  const program = () => readProgram();
  const unit = (): Unit =>
    programUnit(program, programPath) ??
    files.journal().history().latest.at(-1)?.planned.unit ??
    knownGear()?.unit ??
    'kg';
  const forget = () => {
    // A shipped program may have become the lifter's own copy.
    programPath = once(chosen);
    readProgram = once(reading);
  };
  const gear = (): Gear => knownGear() ?? defaultGear(unit());
  const kitToday = (): string | null => {
    const history = files.journal().history();
    const name = wishes.kit ?? kitNow(history, today());
    return name === null ? null : kitNamed(kitsOf(history, unit()), name).name;
  };
  // The same kit is asked for many times, and what is worked out of gear is kept by the gear.
  const ofKit = lastOf(
    (name: string, kits: History['kits'], of: Unit): Gear =>
      kitNamed(kitsOf({ kits }, of), name).gear,
  );
  const gearToday = (): Gear => {
    const name = kitToday();
    return name === null ? gear() : ofKit(name, files.journal().history().kits, unit());
  };
  return {
    ...files,
    programPath: () => programPath(),
    hasOwnProgram: () => {
      const { asked, last, lastName } = sources();
      return (
        asked !== null || last !== null || lastName() !== null || latestOwn(sources()) !== null
      );
    },
    programGone,
    ownProgramPath: () => ownCopy(programPath(), sources()),
    program,
    forgetProgram: forget,
    takeProgram: (path) => {
      taken = path;
      forget();
    },
    unit,
    programChanged: () => read !== null && read !== textOrNull(programPath()),
    gear,
    gearToday,
    kitToday,
    circumstances: () => ({ today: today(), gear: gearToday() }),
  };
}

/** Of the last session. What a table of other origin brought names no program: its days are dates. */
const programNameIn = ({ sessions }: Pick<History, 'sessions'>): string | null =>
  sessions.findLast(({ day, date }) => day !== date.toString())?.program ?? null;

/** Null where it cannot be read. */
function programName(program: () => Program): string | null {
  try {
    return program().name;
  } catch (error) {
    if (error instanceof Refusal) return null;
    throw error;
  }
}

/** A program that cannot be read, for a mistake in a lift of Friday, says its unit all the same. */
function programUnit(program: () => Program, path: () => string): Unit | null {
  // Nearly every program says it in a line of its own, and reading the whole of it is slow.
  const line = /^\ufeff?["']?unit["']?[ \t]*:[ \t]*["']?(kg|lb)\b/m.exec(textAt(path) ?? '');
  if (line) return line[1] === 'lb' ? 'lb' : 'kg';
  try {
    return program().unit;
  } catch (error) {
    if (error instanceof Refusal) return null;
    throw error;
  }
}

/** Null too where no program can be found at all. */
function textAt(path: () => string): string | null {
  try {
    return textOrNull(path());
  } catch (error) {
    if (error instanceof Refusal) return null;
    throw error;
  }
}

function textOrNull(path: string): string | null {
  try {
    return readFileSync(path, 'utf8');
  } catch {
    return null;
  }
}

function readOrRefuse(path: string, parse: ReturnType<typeof keptProgram>): Program {
  const read = readProgramFile(path, undefined, parse);
  if (read.ok) return read.program;
  throw new Refusal(...read.problems.map((problem) => ({ what: fileProblemText(problem) })));
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
function openKept(ports: Ports, { data }: { readonly data: string | null }): Kept {
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
