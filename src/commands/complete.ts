import { Refusal } from '../text/problem.ts';
import type { Run } from './call.ts';
import { bashScript } from './completion/bash-script.ts';
import { fishScript } from './completion/fish-script.ts';
import { zshScript } from './completion/zsh-script.ts';

const SCRIPTS: Readonly<Record<string, () => string>> = {
  bash: bashScript,
  zsh: zshScript,
  fish: fishScript,
};

/** Prints the completion of holdfast for a shell. No file of the lifter's is touched. */
export const run: Run = ({ args: [shell = ''], print }) => {
  const script = Object.hasOwn(SCRIPTS, shell) ? SCRIPTS[shell] : undefined;
  if (!script) {
    throw new Refusal({
      what: `There is no completion for "${shell}".`,
      fix: `Write one of: ${Object.keys(SCRIPTS).join(', ')}.`,
    });
  }
  print(script());
  return 0;
};
