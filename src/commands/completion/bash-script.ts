import {
  COMPLETED,
  type CompletedCommand,
  type CompletedOption,
  EVERYWHERE,
  SETTING_VALUES,
  type Values,
} from './completed.ts';

/** The completion of holdfast as a script for bash, from 3.2 on. */
export function bashScript(): string {
  return `# Completion of holdfast for bash. To load it: source <(holdfast complete bash)
_holdfast() {
  local current="\${COMP_WORDS[COMP_CWORD]}" before="\${COMP_WORDS[COMP_CWORD-1]}"
  local command="" first="" operands=0 index word
  for ((index = 1; index < COMP_CWORD; index++)); do
    word="\${COMP_WORDS[index]}"
    case "$command $word" in
      ${valueTakers()}) index=$((index + 1)) ;;
      *" -"*) ;;
      ${passingOn().join('|')}) ;;
      " "*) command="$word" ;;
      *) operands=$((operands + 1)); [[ -n "$first" ]] || first="$word" ;;
    esac
  done
  COMPREPLY=()
  case "$command $before" in
${optionValues().join('\n')}
  esac
  if [[ "$current" == -* ]]; then
    case "$command" in
${optionNames().join('\n')}
    esac
    return
  fi
  if [[ -z "$command" ]]; then
    COMPREPLY=($(compgen -W "${COMPLETED.map(({ name }) => name).join(' ')}" -- "$current"))
    return
  fi
  if [[ "$command $operands" == "settings 1" ]]; then
    case "$first" in
${settingValues().join('\n')}
    esac
  fi
  [[ "$operands" == 0 ]] || return
  case "$command" in
${operandValues().join('\n')}
  esac
}
_holdfast_paths() {
  local IFS=$'\\n'
  compopt -o filenames 2>/dev/null
  COMPREPLY=($(compgen "$1" -- "$2"))
}
complete -F _holdfast holdfast`;
}

const settingValues = (): string[] =>
  SETTING_VALUES.map(
    ([name, values]) =>
      `      "${name}") COMPREPLY=($(compgen -W "${values.join(' ')}" -- "$current")) ;;`,
  );

/** Every option that takes a value, with the command it belongs to: what follows it is no operand. */
const valueTakers = (): string =>
  [
    ...taking(EVERYWHERE).map(({ name }) => `*" ${name}"`),
    ...COMPLETED.flatMap((command) =>
      taking(command.options).map(({ name }) => `"${command.name} ${name}"`),
    ),
  ].join('|');

const taking = (options: readonly CompletedOption[]): readonly CompletedOption[] =>
  options.filter(({ takes }) => takes !== null);

const passingOn = (): string[] =>
  COMPLETED.filter(({ passesOn }) => passesOn).map(({ name }) => `" ${name}"`);

const optionValues = (): string[] => [
  ...taking(EVERYWHERE).map(({ name, takes }) => `    *" ${name}") ${reply(takes)}; return ;;`),
  ...COMPLETED.flatMap((command) =>
    taking(command.options).map(
      ({ name, takes }) => `    "${command.name} ${name}") ${reply(takes)}; return ;;`,
    ),
  ),
];

const optionNames = (): string[] => {
  const [first] = COMPLETED;
  const alone: readonly Pick<CompletedCommand, 'name' | 'options'>[] = [
    { name: '', options: [...(first?.options ?? []), VERSION] },
  ];
  return [...alone, ...COMPLETED].map(({ name, options }) => {
    const names = [...options, ...EVERYWHERE].map((option) => option.name);
    return `      "${name}") COMPREPLY=($(compgen -W "${names.join(' ')}" -- "$current")) ;;`;
  });
};

const VERSION: CompletedOption = { name: '--version', does: 'prints the version', takes: null };

const operandValues = (): string[] =>
  COMPLETED.filter(({ operand }) => operand !== null).map(
    ({ name, operand }) => `    "${name}") ${reply(operand)} ;;`,
  );

function reply(values: Values | null): string {
  switch (values?.kind) {
    case 'words':
      return `COMPREPLY=($(compgen -W "${values.words.join(' ')}" -- "$current"))`;
    case 'asked':
      return `COMPREPLY=($(compgen -W "$(holdfast complete --words ${values.of} 2>/dev/null)" -- "$current"))`;
    case 'files':
      return '_holdfast_paths -f "$current"';
    case 'folders':
      return '_holdfast_paths -d "$current"';
    default:
      return ':';
  }
}
