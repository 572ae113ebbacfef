import { openLifter } from '../lifter/open-lifter.ts';
import { rememberedProgram } from '../lifter/program-choice.ts';
import { textTable } from '../report/table.ts';
import type { Settings } from '../settings/settings.ts';
import { jsonText } from '../text/json-text.ts';
import { nearestKey } from '../text/nearest.ts';
import { WrongUse } from '../text/problem.ts';
import { WEIGHT_QUESTION } from '../training/cautions.ts';
import type { Call, Run } from './call.ts';
import { SETTING_ROWS, type SettingRow } from './setting-rows.ts';
import type { SettingsJson } from './settings-schema.ts';
import { tellProblems } from './tell-problems.ts';
import { textSize } from './text-size.ts';

/** Shows the settings of this machine, or one of them, or changes one. */
export const run: Run = async (call) => {
  const [name, value] = call.args;
  const lifter = openLifter(call.ports, call.global);
  const rows = name === undefined ? SETTING_ROWS : [rowNamed(name)];
  const [row] = rows;
  if (row && value !== undefined) {
    const change = row.change(allowed(row, value));
    const { writeSettings } = await import('../settings/write-settings.ts');
    show(call, rows, writeSettings(lifter.folders.config, change));
    if (row.name === 'weight-advice' && value === 'yes') call.tell(ADVICE_IS_ON);
    return 0;
  }
  tellProblems(call, lifter);
  const { settings } = lifter.settings();
  show(call, rows, settings);
  const asks = settings.weightAdvice === 'ask' && rows.some((one) => one.name === 'weight-advice');
  if (asks) call.tell(WEIGHT_QUESTION);
  return 0;
};

const ADVICE_IS_ON =
  'From now on the review speaks of how fast you lose weight. That is for adults only, neither pregnant nor with an eating disorder now or in the past; if you are not one of them, say "holdfast settings weight-advice no".';

function rowNamed(name: string): SettingRow {
  const found = SETTING_ROWS.find((row) => row.name === name);
  if (found) return found;
  const names = SETTING_ROWS.map((row) => row.name);
  const near = nearestKey(name, names);
  throw new WrongUse({
    what: `There is no setting "${name}".`,
    fix: near ? `Did you mean "${near}"?` : `Settings: ${names.join(', ')}.`,
  });
}

function allowed({ name, values }: SettingRow, value: string): string {
  if (values.includes(value)) return value;
  throw new WrongUse({ what: `${name} cannot be "${value}".`, fix: `It is ${orList(values)}.` });
}

const orList = (words: readonly string[]): string =>
  `${words.slice(0, -1).join(', ')} or ${words.at(-1)}`;

function show({ global, print, ports }: Call, rows: readonly SettingRow[], settings: Settings) {
  if (global.json) {
    const json: SettingsJson = {
      schema: 1,
      program: rememberedProgram(settings, openLifter(ports, global).folders),
      settings: Object.fromEntries(rows.map(({ name, read }) => [name, read(settings)])),
    };
    print(jsonText(json));
    return;
  }
  const columns = [
    { heading: 'setting', align: 'left' },
    { heading: 'is', align: 'left' },
    { heading: 'or', align: 'left', dropFirst: 1 },
    { heading: 'what it does', align: 'left', dropFirst: 2 },
  ] as const;
  const cells = rows.map(({ name, read, does, values }) => {
    const others = values.filter((value) => value !== read(settings));
    return [name, read(settings), others.join(', '), does];
  });
  print(textTable(columns, cells, textSize(ports).width).join('\n'));
}
