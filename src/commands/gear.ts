import { jsonText } from '../text/json-text.ts';
import { problemText } from '../text/problem.ts';
import { gearSurprises } from '../training/check-gear.ts';
import { keepGear } from '../workbench/gear.ts';
import { openWorkbench, type Workbench } from '../workbench/open-workbench.ts';
import type { KeepSettings } from '../workbench/ports.ts';
import type { Run } from './call.ts';
import type { GearJson } from './gear-json-schema.ts';
import { changedGear } from './gear-options.ts';
import { gearText } from './gear-text.ts';
import { tellProblems } from './tell-problems.ts';
import { textSize } from './text-size.ts';

/** Shows what the lifter owns, after the changes that the options ask for. */
export const run: Run = async (call) => {
  const workbench = openWorkbench(call.ports, call.global);
  const { settings } = workbench.settings();
  tellProblems(call, workbench);
  const changed = changedGear(workbench.gear(), call.options);
  if (changed) {
    const problem = keepGear(workbench, changed, await settingsKeeper(workbench));
    call.tell('Saved.');
    if (problem) call.tell(problemText(problem));
  }
  if (call.options.edit === true) {
    const { editGear } = await import('./edit-gear.ts');
    const status = await editGear(call, workbench, await settingsKeeper(workbench));
    if (status !== 0) return status;
  }
  const gear = workbench.gear();
  const isSet = workbench.journal().history().gear !== null || settings.gear !== null;
  if (call.global.json) {
    call.print(jsonText({ schema: 1, set: isSet, gear } satisfies GearJson));
    return 0;
  }
  if (!isSet) {
    call.tell(
      'This is a usual home gym, until you say what you own: "holdfast gear --edit" opens a form, and "holdfast gear --help" shows the options.',
    );
  }
  call.print(gearText(gear, textSize(call.ports).width).join('\n'));
  for (const problem of gearSurprises(gear)) call.tell(problemText(problem));
  return 0;
};

/** What writes settings is slow to load, and most calls only show. */
async function settingsKeeper({ folders }: Workbench): Promise<KeepSettings> {
  const { writeSettings } = await import('../settings/write-settings.ts');
  return (change) => writeSettings(folders.config, change);
}
