import { Command, CommanderError } from 'commander';
import type { Ports } from '../lifter/ports.ts';
import { problemText, Refusal, WrongUse } from '../text/problem.ts';
import type { Call, CommandRow, ExitStatus, GlobalOptions, OptionRow } from './call.ts';
import { COMMANDS, GLOBAL_OPTIONS, unknownCommand } from './command-table.ts';
import { outputOf } from './output.ts';
import { VERSION } from './version.ts';
import { wrongUse } from './wrong-use.ts';

const HELP_WIDTH = 80;

/** From this width on commands stand in two columns, so that all fit a screen of 24 lines. */
const TWO_COLUMNS = 76;

/**
 * Reads the command line, runs the command it names and returns the exit status: 0 fine, 1 the
 * answer is "no", 2 wrong use or a bad file. Errors that can be expected end as sentences.
 */
export async function main(ports: Ports, argv: readonly string[]): Promise<ExitStatus> {
  const { print, write, warn } = outputOf(ports);
  let status: ExitStatus = 0;
  let asked: CommandRow | null = null;
  const root = rootCommand(ports, print);
  const runRow = async (row: CommandRow, command: Command) => {
    // The root knows --day too and reads it wherever it stands.
    const options = command.optsWithGlobals();
    const global = globalOptions(options, ports.env);
    if (global.json && row.noJson !== undefined) {
      throw new WrongUse({ what: `"holdfast ${row.name}" takes no --json.`, fix: row.noJson });
    }
    const call: Call = {
      args: command.args,
      argv,
      options,
      global,
      ports,
      print: global.json ? write : print,
      write,
      tell: global.quiet ? () => {} : warn,
      warn,
    };
    const { run } = await row.load();
    status = await run(call);
  };
  // A command that is not named on the line cannot be meant, and making all of them is slow.
  for (const row of COMMANDS.filter(({ name }) => argv.includes(name))) {
    const command = root.command(`${row.name} ${row.operands}`.trim()).description(row.does);
    for (const option of row.options) addOption(command, option);
    if (row.passesOn) command.allowUnknownOption();
    command.allowExcessArguments(false).addHelpText('after', examplesText(row.examples));
    command.configureHelp({ helpWidth: helpWidth(ports) });
    command.action(() => runRow(row, command));
    command.hook('preAction', () => {
      asked = row;
    });
  }
  const [train] = COMMANDS;
  root.argument('[command]').action((unknown?: string) => {
    if (unknown !== undefined) throw unknownCommand(unknown);
    if (train) return runRow(train, root);
  });
  try {
    await root.parseAsync([...argv], { from: 'user' });
    return status;
  } catch (error) {
    if (error instanceof CommanderError && error.exitCode === 0) return 0;
    asked ??= COMMANDS.find(({ name }) => name === argv.find(isCommand)) ?? null;
    const refusal =
      error instanceof CommanderError
        ? wrongUse(error, asked, [...GLOBAL_OPTIONS, ...(asked?.options ?? [])])
        : error;
    if (!(refusal instanceof Refusal)) throw error;
    const lines = refusal.problems.map(problemText);
    const help = ['holdfast', asked?.name, '--help'].filter(Boolean).join(' ');
    const more = refusal instanceof WrongUse ? ` "${help}" tells more.` : '';
    warn(`${lines.join('\n')}${more}`);
    return 2;
  }
}

function rootCommand(ports: Ports, print: (text: string) => void): Command {
  const root = new Command('holdfast')
    .description('Runs your strength sessions and keeps your strength while you lose fat.')
    .version(VERSION)
    .helpCommand(false)
    .showSuggestionAfterError(false)
    .exitOverride()
    .configureOutput({
      writeOut: (text) => print(text.replace(/\n$/, '')),
      writeErr: () => {},
    });
  const day = { flags: '--day <name>', does: 'a day of the program in place of the one due' };
  for (const option of [...GLOBAL_OPTIONS, day]) addOption(root, option);
  root.usage('[command] [options]');
  const width = helpWidth(ports);
  root.configureHelp({ helpWidth: width, formatHelp: () => helpText(root, width) });
  return root;
}

/** Where its value was forgotten, the next option is not taken for it: "--out --replace" names no file. */
function addOption(command: Command, { flags, does }: OptionRow): void {
  const option = command.createOption(flags, does);
  command.addOption(option).on(`option:${option.name()}`, (value: unknown) => {
    if (typeof value !== 'string' || !/^--[a-z]/.test(value)) return;
    command.error(`error: option '${flags}' argument missing`, {
      code: 'commander.optionMissingArgument',
    });
  });
}

const helpWidth = ({ stdout }: Ports): number => Math.min(stdout.columns || HELP_WIDTH, HELP_WIDTH);

const isCommand = (word: string): boolean => COMMANDS.some(({ name }) => name === word);

/** What holdfast does on one screen; each command tells the rest itself. */
function helpText(root: Command, width: number): string {
  const help = root.createHelp();
  const wrap = (text: string) => help.boxWrap(text, width);
  const short = COMMANDS.map(({ name, brief }) => `${name.padEnd(9)} ${brief}`);
  const half = Math.ceil(short.length / 2);
  const rows =
    width >= TWO_COLUMNS
      ? short
          .slice(0, half)
          .map((left, at) => `${left.padEnd(40)}${short[at + half] ?? ''}`.trimEnd())
      : short;
  return [
    wrap('holdfast runs your strength sessions and keeps your strength while you lose fat.'),
    '',
    ...rows,
    '',
    wrap('Alone it opens the session that is due. "holdfast help draft" tells more of draft.'),
    ...GLOBAL_OPTIONS.map(({ flags, does }) =>
      wrap(width >= TWO_COLUMNS ? `${flags.padEnd(18)} ${does}` : `${flags}: ${does}`),
    ),
    wrap('Not medical advice: read "holdfast help cautions" before you start.'),
    '',
  ].join('\n');
}

const examplesText = (examples: readonly string[]): string =>
  examples.length === 0 ? '' : `\nExamples:\n${examples.map((one) => `  ${one}`).join('\n')}`;

function globalOptions(
  found: Record<string, unknown>,
  env: Readonly<Record<string, string | undefined>>,
): GlobalOptions {
  const text = (name: string) => (typeof found[name] === 'string' ? found[name] : null);
  return {
    data: text('data'),
    program: text('program') ?? (env.HOLDFAST_PROGRAM || null),
    json: found.json === true,
    colour: found.color !== false,
    quiet: found.quiet === true,
  };
}
