import { JOINTS, MUSCLES } from '../../training/lift.ts';
import type { OptionRow } from '../call.ts';
import { COMMANDS, GLOBAL_OPTIONS } from '../command-table.ts';
import { SCHEMAS } from '../schemas.ts';
import { SETTING_ROWS } from '../setting-rows.ts';

/** What may be typed in a place. */
export type Values =
  | { readonly kind: 'words'; readonly words: readonly string[] }
  | { readonly kind: 'files' }
  | { readonly kind: 'folders' }
  /** Asked of holdfast while something is typed. */
  | { readonly kind: 'asked'; readonly of: WordList }
  /** A mass, a name, a number: nothing that a shell can offer. */
  | { readonly kind: 'anything' };

/** Words that change with the program and the folder. */
export type WordList = 'lifts' | 'days' | 'programs';

export interface CompletedOption {
  /** `--day`. */
  readonly name: string;
  readonly does: string;
  /** Null for an option without a value. */
  readonly takes: Values | null;
}

export interface CompletedCommand {
  readonly name: string;
  readonly does: string;
  /** Of the first operand; null without one. */
  readonly operand: Values | null;
  readonly options: readonly CompletedOption[];
  /** Another command line follows. */
  readonly passesOn: boolean;
}

const words = (...names: readonly string[]): Values => ({ kind: 'words', words: names });

/** Operands that the table names without listing them. */
const OPERANDS: Readonly<Record<string, Values>> = {
  help: words(...COMMANDS.map(({ name }) => name), 'cautions'),
  history: { kind: 'asked', of: 'lifts' },
  lifts: { kind: 'asked', of: 'lifts' },
  check: { kind: 'asked', of: 'programs' },
  schema: words('program', 'journal', ...Object.keys(SCHEMAS)),
  settings: words(...SETTING_ROWS.map(({ name }) => name)),
};

/** Values of options that are asked for. */
const ASKED: Readonly<Record<string, Values>> = {
  '--day': { kind: 'asked', of: 'days' },
  '--program': { kind: 'asked', of: 'programs' },
  '--from': { kind: 'asked', of: 'programs' },
  '--like': { kind: 'asked', of: 'lifts' },
  '--without': { kind: 'asked', of: 'lifts' },
  '--focus': words(...MUSCLES),
  '--hurts': words(...JOINTS),
  '--aim': words('cut', 'maintain', 'build'),
};

/** What each setting may be. */
export const SETTING_VALUES: readonly (readonly [name: string, values: readonly string[]])[] =
  SETTING_ROWS.map(({ name, values }) => [name, values]);

const HELP: CompletedOption = { name: '--help', does: 'shows help', takes: null };

/** Options that stand before or behind any command. */
export const EVERYWHERE: readonly CompletedOption[] = [
  ...GLOBAL_OPTIONS.map(completedOption),
  HELP,
];

/** Every command, as the completion scripts need it. */
export const COMPLETED: readonly CompletedCommand[] = COMMANDS.map(
  ({ name, does, operands, options, passesOn = false }) => ({
    name,
    does,
    operand: OPERANDS[name] ?? valuesOf(operands.split(' ')[0] ?? ''),
    options: options.map(completedOption),
    passesOn,
  }),
);

function completedOption({ flags, does }: OptionRow): CompletedOption {
  const [name = '', value = ''] = flags.split(' ');
  return { name, does, takes: ASKED[name] ?? valuesOf(value) };
}

/** What a placeholder asks for: `<file>`, `<kg|lb>`, `[lift]`; null for none. */
function valuesOf(placeholder: string): Values | null {
  const asked = placeholder.replace(/[<>[\].]/g, '');
  if (asked === '') return null;
  if (asked.includes('|')) return words(...asked.split('|'));
  if (asked === 'file') return { kind: 'files' };
  return asked === 'folder' ? { kind: 'folders' } : { kind: 'anything' };
}
