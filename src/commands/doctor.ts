import { jsonText } from '../text/json-text.ts';
import { type CheckUp, checkUp } from '../workbench/check-up.ts';
import { openWorkbench } from '../workbench/open-workbench.ts';
import type { Run } from './call.ts';
import type { DoctorJson } from './doctor-schema.ts';

/** Checks every data file and repairs what can be. Exit 1 where something is not repaired. */
export const run: Run = async ({ ports, global, print }) => {
  const workbench = openWorkbench(ports, global);
  const { writeSettings } = await import('../settings/write-settings.ts');
  const checked = checkUp(workbench, (change) => writeSettings(workbench.folders.config, change));
  const json: DoctorJson = {
    schema: 1,
    checked: checked.map((each) => ({ ...each, words: [...each.words] })),
  };
  print(global.json ? jsonText(json) : checked.map(checkText).join('\n'));
  return checked.some(({ state }) => state === 'not-repaired') ? 1 : 0;
};

const STATES: Readonly<Record<CheckUp['state'], string>> = {
  fine: 'fine',
  repaired: 'repaired',
  'not-repaired': 'not repaired',
};

const checkText = ({ what, place, state, words }: CheckUp): string =>
  [`${what}  ${place}: ${STATES[state]}`, ...words.map((sentence) => `  ${sentence}`)].join('\n');
