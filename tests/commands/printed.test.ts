import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { ROOT } from '../../src/tooling/root.mjs';
import { AHome } from './a-home.ts';
import { withDemoWeeks } from './demo-weeks.ts';

/**
 * What commands print, kept as text in `printed/`, a file a command: on twelve lived weeks, and in a
 * home where nothing is kept yet. `-u` writes it anew, and you read the difference.
 */
const READING: Readonly<Record<string, readonly string[]>> = {
  today: ['', '--day B', '--day C --minutes 30', '--minutes 20', '--day A --json', '--day Z'],
  review: ['', '--weeks 12 --why', '--weeks 2 --json', '--weeks 0'],
  history: [
    '--last 6',
    'back-squat',
    'side-plank --last 3',
    'bench-press --since 2026-11-16 --json',
    '--search 2026-11-19 --last 3',
    '--deleted',
    'back-sqat --last 1',
    'yoke-walk',
    '--since someday',
    '--last 0',
  ],
  check: ['', 'four-day', 'two-day --strict', 'three-day --json', 'nowhere.yaml'],
  load: [
    '82.5',
    '83.1',
    '185lb',
    '20',
    '12 --bar short',
    '1000',
    'heavy',
    '100 --json',
    '83.1 --json',
  ],
  estimate: [
    '--load 100 --reps 5 --reserve 2',
    '--load 225lb --reps 12',
    '--load 220 --reps 5',
    '--load 60 --reps 20',
    '--load 100 --reps 3 --reserve 2 --json',
    '--load 100 --reps 31',
    '--load 100 --reps 5 --reserve 11',
    '--reps 5',
  ],
  lifts: ['row', 'back-squat', 'rear delts', 'pull-up --json', 'sqat', 'qqqq'],
  gear: ['', '--json'],
  settings: ['', 'bell', 'bell perhaps', 'nothing yes', '--json'],
  rehearse: [
    '--weeks 1 --draws 2 --seed 5',
    '--weeks 12 --draws 1 --lifter lean --loss 1.2 --minutes 30',
    '--weeks 2 --draws 2 --compare 0.4 1',
    '--weeks 0',
    '--loss 9',
    '--lifter giant',
  ],
  help: ['', 'weigh', 'import', 'cautions', 'nothing'],
  doctor: ['', '--json'],
  draft: [
    '--minutes 5 --print',
    '--days 3 --minutes 60 --print',
    '--days 2 --minutes 30 --kit dumbbells --focus side-delts --print',
    '--days 4 --minutes 45 --aim build --without deadlift --print',
    '--days 2 --minutes 30 --best "back-squat=100kg for 5 leaving 2" --print',
    '--days 9 --print',
  ],
};

const NAMES_PATHS: ReadonlySet<string> = new Set(['check', 'doctor']);

/** Commands that keep something, one after the other in a home of their own. */
const KEEPING: Readonly<Record<string, readonly string[]>> = {
  weigh: [
    'weigh 82.4 --date 2026-11-20',
    'weigh 82.4 --date 2026-11-20',
    'weigh 181.6lb --date 2026-11-24',
    'weigh 82 --waist 86',
    'weigh --waist 34in --date yesterday',
    'weigh 8.2',
    'weigh 72',
    'weigh 72 --sure',
    'weigh 81.9 --json',
    'weigh 82 --date 2026-11-26',
    'weigh 82 --date 3/4/2026',
    'weigh 82 --unit stone',
    'weigh',
    'history --ids',
  ],
  'own-gear': [
    'gear --plates "20kg=4, 10kg=2, 1.25kg=2"',
    'gear --bars "short bar=10kg" --collars "short bar=1kg"',
    'gear --stacks "pulldown=5kg..100kg by 5kg"',
    'gear --stacks "pulldown=heavy"',
    'gear --safeties perhaps',
    'gear --kit travel --dumbbells 10kg=2',
    'gear --kit travel',
    'gear --kit travel --forget',
    'gear --defaults',
    'gear --plates 20kg',
    'gear',
  ],
  'gear-part-by-part': [
    'gear --defaults kg --plates "20kg=0, 15kg=2" --measured "10kg=9.8kg"',
    'gear --stacks "pulldown=5kg..50kg by 5kg, cable=2.5kg..40kg by 2.5kg"',
    'gear --stacks "pulldown=0" --bands "light band=0, strong=45kg" --belt no',
    'gear --dumbbells "12kg..20kg by 4kg=2, 3kg=0" --handles "2kg=0, 2.5kg=1"',
    'gear --bars "bar=0, long=20kg" --safeties yes --stations "bench, rack" --free-step 5kg',
    'gear --measured "10kg=0" --unit lb --plates "45=2" --stations none',
    'gear --bars long=0',
    'gear --plates "20kg=-1"',
    'gear --plates "20kg=999"',
    'gear --dumbbells "12kg..2kg by 4kg=2"',
    'gear --collars "shrt=1kg"',
    'gear --stations "bench, sauna"',
    'gear --free-step 0',
    'gear --defaults lb',
    'gear --defaults lb --sure',
  ],
  'own-settings': ['settings bell no', 'settings taps yes', 'settings theme dark', 'settings'],
  'own-draft': [
    'draft --days 3 --minutes 45 --kit dumbbells --unit lb --name "Mine"',
    'draft --days 3 --minutes 45 --kit dumbbells --unit lb --name "Mine"',
    'draft --days 2 --kit 1 --unit stone',
    'draft --days 2 --kit 1 --name " "',
  ],
  // What is asked for past its bounds, or by a name that is none.
  refused: [
    'complete',
    'complete tcsh',
    'weigh 80 --date 1949-12-31',
    'weigh 80 --date 1950-01-01',
    'weigh 80 --waist tall',
    'weigh 80 --waist 600cm',
    'schema todya',
    'schema today --as text',
    'amend none:1',
    'amend none:1 --dry-run --reps 5',
    'amend none:1 --delete --reps 5',
    'amend none:1 --restore',
    'export',
    'export --as jsn',
    'export --as csv --json',
    'estimate --load 0 --reps 5',
    'estimate --load 100',
    'load 60 --bar long',
    'load 60 --bar bra',
    'load 10000kg',
    'today --minutes 0',
    'today --minutes 1000',
    'history --since 2026-13-01',
    'review --weeks 521',
    'rehearse --compare one',
    'rehearse --compare 0.4 1 2',
    'rehearse --loss 2.1',
    'rehearse --loss -1',
    'rehearse --weeks 105',
    'rehearse --draws 0',
    'rehearse --draws 1001',
    'rehearse --seed -1',
    'rehearse --minutes 4',
    'draft --days 1',
    'draft --days 5',
    'draft --minutes 14',
    'draft --minutes 181',
    'draft --aim more',
    'draft --focus wings',
    'draft --focus chst',
    'draft --without bnch-press',
    'draft --best "bench-press=80kg"',
    'draft --hurts hair',
    'import table.csv --dates middle',
    'import table.csv --lift Juggling',
    'import table.csv --lift Jogging=barbell-row',
    'import table.csv --columns date=Day',
    'gear --kit ""',
    'settings theme',
    'demo --data here',
  ],
  'own-table': [
    'import table.csv --dry-run',
    'import table.csv --take',
    'import table.csv --take',
    'import readings.csv',
    'import readings.csv --doubtful',
    'import readings.csv',
    'history',
    'export --as csv',
    'export --as csv --weigh-ins',
    'export --as ics',
    'export --as pdf',
    'import nothing.csv',
  ],
};

const FILES: Readonly<Record<string, string>> = {
  'table.csv': `Date,Movement,Weight,Reps,RPE
2026-11-16,Back squat,100,5,8
2026-11-16,Back squat,100,5,8.5
2026-11-16,Bench press,70,8,
2026-11-18,Back squat,102.5,5,9
2026-11-18,Juggling,10,5,9
`,
  'readings.csv': `date,body_mass,unit
2026-11-10,82.5,kg
2026-11-11,62.5,kg
2026-11-12,82.3,kg
2026-11-13,102.4,kg
2026-11-14,82.2,kg
2026-11-19,71,kg
`,
};

const words = (line: string): string[] =>
  [...line.matchAll(/"([^"]*)"|\S+/g)].map(([all, quoted]) => quoted ?? all);

async function printed(home: AHome, line: string): Promise<string> {
  const { status, out, err } = await home.run(...words(line));
  const told = [
    `$ holdfast ${line}`.trimEnd(),
    out,
    err && `(beside it) ${err}`,
    `(ends with ${status})`,
  ];
  return (
    told
      .filter(Boolean)
      .map((text) => text.trimEnd())
      .join('\n')
      .replaceAll(home.folder, '~')
      .replaceAll(ROOT, '(holdfast)')
      // A table's lines end as its standard says; in the file kept that could not be seen.
      .replaceAll('\r\n', '\n')
      // Chance makes ids, and a clock that every look moves on the stamps of a calendar.
      .replace(/(amend | {2})[0-9a-z]+:(\d+)\b/g, '$1(id):$2')
      .replace(/DTSTAMP:\w+/g, 'DTSTAMP:(now)')
  );
}

async function inTurn(home: AHome, lines: readonly string[]): Promise<string> {
  const texts: string[] = [];
  for (const line of lines) texts.push(await printed(home, line));
  return `${texts.join('\n\n')}\n`;
}

const lived = new AHome();
const fresh = new AHome();
const homes = [lived, fresh];
beforeAll(() => withDemoWeeks(lived));
afterAll(() => {
  for (const home of homes) home.throwAway();
});

test.each(Object.entries(READING))('%s prints what is kept', async (name, all) => {
  const lines = all.map((line) => `${name} ${line}`.trimEnd());
  const namesPaths = NAMES_PATHS.has(name);
  // Wide enough that no path is broken, however long it is on this machine.
  lived.columns = namesPaths ? 400 : 80;
  fresh.columns = lived.columns;
  const wide = await inTurn(lived, lines);
  const empty = await inTurn(fresh, lines.slice(0, 1));
  lived.columns = 44;
  const narrow = namesPaths ? '' : await inTurn(lived, lines.slice(0, 1));
  const whole = `${wide}\nIn 44 columns\n\n${narrow}\nIn a new home\n\n${empty}`;
  // Where a line with a path breaks depends on how long that is.
  const kept = namesPaths ? whole.replace(/\n {2,}/g, ' ') : whole;
  await expect(kept).toMatchFileSnapshot(`printed/${name}.txt`);
});

test.each(Object.entries(KEEPING))(
  '%s: what is kept, and what is said to it',
  async (name, lines) => {
    const home = new AHome();
    homes.push(home);
    home.writeSettings({ cautions: 'read', weightAdvice: 'yes' });
    for (const [file, text] of Object.entries(FILES)) writeFileSync(join(home.folder, file), text);
    await expect(await inTurn(home, lines)).toMatchFileSnapshot(`printed/${name}.txt`);
  },
);
