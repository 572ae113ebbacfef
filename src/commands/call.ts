import type { Ports } from '../lifter/ports.ts';

/** Options that every command understands. */
export interface GlobalOptions {
  /** Data folder, from `--data`. */
  readonly data: string | null;
  /** Program file or the name of a shipped one, from `--program`. */
  readonly program: string | null;
  readonly json: boolean;
  readonly colour: boolean;
  /** Only the answer, and what is wrong. */
  readonly quiet: boolean;
}

/** One call of a command: what was typed, and the ways out. */
export interface Call {
  readonly args: readonly string[];
  /** The whole command line, as it was typed. */
  readonly argv: readonly string[];
  /** The command's own options by their long name in camel case; a list where it takes several. */
  readonly options: Readonly<Record<string, string | boolean | readonly string[] | undefined>>;
  readonly global: GlobalOptions;
  readonly ports: Ports;
  /** The answer, to stdout; a newline is added. Words are in the signs that the locale has. */
  readonly print: (text: string) => void;
  /** A document for programs, to stdout as it is; a newline is added. */
  readonly write: (text: string) => void;
  /** Words that can be spared, to stderr; a newline is added. */
  readonly tell: (text: string) => void;
  /** What is wrong, to stderr; a newline is added. */
  readonly warn: (text: string) => void;
}

/** Exit status: 0 fine, 1 the answer is "no", 2 wrong use or a bad file. */
export type ExitStatus = number;

/** What each file in this folder exports as `run`. */
export type Run = (call: Call) => Promise<ExitStatus> | ExitStatus;
export interface OptionRow {
  /** As commander reads them: `--day <name>`. */
  readonly flags: string;
  readonly does: string;
}

export interface CommandRow {
  readonly name: string;
  /** The same in at most 28 letters, for the help on one screen. */
  readonly brief: string;
  /** Operands: `<mass>`, `[file]`; none when empty. */
  readonly operands: string;
  /** Starts with a verb; stands in help, README and man page. */
  readonly does: string;
  readonly options: readonly OptionRow[];
  readonly examples: readonly string[];
  /** What stands behind it is a command line of its own. */
  readonly passesOn?: boolean;
  /** Why there is nothing to print as JSON, as what to do in its place; absent where there is. */
  readonly noJson?: string;
  /** Loads the command's code only when it runs. */
  readonly load: () => Promise<{ run: Run }>;
}
