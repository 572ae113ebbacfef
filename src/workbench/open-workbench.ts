import { fileProblemText } from '../program/file-problem.ts';
import type { Program } from '../program/program.ts';
import { readProgramFile } from '../program/read-file.ts';
import type { Circumstances } from '../progression/past.ts';
import { Refusal } from '../text/problem.ts';
import { defaultGear } from '../training/default-gear.ts';
import type { Gear } from '../training/gear.ts';
import type { Unit } from '../training/mass.ts';
import { once } from './once.ts';
import { openRecords, type Records } from './open-records.ts';
import type { Ports } from './ports.ts';
import { chooseProgram, ownCopy, type ProgramSources } from './program-choice.ts';

/** What the lifter asked for on the command line. */
export interface Wishes {
  readonly data: string | null;
  readonly program: string | null;
}

/** Everything of the lifter's that the program works with, each opened when it is first asked for. */
export interface Workbench extends Records {
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
  readonly circumstances: () => Circumstances;
}

export function openWorkbench(ports: Ports, wishes: Wishes): Workbench {
  const records = openRecords(ports, wishes);
  const { folders, settings, knownGear, today } = records;
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
  const gear = (): Gear => knownGear() ?? defaultGear(unitOf(program));
  return {
    ...records,
    programPath: () => programPath(),
    ownProgramPath: () => ownCopy(programPath(), sources()),
    program,
    forgetProgram: () => {
      // A shipped program may have become the lifter's own copy.
      programPath = once(chosen);
      readProgram = once(() => readOrRefuse(programPath()));
    },
    gear,
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
