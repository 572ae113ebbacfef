import { readdirSync } from 'node:fs';
import { openLifter } from '../lifter/open-lifter.ts';
import { programsFolder } from '../lifter/program-choice.ts';
import { WrongUse } from '../text/problem.ts';
import type { Call, Run } from './call.ts';
import { bashScript } from './completion/bash-script.ts';
import type { WordList } from './completion/completed.ts';
import { fishScript } from './completion/fish-script.ts';
import { zshScript } from './completion/zsh-script.ts';

const SCRIPTS: Readonly<Record<string, () => string>> = {
  bash: bashScript,
  zsh: zshScript,
  fish: fishScript,
};

/** What only this machine knows, asked by the scripts while something is typed. */
const WORDS: Readonly<Record<WordList, (call: Call) => readonly string[]>> = {
  lifts: ({ ports, global }) => [...openLifter(ports, global).program().lifts.keys()],
  days: ({ ports, global }) =>
    openLifter(ports, global)
      .program()
      .days.map(({ name }) => name)
      .filter((name) => !/\s/.test(name)),
  programs: ({ ports, global }) => [
    ...new Set(
      [ports.shippedPrograms, programsFolder(openLifter(ports, global).folders.data)]
        .flatMap(filesIn)
        .filter((name) => /\.ya?ml$/.test(name))
        .map((name) => name.replace(/\.ya?ml$/, '')),
    ),
  ],
};

function filesIn(folder: string): readonly string[] {
  try {
    return readdirSync(folder);
  } catch {
    return [];
  }
}

/** Prints the completion of holdfast for a shell, or words for it. Nothing of the lifter's is touched. */
export const run: Run = (call) => {
  const { args, options, write } = call;
  const [shell = ''] = args;
  const list = options.words;
  if (list === 'lifts' || list === 'days' || list === 'programs') {
    write(WORDS[list](call).join('\n'));
    return 0;
  }
  if (list !== undefined) {
    throw new WrongUse({
      what: `There are no words of the kind "${String(list)}".`,
      fix: `Write one of: ${Object.keys(WORDS).join(', ')}.`,
    });
  }
  const script = Object.hasOwn(SCRIPTS, shell) ? SCRIPTS[shell] : undefined;
  if (!script) {
    throw new WrongUse({
      what: shell === '' ? 'The shell is missing.' : `There is no completion for "${shell}".`,
      fix: `Write one of: ${Object.keys(SCRIPTS).join(', ')}.`,
    });
  }
  write(script());
  return 0;
};
