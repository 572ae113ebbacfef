import { basename, join } from 'node:path';
import { onDisk } from '../journal/disk/disk-trouble.ts';
import { fileProblemText } from '../program/file-problem.ts';
import { readProgramFile } from '../program/read-file.ts';
import { SETTINGS_NAME } from '../settings/read-settings.ts';
import { type Problem, problemText, Refusal } from '../text/problem.ts';
import { gearProblems } from '../training/check-gear.ts';
import type { Lifter } from './open-lifter.ts';
import type { KeepSettings } from './ports.ts';
import { programsFolder } from './program-choice.ts';

/** What became of one thing that was checked. */
export interface Examined {
  readonly what: 'settings' | 'journal' | 'gear' | 'program';
  /** File or folder. */
  readonly place: string;
  readonly state: 'fine' | 'repaired' | 'not-repaired';
  /** A sentence for each thing found or done; none where all is fine. */
  readonly words: readonly string[];
}

type Checked = Pick<Examined, 'state' | 'words'>;

const FINE: Checked = { state: 'fine', words: [] };

/**
 * Checks every data file and repairs what can be repaired without losing anything: settings are
 * written anew from the last good ones, half-written ends of this device's journal files are cut
 * off, and what was there before is kept beside it. Anything else is only told.
 */
export function examineFiles(lifter: Lifter, keepSettings: KeepSettings): Examined[] {
  const { folders } = lifter;
  return [
    {
      what: 'settings',
      place: join(folders.config, `${SETTINGS_NAME}.json`),
      ...tried(() => checkSettings(lifter, keepSettings)),
    },
    {
      what: 'journal',
      place: join(folders.data, 'journal'),
      ...tried(() => checkJournal(lifter)),
    },
    {
      what: 'gear',
      place: 'as last set',
      ...tried(() => notRepaired(gearProblems(lifter.gear()).map(problemText))),
    },
    ...programsOf(lifter),
  ];
}

/** What cannot even be tried is not repaired. */
function tried(check: () => Checked): Checked {
  try {
    return check();
  } catch (error) {
    if (error instanceof Refusal) return notRepaired(error.problems.map(problemText));
    throw error;
  }
}

const notRepaired = (words: readonly string[]): Checked =>
  words.length === 0 ? FINE : { state: 'not-repaired', words };

function checkSettings({ settings }: Lifter, keepSettings: KeepSettings): Checked {
  const { problem } = settings();
  if (!problem) return FINE;
  keepSettings({});
  return {
    state: 'repaired',
    words: [
      toldAs(problem),
      'A good file stands in its place now; the damaged one is kept as settings.damaged.json.',
    ],
  };
}

/** The problem without its advice, which the repair has followed. */
const toldAs = ({ what, why = '' }: Problem): string => `${what} ${why}`.trim();

function checkJournal({ journal }: Lifter): Checked {
  journal().readAnew();
  const isTorn = journal()
    .history()
    .unreadable.some(({ kind }) => kind === 'tail');
  const done = isTorn ? journal().repair() : [];
  if (isTorn) journal().readAnew();
  const full = journal().trySaving();
  const left = [...(full ? [full] : []), ...journal().problems()].map(problemText);
  if (left.length > 0) return { state: 'not-repaired', words: [...done, ...left] };
  return done.length > 0 ? { state: 'repaired', words: done } : FINE;
}

/** The program in use, and those in the data folder. */
function programsOf(lifter: Lifter): Examined[] {
  const folder = programsFolder(lifter.folders.data);
  let own: readonly string[] = [];
  const listed = tried(() => {
    own = onDisk(`The programs in ${folder} could not be read`, () =>
      lifter.ports.files.list(folder),
    )
      .filter(({ name, kind }) => kind !== 'folder' && name.endsWith('.yaml'))
      .map(({ name }) => join(folder, name));
    return FINE;
  });
  const folders: Examined[] =
    listed === FINE ? [] : [{ what: 'program', place: folder, ...listed }];
  const inUse = inUseOr(lifter);
  const gone = lifter.programGone();
  if (gone) {
    const lost: Examined = {
      what: 'program',
      place: 'of the last session',
      ...notRepaired([problemText(gone)]),
    };
    return [...folders, lost, ...own.map(checkProgram)];
  }
  if (typeof inUse !== 'string') return [...folders, inUse, ...own.map(checkProgram)];
  return [...folders, ...[...new Set([inUse, ...own])].map(checkProgram)];
}

function inUseOr({ programPath }: Lifter): string | Examined {
  let path = '';
  const found = tried(() => {
    path = programPath();
    return FINE;
  });
  return path === '' ? { what: 'program', place: 'in use', ...found } : path;
}

function checkProgram(path: string): Examined {
  const read = readProgramFile(path);
  const words = read.ok
    ? []
    : read.problems.map((problem) => inFile(fileProblemText(problem), path));
  return { what: 'program', place: path, ...notRepaired(words) };
}

/** The path stands above the sentences already. */
const inFile = (text: string, path: string): string => text.replace(path, basename(path));
