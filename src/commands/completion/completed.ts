import { COMMANDS, GLOBAL_OPTIONS, type OptionRow } from '../command-table.ts';
import { SCHEMAS } from '../schemas.ts';
import { SETTING_ROWS } from '../setting-rows.ts';

/** What may be typed in a place. */
export type Values =
  | { readonly kind: 'words'; readonly words: readonly string[] }
  | { readonly kind: 'files' }
  | { readonly kind: 'folders' }
  /** A mass, a name, a number: nothing that a shell can offer. */
  | { readonly kind: 'anything' };

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
  schema: words('program', ...Object.keys(SCHEMAS)),
  settings: words(...SETTING_ROWS.map(({ name }) => name)),
};

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
  return { name, does, takes: valuesOf(value) };
}

/** What a placeholder asks for: `<file>`, `<kg|lb>`, `[lift]`; null for none. */
function valuesOf(placeholder: string): Values | null {
  const asked = placeholder.replace(/[<>[\].]/g, '');
  if (asked === '') return null;
  if (asked.includes('|')) return words(...asked.split('|'));
  if (asked === 'file') return { kind: 'files' };
  return asked === 'folder' ? { kind: 'folders' } : { kind: 'anything' };
}
