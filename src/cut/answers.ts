import { LIGHTER_WEEK } from '../progression/lighter-week.ts';
import type { CutRule } from './cut-rules.ts';
import type { ReviewFinding } from './finding.ts';

/** Advice that asks for nothing in the program file: the lifter can only turn it down. */
const ONLY_TURNED_DOWN: ReadonlySet<string> = new Set<CutRule>([
  'pause-cut',
  'pause-cut-long',
  'do-less',
]);

/** What the lifter can say to a finding: facts and warnings take no answer. */
export function answersTo({ reason, changes }: ReviewFinding): {
  readonly yes: boolean;
  readonly no: boolean;
} {
  const yes = changes.length > 0 || reason.rule === LIGHTER_WEEK;
  return { yes, no: yes || ONLY_TURNED_DOWN.has(reason.rule) };
}
