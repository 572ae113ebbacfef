import {
  COMPLETED,
  type CompletedOption,
  EVERYWHERE,
  SETTING_VALUES,
  type Values,
} from './completed.ts';

/** The completion of holdfast as a script for zsh, to be sourced or kept as `_holdfast` in the function path. */
export function zshScript(): string {
  const [train] = COMPLETED;
  return `#compdef holdfast
# Completion of holdfast for zsh. To load it, after compinit: source <(holdfast complete zsh)
_holdfast() {
  local curcontext="$curcontext" state
  local -a line commands everywhere
  commands=(
${COMPLETED.map(({ name, does }) => `    ${quoted(`${name}:${does}`)}`).join('\n')}
  )
  everywhere=(
${EVERYWHERE.map((option) => `    ${argument(option)}`).join('\n')}
  )
  _arguments -C "$everywhere[@]" ${(train?.options ?? []).map(argument).join(' ')} \\
    '--version[prints the version]' '1: :->command' '*:: :->rest' && return
  case "$state" in
    command) _describe -t commands command commands ;;
    rest)
      case "$words[1]" in
${COMPLETED.map(({ name, operand, options, passesOn }) =>
  passesOn
    ? `        ${name}) _holdfast ;;`
    : `        ${name}) ${['_arguments "$everywhere[@]"', ...options.map(argument), ...operandOf(operand), ...(name === 'settings' ? [SETTINGS] : [])].join(' ')} ;;`,
).join('\n')}
      esac ;;
  esac
}
if [[ "$funcstack[1]" == _holdfast ]]; then
  _holdfast "$@"
else
  compdef _holdfast holdfast
fi`;
}

/** The value of a setting, by the name before it. */
const SETTINGS = `'2:value:->setting'; case "$line[1]" in ${SETTING_VALUES.map(
  ([name, values]) => `${name}) compadd -- ${values.join(' ')} ;;`,
).join(' ')} esac`;

const argument = ({ name, does, takes }: CompletedOption): string =>
  quoted(`${name}[${does.replace(/[[\]\\]/g, '\\$&')}]${takes ? `:value:${action(takes)}` : ''}`);

const operandOf = (operand: Values | null): string[] =>
  operand ? [quoted(`1:operand:${action(operand)}`)] : [];

function action(values: Values): string {
  switch (values.kind) {
    case 'words':
      return `(${values.words.join(' ')})`;
    case 'asked':
      return `{compadd -- $(holdfast complete --words ${values.of} 2>/dev/null)}`;
    case 'files':
      return '_files';
    case 'folders':
      return '_files -/';
    default:
      return ' ';
  }
}

const quoted = (text: string): string => `'${text.replaceAll("'", "'\\''")}'`;
