import {
  COMPLETED,
  type CompletedOption,
  EVERYWHERE,
  SETTING_VALUES,
  type Values,
} from './completed.ts';

/** The completion of holdfast as a script for fish. */
export function fishScript(): string {
  const [train] = COMPLETED;
  return `# Completion of holdfast for fish. To load it: holdfast complete fish | source
function __holdfast_command
    set -l skip no
    for word in (commandline -opc)[2..-1]
        if test $skip = yes
            set skip no
        else if contains -- $word ${valueTakers()}
            set skip yes
        else if string match -q -- '-*' $word; or contains -- $word ${passingOn()}
            continue
        else
            echo $word
        end
    end
end
function __holdfast_in
    set -l words (__holdfast_command)
    test "$words[1]" = "$argv[1]"; and test (count $words) -le $argv[2]
end
function __holdfast_second
    set -l words (__holdfast_command)
    test "$words[2]" = "$argv[1]"
end
complete -c holdfast -f
${EVERYWHERE.map((option) => optionLine(option, null)).join('\n')}
${[...(train?.options ?? [])].map((option) => optionLine(option, '')).join('\n')}
complete -c holdfast -n '__holdfast_in "" 0' -l version -d 'prints the version'
${COMPLETED.flatMap(({ name, does, operand, options }) => [
  `complete -c holdfast -n '__holdfast_in "" 0' -a ${name} -d ${quoted(does)}`,
  ...options.map((option) => optionLine(option, name)),
  ...(operand ? operandLine(name, operand) : []),
]).join('\n')}`;
}

/** More words than any command line has: an option may stand anywhere behind its command. */
const ANYWHERE = 99;

/** @param command null for an option of every command, empty where none was typed yet */
function optionLine({ name, does, takes }: CompletedOption, command: string | null): string {
  const where = command === null ? '' : ` -n '__holdfast_in "${command}" ${ANYWHERE}'`;
  return `complete -c holdfast${where} -l ${name.slice(2)}${takes ? ` ${taken(takes)}` : ''} -d ${quoted(does)}`;
}

function operandLine(name: string, operand: Values): string[] {
  const where = `-n '__holdfast_in "${name}" 1'`;
  if (operand.kind === 'words') {
    const values = name === 'settings' ? SETTING_VALUES.map(settingLine) : [];
    return [`complete -c holdfast ${where} -a '${operand.words.join(' ')}'`, ...values];
  }
  if (operand.kind === 'asked') return [`complete -c holdfast ${where} -a '${askedOf(operand)}'`];
  return operand.kind === 'anything' ? [] : [`complete -c holdfast ${where} -F`];
}

const settingLine = ([name, values]: (typeof SETTING_VALUES)[number]): string =>
  `complete -c holdfast -n '__holdfast_in settings 2; and __holdfast_second ${name}' -a '${values.join(' ')}'`;

const askedOf = ({ of }: Extract<Values, { kind: 'asked' }>): string =>
  `(holdfast complete --words ${of} 2>/dev/null)`;

function taken(values: Values): string {
  switch (values.kind) {
    case 'words':
      return `-x -a '${values.words.join(' ')}'`;
    case 'asked':
      return `-x -a '${askedOf(values)}'`;
    case 'files':
      return '-r -F';
    case 'folders':
      return `-x -a '(__fish_complete_directories)'`;
    default:
      return '-x';
  }
}

const valueTakers = (): string =>
  [...EVERYWHERE, ...COMPLETED.flatMap(({ options }) => options)]
    .filter(({ takes }) => takes !== null)
    .map(({ name }) => name)
    .filter((name, at, all) => all.indexOf(name) === at)
    .join(' ');

const passingOn = (): string =>
  COMPLETED.filter(({ passesOn }) => passesOn)
    .map(({ name }) => name)
    .join(' ');

const quoted = (text: string): string => `'${text.replace(/['\\]/g, '\\$&')}'`;
