import { type Examined, examineFiles } from '../lifter/examine-files.ts';
import { openLifter } from '../lifter/open-lifter.ts';
import { jsonText } from '../text/json-text.ts';
import type { Run } from './call.ts';
import type { DoctorJson } from './doctor-schema.ts';

/** Checks every data file and repairs what can be. Exit 1 where something is not repaired. */
export const run: Run = async ({ ports, global, print }) => {
  const lifter = openLifter(ports, global);
  const { writeSettings } = await import('../settings/write-settings.ts');
  const checked = examineFiles(lifter, (change) => writeSettings(lifter.folders.config, change));
  const json: DoctorJson = {
    schema: 1,
    checked: checked.map((each) => ({ ...each, words: [...each.words] })),
  };
  print(global.json ? jsonText(json) : checked.map(checkText).join('\n'));
  return checked.some(({ state }) => state === 'not-repaired') ? 1 : 0;
};

const STATES: Readonly<Record<Examined['state'], string>> = {
  fine: 'fine',
  repaired: 'repaired',
  'not-repaired': 'not repaired',
};

const checkText = ({ what, place, state, words }: Examined): string =>
  [`${what}  ${place}: ${STATES[state]}`, ...words.map((sentence) => `  ${sentence}`)].join('\n');
