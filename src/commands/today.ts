import { madeUp } from '../lifter/gear.ts';
import { openLifter } from '../lifter/open-lifter.ts';
import { refuseBesideOpen, todayOf } from '../lifter/prepare.ts';
import { reasonWords } from '../lifter/rules.ts';
import { expectedSets } from '../progression/expected-sets.ts';
import { jsonText } from '../text/json-text.ts';
import type { Run } from './call.ts';
import { answerKeeper } from './keep-answer.ts';
import { dayOption, kitOption, minutesOption } from './operands.ts';
import { tellProblems } from './tell-problems.ts';
import { todayJson } from './today-json.ts';
import { todayText } from './today-text.ts';

/** Prints today's prescription. An open session and a rest day are answers too: exit 0. */
export const run: Run = (call) => {
  const lifter = openLifter(call.ports, { ...call.global, kit: kitOption(call) });
  refuseBesideOpen(lifter, { day: dayOption(call), kit: kitOption(call) });
  const keep = answerKeeper(call, lifter);
  const today = todayOf(lifter, dayOption(call), minutesOption(call));
  const words = (reason: Parameters<typeof reasonWords>[0]) =>
    reasonWords(reason, today.prescription.unit);
  const problems = tellProblems(call, lifter);
  const said = call.global.json
    ? jsonText(
        todayJson(today, lifter.gearToday(), {
          reasonWords: words,
          expected: (exercise) =>
            expectedSets(lifter.journal().history().lately, exercise, lifter.today()),
        }),
      )
    : todayText(today, {
        reasonWords: words,
        madeUp: (exercise, load) =>
          madeUp(exercise, load, lifter.gearToday(), today.prescription.unit),
      });
  call.print(said);
  if (problems === 0) keep(said, today);
  return 0;
};
