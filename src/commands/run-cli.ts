import type { Ports } from '../lifter/ports.ts';
import { environment } from '../terminal/environment.ts';
import { showPicture } from '../terminal/picture.ts';
import { tellWriteErrors } from '../terminal/write-errors.ts';
import { safeOutput } from '../text/safe-text.ts';
import { askedAgain, keptAnswer } from './kept-answer.ts';
import { outputOf } from './output.ts';

/**
 * Runs the command line on these ports and leaves the exit status to the process, so that what is
 * still on its way to a pipe arrives.
 */
export async function runCli(ports: Ports, argv: readonly string[]): Promise<void> {
  // Ink, its colour library and React read these once, when they are imported.
  for (const [name, value] of Object.entries(
    environment({
      env: process.env,
      argv,
      stdinIsTerminal: ports.stdin.isTTY === true,
      stdoutIsTerminal: ports.stdout.isTTY === true,
    }).variables,
  )) {
    if (value === undefined) delete process.env[name];
    else process.env[name] = value;
  }
  tellWriteErrors(ports.stdout);
  // Where even this cannot be written there is nobody left to tell.
  ports.stderr.on('error', () => {});
  const asked = askedAgain(ports, argv);
  const kept = asked && keptAnswer(ports, asked);
  if (asked?.kind === 'answer' && kept !== null) {
    const { print, write } = outputOf(ports);
    (argv.includes('--json') ? write : print)(kept);
    return;
  }
  const picture = kept === null ? undefined : showPicture(kept, ports, process);
  try {
    const { main } = await import('./main.ts');
    const status = await main(picture ? { ...ports, picture } : ports, argv);
    process.exitCode ||= status;
    if (status === HUNG_UP) endAsHungUp();
  } catch (error) {
    picture?.takenAway();
    const words = safeOutput((error as Error).message);
    process.stderr.write(
      `holdfast met an error of its own: ${words} Every set it showed as saved is on disk. Please report it with what you did last.\n`,
    );
    process.exitCode = 70;
  }
}

const HUNG_UP = 129;

/** Without its terminal a process on Node 20 aborts at a normal end; ended by its signal, none does. */
function endAsHungUp(): void {
  process.removeAllListeners('SIGHUP');
  process.kill(process.pid, 'SIGHUP');
}
