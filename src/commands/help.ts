import { wrapped } from '../text/columns.ts';
import { CAUTIONS, READINESS_QUESTIONS } from '../training/cautions.ts';
import type { Run } from './call.ts';
import { COMMANDS, unknownCommand } from './command-table.ts';
import { textSize } from './text-size.ts';

/** The help of a command, of all of them, or the cautions. */
export const run: Run = async ({ args: [name], ports, print }) => {
  if (name === 'cautions') {
    const { width } = textSize(ports);
    const questions = READINESS_QUESTIONS.map((question, at) => `${at + 1} ${question}`);
    print([...CAUTIONS, ...questions].flatMap((text) => wrapped(text, width, '  ')).join('\n'));
    return 0;
  }
  if (name !== undefined && !COMMANDS.some((row) => row.name === name)) throw unknownCommand(name);
  const { main } = await import('./main.ts');
  return main(ports, name === undefined ? ['--help'] : [name, '--help']);
};
