import type { Run } from './call.ts';

export interface OptionRow {
  /** As commander reads them: `--day <name>`. */
  readonly flags: string;
  readonly does: string;
}

export interface CommandRow {
  readonly name: string;
  /** Operands: `<mass>`, `[file]`; none when empty. */
  readonly operands: string;
  /** Starts with a verb; stands in help, README and man page. */
  readonly does: string;
  readonly options: readonly OptionRow[];
  readonly examples: readonly string[];
  /** Loads the command's code only when it runs. */
  readonly load: () => Promise<{ run: Run }>;
}

const DAY: OptionRow = { flags: '--day <name>', does: 'a day of the program in place of the one due' };

/** Options understood before and after every command. */
export const GLOBAL_OPTIONS: readonly OptionRow[] = [
  { flags: '--data <folder>', does: 'where training data lives (or HOLDFAST_DATA)' },
  { flags: '--program <file>', does: 'program file, or the name of a shipped one' },
  { flags: '--json', does: 'print one JSON document' },
  { flags: '--no-color', does: 'no colours (or NO_COLOR)' },
];

/** Every command. Help, completion and documents are made from this table. */
export const COMMANDS: readonly CommandRow[] = [
  {
    name: 'train',
    operands: '',
    does: 'runs the session that is due (also what bare holdfast does)',
    options: [DAY],
    examples: ['holdfast', 'holdfast train --day B', 'holdfast --program try-out'],
    load: () => import('./train.ts'),
  },
  {
    name: 'today',
    operands: '',
    does: "prints today's prescription: loads, plates, aims, and why",
    options: [DAY],
    examples: ['holdfast today', 'holdfast today --day B --json'],
    load: () => import('./today.ts'),
  },
];
