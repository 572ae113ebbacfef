import { openSessionOf } from '../journal/history.ts';
import type { Coach } from '../lifter/coach.ts';
import { KIT_TODAY, kitNamed, kitsOf } from '../lifter/kits.ts';
import { type Lifter, openLifter } from '../lifter/open-lifter.ts';
import { openWords, refuseBesideOpen } from '../lifter/prepare.ts';
import { isStale } from '../lifter/run-session.ts';
import { hasProgram } from '../lifter/system-ports.ts';
import { environment } from '../terminal/environment.ts';
import { Refusal } from '../text/problem.ts';
import { firstQuestion } from '../ui/first-question.ts';
import { lessTimeScreen } from '../ui/screens/less-time.ts';
import type { Screen } from '../ui/ui-state.ts';
import type { Call, Run } from './call.ts';
import { answerKeeper } from './keep-answer.ts';
import { dayOption, kitOption, minutesOption } from './operands.ts';
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
  const lifter = openLifter(ports, call.global);
  const keep = ports.picture ? null : answerKeeper(call, lifter);
  refuseBesideOpen(lifter, { day: dayOption(call), kit: kitOption(call) });
  takeKit(call, lifter);
  // What is wrong is best said before the screens take over.
  const problems = tellProblems(call, lifter);
  const [{ writeSettings }, { openCoach }, { runApp }] = await Promise.all([
    import('../settings/write-settings.ts'),
    import('../lifter/open-coach.ts'),
    import('../ui/run-app.tsx'),
  ]);
  const coach = openCoach(
    lifter,
    (change) => writeSettings(lifter.folders.config, change),
    minutesOption(call),
    dayOption(call),
  );
  const start = startScreen(coach, call, lifter);
  try {
    const { status, onto } = await runApp(start, coach, {
      ...ports,
      hasProgram: (command) => hasProgram(command, ports.env),
      signals: {
        on: (event, listener) => process.on(event as 'exit', listener as () => void),
        off: (event, listener) => process.off(event as 'exit', listener as () => void),
      },
      screenReader: around.screenReader,
      drawn: (bytes) => {
        if (!keep || start.kind !== 'preview' || problems > 0) return;
        const { today } = start;
        // Keys come first.
        ports.clock.after(0, () => keep(bytes, today));
      },
    });
    if (onto === 'demo') {
      lifter.journal().release();
      const { run: runDemo } = await import('./demo.ts');
      await runDemo({ ...call, argv: ['demo'], global: { ...call.global, data: null } });
      // Back where it was opened from.
      return run(call);
    }
    const left = coach.live()?.state();
    if (status === 0 && left && left.stage.kind !== 'closed') {
      call.tell(`The session stays open. ${openWords(left)} "holdfast" goes on with it.`);
    }
    return status;
  } finally {
    lifter.journal().release();
  }
};

/** Another gear than the lifter's own, from now on and for today. */
function takeKit(call: Call, lifter: Lifter): void {
  const asked = kitOption(call);
  if (asked === null) return;
  const { name } = kitNamed(kitsOf(lifter.journal().history(), lifter.unit()), asked);
  if (lifter.kitToday() === name) return;
  lifter.journal().record({ type: 'decided', rule: KIT_TODAY, answer: 'yes', subject: name });
}

function startScreen(coach: Coach, call: Call, lifter: Lifter): Screen {
  const open = openSessionOf(lifter.journal().history());
  if (!open) {
    if (coach.choices().cautions === 'unread') return { kind: 'cautions', scroll: 0 };
    return (
      firstQuestion(coach) ?? {
        kind: 'preview',
        today: coach.today(),
        chosen: 0,
      }
    );
  }
  // Another device may still be at it: nothing is written before the lifter says so.
  if (!open.own) return { kind: 'preview', today: coach.today(), chosen: 0 };
  const live = coach.begin();
  if ('what' in live) throw new Refusal(live);
  const idle = isStale(open.state, call.ports.clock.read());
  if (idle) return { kind: 'stale', chosen: 0 };
  const wish = minutesOption(call);
  return wish === null ? { kind: 'runner', draft: null } : lessTimeScreen(coach, wish);
}
