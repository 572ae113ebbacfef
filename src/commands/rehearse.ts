import { knownStrengths } from '../rehearsal/known-strengths.ts';
import { LIFTER_MODEL } from '../rehearsal/lifter-model.ts';
import { gearMissingIn } from '../rehearsal/play-session.ts';
import { rehearse } from '../rehearsal/rehearse.ts';
import { verdictOf } from '../rehearsal/verdict-of.ts';
import { weeksOf } from '../rehearsal/weeks-of.ts';
import { jsonText } from '../text/json-text.ts';
import { WrongUse } from '../text/problem.ts';
import { kilograms } from '../training/mass.ts';
import { openWorkbench } from '../workbench/open-workbench.ts';
import { reasonWords } from '../workbench/rules.ts';
import type { Call, Run } from './call.ts';
import { progressLine } from './long-work.ts';
import { minutesOption } from './minutes-option.ts';
import { rehearseJson, type ToldRehearsal } from './rehearse-json.ts';
import { rehearseText } from './rehearse-text.ts';
import { tellProblems } from './tell-problems.ts';
import { wholeNumber } from './whole-number.ts';

const WEEKS = 12;

/** In a cut, % of body weight a week: slow enough to keep muscle (Garthe 2011). */
const LOSS = 0.7;

/** Before the first weigh-in. */
const BODY_MASS = kilograms(80);

/** Plays the program forward with a simulated lifter, from next Monday on. */
export const run: Run = (call) => {
  const workbench = openWorkbench(call.ports, call.global);
  const program = workbench.program();
  tellProblems(call, workbench);
  const before = workbench.journal().history();
  const today = workbench.today();
  const from = today.add({ days: (8 - today.dayOfWeek) % 7 });
  const minutes = minutesOption(call);
  const count = wholeNumber(String(call.options.weeks ?? WEEKS), '--weeks', 1, 104);
  const line = progressLine(call, 'Playing weeks', count);
  const options = {
    from,
    onWeek: line.show,
    ...(minutes === null ? {} : { minutes }),
    weeks: count,
    loss: lossOption(call) ?? (program.aim === 'cut' ? LOSS : 0),
    seed: wholeNumber(String(call.options.seed ?? 1), '--seed', 0, 2 ** 31 - 1),
    gear: workbench.gear(),
    bodyMass: before.bodyMassOn(today) ?? BODY_MASS,
    strengths: knownStrengths(before, today),
    before,
  };
  const rehearsal = rehearse(program, options);
  const weeks = weeksOf(program, rehearsal, from);
  line.clear();
  const verdict = verdictOf(program, weeks);
  const leftOut = [
    ...new Set(
      rehearsal.sessions
        .flatMap(({ state }) => gearMissingIn(state.prescription))
        .map((reason) => reasonWords(reason, program.unit).text),
    ),
  ];
  const told: ToldRehearsal = { program, options, model: LIFTER_MODEL, weeks, verdict, leftOut };
  call.print(
    call.global.json
      ? jsonText(rehearseJson(told))
      : rehearseText(told, Math.min(100, call.ports.stdout.columns ?? 80)),
  );
  return 0;
};

function lossOption({ options }: Call): number | null {
  const { loss } = options;
  if (loss === undefined) return null;
  const text = String(loss).trim().replace(',', '.').replace(/\s*%$/, '');
  const value = /^\d+(\.\d+)?$/.test(text) ? Number(text) : Number.NaN;
  if (value >= 0 && value <= 3) return value;
  throw new WrongUse({
    what: `--loss is "${loss}".`,
    why: 'It is the body weight lost in a week, a percentage from 0 to 3.',
    fix: 'Write for example: holdfast rehearse --loss 0.7.',
  });
}
