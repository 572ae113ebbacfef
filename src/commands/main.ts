import { Command, CommanderError } from 'commander';
import { nearestKey } from '../text/nearest.ts';
import { problemText, Refusal } from '../text/problem.ts';
import { CAUTIONS, READINESS_QUESTIONS } from '../training/cautions.ts';
import type { Ports } from '../workbench/ports.ts';
import type { Call, ExitStatus, GlobalOptions } from './call.ts';
import { COMMANDS, type CommandRow, GLOBAL_OPTIONS } from './command-table.ts';
import { VERSION } from './version.ts';

const HELP_WIDTH = 80;

/**
 * Reads the command line, runs the command it names and returns the exit status: 0 fine, 1 the
 * answer is "no", 2 wrong use or a bad file. Errors that can be expected end as sentences.
 */
export async function main(ports: Ports, argv: readonly string[]): Promise<ExitStatus> {
  const print = (text: string) => void ports.stdout.write(`${text}\n`);
  const tell = (text: string) => void ports.stderr.write(`${text}\n`);
  let status: ExitStatus = 0;
  const root = rootCommand(print, tell);
  const runRow = async (row: CommandRow, command: Command) => {
    // The root knows --day too and reads it wherever it stands.
    const options = command.optsWithGlobals();
    const global = globalOptions(options);
    const call: Call = { args: command.args, argv, options, global, ports, print, tell };
    const { run } = await row.load();
    status = await run(call);
  };
  for (const row of COMMANDS) {
    const command = root.command(`${row.name} ${row.operands}`.trim()).description(row.does);
    for (const { flags, does } of row.options) command.option(flags, does);
    if (row.passesOn) command.allowUnknownOption();
    command.allowExcessArguments(false).addHelpText('after', examplesText(row.examples));
    command.action(() => runRow(row, command));
  }
  const [train] = COMMANDS;
  root.argument('[command]').action((unknown?: string) => {
    if (unknown !== undefined) throw new Refusal(unknownCommand(unknown));
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

function rootCommand(print: (text: string) => void, tell: (text: string) => void): Command {
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
  const examples = COMMANDS.flatMap((row) => row.examples.slice(0, 1));
  root.addHelpText('before', `${examplesText(examples).trimStart()}\n`);
  root.usage('[command] [options]');
  root.addHelpText('after', `\n${cautionsText(root)}`);
  return root;
}

/** By commander's own measure: a library that knows every script is slow to load, and this is plain text. */
function cautionsText(root: Command): string {
  const questions = READINESS_QUESTIONS.map((question, at) => `${at + 1} ${question}`);
  const help = root.createHelp();
  return [...CAUTIONS, ...questions].map((text) => help.boxWrap(text, HELP_WIDTH)).join('\n');
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

function unknownCommand(found: string) {
  const names = COMMANDS.map((row) => row.name);
  const near = nearestKey(found, names);
  return {
    what: `There is no command "${found}".`,
    fix: near ? `Did you mean "${near}"?` : `Commands: ${names.join(', ')}.`,
  };
}
