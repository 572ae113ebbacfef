import { keepGear } from '../lifter/gear.ts';
import type { Lifter } from '../lifter/open-lifter.ts';
import type { KeepSettings } from '../lifter/ports.ts';
import { environment } from '../terminal/environment.ts';
import { problemText, Refusal } from '../text/problem.ts';
import type { Gear } from '../training/gear.ts';
import type { Call } from './call.ts';

/**
 * Opens the form of what the lifter owns; gives back the exit status.
 * @throws Refusal where there is no terminal to show it on
 */
export async function editGear(
  { ports, global }: Call,
  lifter: Lifter,
  keepSettings: KeepSettings,
): Promise<number> {
  const around = environment({
    env: ports.env,
    argv: [],
    stdinIsTerminal: ports.stdin.isTTY === true,
    stdoutIsTerminal: ports.stdout.isTTY === true,
  });
  if (!around.interactive || global.json) {
    throw new Refusal({
      what: 'The form needs a terminal.',
      fix: 'Change the gear by options in its place; "holdfast gear --help" shows them.',
    });
  }
  const { gearForm } = await import('../ui/gear/gear-form.tsx');
  const keep = (gear: Gear) => {
    try {
      keepGear(lifter, gear, keepSettings);
      return null;
    } catch (error) {
      if (error instanceof Refusal) return error.problems.map(problemText).join(' ');
      throw error;
    }
  };
  return gearForm(lifter.gear(), keep, lifter.settings().settings.theme, {
    ...ports,
    signals: {
      on: (event, listener) => process.on(event as 'exit', listener as () => void),
      off: (event, listener) => process.off(event as 'exit', listener as () => void),
    },
    screenReader: around.screenReader,
  });
}
