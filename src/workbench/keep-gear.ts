import { gearSchema } from '../settings/gear-schema.ts';
import { type Problem, Refusal } from '../text/problem.ts';
import type { Gear } from '../training/gear.ts';
import { gearProblems } from '../training/gear-problems.ts';
import type { KeepSettings } from './open-bench.ts';
import type { Workbench } from './open-workbench.ts';
import { orProblem } from './or-problem.ts';

/**
 * Records what the lifter owns. It is in force on every device that reads this journal; the copy in
 * the settings serves a data folder without one, so failing to renew it is only a problem to tell.
 * @throws Refusal when the gear cannot be right or the journal cannot be written; then nothing changed.
 */
export function keepGear(
  workbench: Pick<Workbench, 'journal'>,
  gear: Gear,
  keepSettings: KeepSettings,
): Problem | null {
  const problems = gearProblems(gear);
  if (problems.length > 0) throw new Refusal(...problems);
  workbench.journal().record({ type: 'gear-set', gear: gearSchema.parse(gear) });
  return orProblem(() => {
    keepSettings({ gear });
    return null;
  });
}
