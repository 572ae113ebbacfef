import { environment } from '../terminal/environment.ts';
import { Refusal } from '../text/problem.ts';
import { firstQuestion } from '../ui/first-question.ts';
import type { Screen } from '../ui/ui-state.ts';
import type { Bench } from '../workbench/bench.ts';
import { openWorkbench } from '../workbench/open-workbench.ts';
import { openSessionOf } from '../workbench/prepare.ts';
import { isStale, openWords } from '../workbench/run-session.ts';
import { hasProgram } from '../workbench/system-ports.ts';
import type { Call, Run } from './call.ts';
import { dayOption } from './day-option.ts';
import { minutesOption } from './minutes-option.ts';
import { tellProblems } from './tell-problems.ts';
import { run as printToday } from './today.ts';

/** Opens the screens on today's session; without a terminal prints today as text. */
export const run: Run = async (call) => {
  const { ports } = call;
  const around = environment({
    env: ports.env,
    argv: call.global.colour ? [] : ['--no-color'],
    stdinIsTerminal: ports.stdin.isTTY === true,
    stdoutIsTerminal: ports.stdout.isTTY === true,
  });
  if (!around.interactive || call.global.json) return printToday(call);
  const workbench = openWorkbench(ports, call.global);
  // What is wrong is best said before the screens take over.
  tellProblems(call, workbench);
  const [{ writeSettings }, { openBench }, { runApp }] = await Promise.all([
    import('../settings/write-settings.ts'),
    import('../workbench/open-bench.ts'),
    import('../ui/run-app.tsx'),
  ]);
  const bench = openBench(
    workbench,
    (change) => writeSettings(workbench.folders.config, change),
    minutesOption(call),
  );
  const start = startScreen(bench, call, workbench);
  try {
    const { status, onto } = await runApp(start, bench, {
      ...ports,
      hasProgram: (command) => hasProgram(command, ports.env),
      signals: {
        on: (event, listener) => process.on(event as 'exit', listener as () => void),
        off: (event, listener) => process.off(event as 'exit', listener as () => void),
      },
      screenReader: around.screenReader,
    });
    if (onto === 'demo') {
      workbench.journal().release();
      const { run: runDemo } = await import('./demo.ts');
      await runDemo({ ...call, argv: ['demo'], global: { ...call.global, data: null } });
      // Back where it was opened from.
      return run(call);
    }
    const left = bench.live()?.state();
    if (status === 0 && left && left.stage.kind !== 'closed') {
      call.tell(`The session stays open. ${openWords(left)} "holdfast" goes on with it.`);
    }
    return status;
  } finally {
    workbench.journal().release();
  }
};

function startScreen(
  bench: Bench,
  call: Call,
  workbench: ReturnType<typeof openWorkbench>,
): Screen {
  const day = dayOption(call);
  const open = openSessionOf(workbench);
  if (!open) {
    if (bench.choices().cautions === 'unread') return { kind: 'cautions', scroll: 0 };
    return (
      firstQuestion(bench) ?? {
        kind: 'preview',
        today: bench.today(day ?? undefined),
        chosen: 0,
      }
    );
  }
  // Another device may still be at it: nothing is written before the lifter says so.
  if (!open.own) return { kind: 'preview', today: bench.today(), chosen: 0 };
  const live = bench.begin();
  if ('what' in live) throw new Refusal(live);
  const idle = isStale(open.state, call.ports.clock.read());
  return idle ? { kind: 'stale', chosen: 0 } : { kind: 'runner', draft: null };
}
