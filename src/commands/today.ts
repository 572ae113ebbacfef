import { jsonText } from '../text/json-text.ts';
import { madeUp } from '../workbench/gear.ts';
import { openWorkbench } from '../workbench/open-workbench.ts';
import { todayOf } from '../workbench/prepare.ts';
import { reasonWords } from '../workbench/rules.ts';
import type { Run } from './call.ts';
import { dayOption } from './day-option.ts';
import { minutesOption } from './minutes-option.ts';
import { tellProblems } from './tell-problems.ts';
import { todayJson } from './today-json.ts';
import { todayText } from './today-text.ts';

/** Prints today's prescription. An open session and a rest day are answers too: exit 0. */
export const run: Run = (call) => {
  const workbench = openWorkbench(call.ports, call.global);
  const today = todayOf(workbench, dayOption(call), minutesOption(call));
  const words = (reason: Parameters<typeof reasonWords>[0]) =>
    reasonWords(reason, today.prescription.unit);
  tellProblems(call, workbench);
  call.print(
    call.global.json
      ? jsonText(todayJson(today, workbench.gear(), words))
      : todayText(today, {
          reasonWords: words,
          madeUp: (exercise, load) => madeUp(exercise, load, workbench.gear()),
        }),
  );
  return 0;
};
