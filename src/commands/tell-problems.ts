import type { Lifter } from '../lifter/open-lifter.ts';
import { problemText } from '../text/problem.ts';
import type { Call } from './call.ts';

/** Says on stderr what is wrong with settings and journal files, though the work goes on; gives how much. */
export function tellProblems(call: Pick<Call, 'warn'>, lifter: Lifter): number {
  const { problem } = lifter.settings();
  const gone = lifter.programGone();
  const problems = [
    ...(problem ? [problem] : []),
    ...(gone ? [gone] : []),
    ...lifter.journal().problems(),
  ];
  for (const each of problems) call.warn(problemText(each));
  return problems.length;
}
