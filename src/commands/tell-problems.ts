import { problemText } from '../text/problem.ts';
import type { Workbench } from '../workbench/open-workbench.ts';
import type { Call } from './call.ts';

/** Says on stderr what is wrong with settings and journal files, though the work goes on. */
export function tellProblems(call: Pick<Call, 'warn'>, workbench: Workbench): void {
  const { problem } = workbench.settings();
  const gone = workbench.programGone();
  const problems = [
    ...(problem ? [problem] : []),
    ...(gone ? [gone] : []),
    ...workbench.journal().problems(),
  ];
  for (const each of problems) call.warn(problemText(each));
}
