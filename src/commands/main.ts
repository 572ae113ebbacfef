import { Command, CommanderError } from 'commander';
import { problemText, Refusal } from '../text/problem.ts';
import { safeOutput } from '../text/safe-text.ts';
import type { Ports } from '../workbench/ports.ts';
import type { Call, CommandRow, ExitStatus, GlobalOptions } from './call.ts';
import { COMMANDS, GLOBAL_OPTIONS, unknownCommand } from './command-table.ts';
import { VERSION } from './version.ts';

const HELP_WIDTH = 80;

/** From this width on commands stand in two columns, so that all fit a screen of 24 lines. */
const TWO_COLUMNS = 76;

/**
 * Reads the command line, runs the command it names and returns the exit status: 0 fine, 1 the
 * answer is "no", 2 wrong use or a bad file. Errors that can be expected end as sentences.
 */
export async function main(ports: Ports, argv: readonly string[]): Promise<ExitStatus> {
  // Names of files, notes and arguments may hold what a terminal acts on; all of it goes through here.
  const print = (text: string) => void ports.stdout.write(`${safeOutput(text)}\n`);
  const tell = (text: string) => void ports.stderr.write(`${safeOutput(text)}\n`);
  let status: ExitStatus = 0;
  const root = rootCommand(ports, print, tell);
  const runRow = async (row: CommandRow, command: Command) => {
    // The root knows --day too and reads it wherever it stands.
    const options = command.optsWithGlobals();
    const global = globalOptions(options);
    const call: Call = { args: command.args, argv, options, global, ports, print, tell };
    const { run } = await row.load();
    status = await run(call);
  };
  // A command that is not named on the line cannot be meant, and making all of them is slow.
  for (const row of COMMANDS.filter(({ name }) => argv.includes(name))) {
    const command = root.command(`${row.name} ${row.operands}`.trim()).description(row.does);
    for (const { flags, does } of row.options) command.option(flags, does);
    if (row.passesOn) command.allowUnknownOption();
    command.allowExcessArguments(false).addHelpText('after', examplesText(row.examples));
    command.configureHelp({ helpWidth: helpWidth(ports) }).configureOutput({
      outputError: (text, write) => write(withExample(text, row)),
    });
    command.action(() => runRow(row, command));
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
    if (error instanceof CommanderError) return error.exitCode === 0 ? 0 : 2;
    if (error instanceof Refusal) {
      for (const problem of error.problems) tell(problemText(problem));
      return 2;
    }
    throw error;
  }
}

function rootCommand(
  ports: Ports,
  print: (text: string) => void,
  tell: (text: string) => void,
): Command {
  const root = new Command('holdfast')
    .description('Runs your strength sessions and keeps your strength while you lose fat.')
    .version(VERSION)
    .helpCommand(false)
    .showSuggestionAfterError()
    .exitOverride()
    .configureOutput({
      writeOut: (text) => print(text.replace(/\n$/, '')),
      writeErr: (text) => tell(text.replace(/\n$/, '')),
    });
  for (const { flags, does } of [...GLOBAL_OPTIONS]) root.option(flags, does);
  root.option('--day <name>', 'a day of the program in place of the one due');
  root.usage('[command] [options]');
  const width = helpWidth(ports);
  root.configureHelp({ helpWidth: width, formatHelp: () => helpText(root, width) });
  return root;
}

const helpWidth = ({ stdout }: Ports): number => Math.min(stdout.columns || HELP_WIDTH, HELP_WIDTH);

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

/** What is missing, with an example in place of a rule. */
function withExample(text: string, { examples }: CommandRow): string {
  const sentence = text.replace(/^error: /, '').trim();
  const words = `${sentence.charAt(0).toUpperCase()}${sentence.slice(1)}`;
  const said = `${words}${/[.!?)]$/.test(words) ? '' : '.'}`;
  return examples[0] ? `${said} For example: ${examples[0]}\n` : `${said}\n`;
}

const examplesText = (examples: readonly string[]): string =>
  examples.length === 0 ? '' : `\nExamples:\n${examples.map((one) => `  ${one}`).join('\n')}`;

function globalOptions(found: Record<string, unknown>): GlobalOptions {
  const text = (name: string) => (typeof found[name] === 'string' ? found[name] : null);
  return {
    data: text('data'),
    program: text('program'),
    json: found.json === true,
    colour: found.color !== false,
  };
}
