import type { CommanderError } from 'commander';
import { nearestKey } from '../text/nearest.ts';
import { type Problem, WrongUse } from '../text/problem.ts';
import type { CommandRow, OptionRow } from './call.ts';

/** What the reader of command lines found wrong, in the words of this program. */
export function wrongUse(
  error: CommanderError,
  row: CommandRow | null,
  options: readonly OptionRow[],
): WrongUse {
  return new WrongUse(PROBLEMS[error.code]?.(error.message, row, options) ?? other(error.message));
}

const PROBLEMS: Readonly<
  Record<string, (said: string, row: CommandRow | null, options: readonly OptionRow[]) => Problem>
> = {
  'commander.unknownOption': (said, _, options) => {
    const found = quoted(said);
    const near = nearestKey(
      found,
      options.map(({ flags }) => flags.split(' ')[0] ?? ''),
    );
    return {
      what: `There is no option "${found}" here.`,
      ...(near ? { fix: `Did you mean "${near}"?` } : {}),
    };
  },
  'commander.optionMissingArgument': (said, row, options) => {
    const flags = quoted(said);
    const [name = ''] = flags.split(' ');
    const example = row?.examples.find((each) => each.split(' ').includes(name));
    const does = options.find((each) => each.flags === flags)?.does;
    return {
      what: `"${name}" was given nothing.`,
      fix: example ? `For example: ${example}.` : `Write ${flags}${does ? `: ${does}` : ''}.`,
    };
  },
  'commander.missingArgument': (said, row) => ({
    what: `<${quoted(said)}> is missing.`,
    ...(row?.examples[0] ? { fix: `For example: ${row.examples[0]}.` } : {}),
  }),
  'commander.excessArguments': (said, row) => ({
    what: `More was typed than "${row?.name ?? 'holdfast'}" takes${said.replace(/^.*but got \d+(: .*?)\.?$/s, '$1')}.`,
    ...(row?.examples[0] ? { fix: `For example: ${row.examples[0]}.` } : {}),
  }),
};

const quoted = (said: string): string => /'(.*?)'/s.exec(said)?.[1] ?? '';

const other = (said: string): Problem => ({ what: said.replace(/^error: /, '') });
