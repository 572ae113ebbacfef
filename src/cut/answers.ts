import { LIGHTER_WEEK } from '../progression/lighter-week.ts';
import type { CutRule } from './cut-rules.ts';
import type { ReviewFinding } from './finding.ts';

interface Answers {
  readonly yes: boolean;
  readonly no: boolean;
}

const BOTH: Answers = { yes: true, no: true };
const NONE: Answers = { yes: false, no: false };

/** Advice that asks for nothing in the program file. Facts and warnings take no answer. */
const WITHOUT_FILE: ReadonlyMap<string, Answers> = new Map<CutRule | typeof LIGHTER_WEEK, Answers>([
  ['pause-cut', BOTH],
  ['pause-cut-long', BOTH],
  ['lose-far-too-fast', BOTH],
  ['lose-slower', BOTH],
  ['not-a-cut', BOTH],
  ['weight-stands-still', BOTH],
  ['goal-reached', BOTH],
  ['do-less', BOTH],
  [LIGHTER_WEEK, BOTH],
  ['pause-in-force', { yes: false, no: true }],
  ['cut-at-rest', { yes: true, no: false }],
  ['next-program', BOTH],
]);

/** What the lifter can say to a finding. */
export function answersTo({ reason, changes, answered }: ReviewFinding): Answers {
  if (answered) return NONE;
  if (changes.length > 0) return BOTH;
  return WITHOUT_FILE.get(reason.rule) ?? NONE;
}
