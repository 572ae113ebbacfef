import type { CommandRow, OptionRow } from '../../src/commands/call.ts';
import { GLOBAL_OPTIONS } from '../../src/commands/command-table.ts';

/** The manual page, section 1, in the `man` macros of every roff. */
export function manPage(
  commands: readonly CommandRow[],
  version: string,
  cautions: readonly string[],
): string {
  return [
    `.TH HOLDFAST 1 "" "holdfast ${version}" "User Commands"`,
    '.SH NAME',
    'holdfast \\- runs your strength sessions and keeps your strength while you lose fat',
    '.SH SYNOPSIS',
    '.B holdfast',
    '[\\fIcommand\\fR] [\\fIoptions\\fR]',
    '.SH DESCRIPTION',
    'Bare \\fBholdfast\\fR opens the session that is due, or the one that was left open. In a pipe it prints it.',
    '.SH OPTIONS',
    ...GLOBAL_OPTIONS.flatMap(option),
    '.SH COMMANDS',
    ...commands.flatMap(({ name, operands, does, options, examples }) => [
      `.SS ${roff(`holdfast ${name} ${operands}`.trim())}`,
      `${roff(does)}.`,
      ...options.flatMap(option),
      ...(examples.length > 0 ? ['.PP', 'Examples:'] : []),
      ...examples.flatMap((example) => ['.br', roff(example)]),
    ]),
    '.SH EXIT STATUS',
    ...statuses.flatMap(([status, means]) => ['.TP', `.B ${status}`, means]),
    '.SH ENVIRONMENT',
    ...variables.flatMap(([name, means]) => ['.TP', `.B ${name}`, means]),
    '.SH CAUTIONS',
    ...cautions.flatMap((caution) => ['.PP', roff(caution)]),
    '',
  ].join('\n');
}

const statuses = [
  ['0', 'Fine.'],
  ['1', 'The answer is no: a check with an error, a load that cannot be made, damage that stays.'],
  ['2', 'Wrong use or a bad file; nothing was written.'],
  ['70', 'An error of the program itself.'],
] as const;

const variables = [
  ['HOLDFAST_DATA', 'The folder where training data lives.'],
  ['NO_COLOR', 'Set to anything: no colours.'],
  ['INK_SCREEN_READER', 'Set to true: every screen is spoken text.'],
] as const;

const option = ({ flags, does }: OptionRow): string[] => [
  '.TP',
  `.B ${roff(flags)}`,
  `${roff(does)}.`,
];

/** A line of roff that says just this text: no escapes, no request at its beginning. */
function roff(text: string): string {
  const plain = text.replaceAll('\\', '\\e').replaceAll('-', '\\-').replaceAll('"', '\\(dq');
  return /^[.']/.test(plain) ? `\\&${plain}` : plain;
}
