import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { type Lifter, openLifter } from '../../src/lifter/open-lifter.ts';
import { todayOf } from '../../src/lifter/prepare.ts';
import { runSession } from '../../src/lifter/run-session.ts';
import { TINY_PROGRAM } from '../terminal/tiny-program.ts';
import type { AHome } from './a-home.ts';

/** Gives the home a program of its own: one day, two sets of squats at 40 kg and a cluster. */
export function withTinyProgram(home: AHome): void {
  const program = join(home.folder, 'tiny.yaml');
  writeFileSync(program, TINY_PROGRAM);
  home.writeSettings({ program, cautions: 'read' });
}

export const lifterOf = (home: AHome): Lifter =>
  openLifter(home.ports(), { data: null, program: null });

/** Does today's session as planned; all of it, or only its first sets, and closes it unless told not to. */
export function doSession(home: AHome, { sets = 99, close = true } = {}): void {
  const lifter = lifterOf(home);
  const { prescription } = todayOf(lifter, null);
  const ports = home.ports();
  const live = runSession(lifter.journal().beginSession(prescription), () => ports.clock.read());
  const send = (command: Parameters<typeof live.send>[0]) => {
    const problem = live.send(command);
    if (problem) throw new Error(problem.what);
  };
  for (let done = 0; done < sets && live.state().stage.kind !== 'all-done'; done += 1) {
    send({ do: 'start' });
    send({ do: 'put-down' });
  }
  if (close) {
    if (sets > 0) send({ do: 'confirm' });
    send({ do: 'close', how: live.state().stage.kind === 'all-done' ? 'finished' : 'as-it-is' });
  }
  lifter.journal().release();
}
