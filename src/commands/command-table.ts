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

const DAY: OptionRow = {
  flags: '--day <name>',
  does: 'a day of the program in place of the one due',
};

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
  {
    name: 'load',
    operands: '<mass>',
    does: 'says what to put on the bar',
    options: [{ flags: '--bar <name>', does: 'a bar of your gear; the first one by default' }],
    examples: ['holdfast load 82.5', 'holdfast load 185lb --bar "short bar"'],
    load: () => import('./load.ts'),
  },
  {
    name: 'estimate',
    operands: '',
    does: 'estimates the one-repetition maximum, and loads for other reps',
    options: [
      { flags: '--load <mass>', does: 'what was lifted' },
      { flags: '--reps <count>', does: 'how often' },
      { flags: '--reserve <count>', does: 'how many more reps could have been done' },
    ],
    examples: ['holdfast estimate --load 100 --reps 5 --reserve 2'],
    load: () => import('./estimate.ts'),
  },
];
