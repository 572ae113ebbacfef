import { nearestKey } from '../text/nearest.ts';
import { WrongUse } from '../text/problem.ts';
import { safeText } from '../text/safe-text.ts';
import type { CommandRow, OptionRow } from './call.ts';
import { DRAFT_OPTIONS } from './draft-option-rows.ts';
import { GEAR_OPTIONS } from './gear-option-rows.ts';

const DAY: OptionRow = {
  flags: '--day <name>',
  does: 'a day of the program in place of the one due',
};

const KIT: OptionRow = {
  flags: '--kit <name>',
  does: 'with the gear of another place, today; "holdfast gear --kit NAME" keeps one',
};
const MINUTES: OptionRow = {
  flags: '--minutes <count>',
  does: 'the time there is: the best session that fits, and what was cut',
};

/** Options understood before and after every command. */
export const GLOBAL_OPTIONS: readonly OptionRow[] = [
  { flags: '--data <folder>', does: 'where training data lives (or HOLDFAST_DATA)' },
  {
    flags: '--program <file>',
    does: 'program file, or the name of a shipped one (or HOLDFAST_PROGRAM)',
  },
  { flags: '--json', does: 'print one JSON document' },
  { flags: '--quiet', does: 'only the answer, and what is wrong' },
  { flags: '--no-color', does: 'no colours (or NO_COLOR)' },
];

/** Every command. Help, completion and documents are made from this table. */
export const COMMANDS: readonly CommandRow[] = [
  {
    name: 'train',
    brief: 'run the session that is due',
    operands: '',
    does: 'runs the session that is due (also what bare holdfast does)',
    options: [DAY, MINUTES, KIT],
    examples: [
      'holdfast',
      'holdfast train --day B',
      'holdfast train --minutes 30',
      'holdfast --program try-out',
    ],
    load: () => import('./train.ts'),
  },
  {
    name: 'today',
    brief: 'loads, plates, aims, and why',
    operands: '',
    does: "prints today's prescription: loads, plates, aims, and why",
    options: [DAY, MINUTES, KIT],
    examples: ['holdfast today', 'holdfast today --minutes 30', 'holdfast today --day B --json'],
    load: () => import('./today.ts'),
  },
  {
    name: 'check',
    brief: 'what of a program fits',
    operands: '[file]',
    does: 'says what of a program fits its aim, and what does not; - reads stdin',
    options: [{ flags: '--strict', does: 'exit 1 on advice, too, that the file does not accept' }],
    examples: ['holdfast check', 'holdfast check four-day --strict'],
    load: () => import('./check.ts'),
  },
  {
    name: 'draft',
    brief: 'make a program with you',
    operands: '',
    does: 'makes a program with you, by questions or by options, and says why',
    options: DRAFT_OPTIONS,
    examples: [
      'holdfast draft',
      'holdfast draft --days 3 --minutes 60 --focus side-delts --use',
      'holdfast draft --best "back-squat=100kg for 5 leaving 2" --without deadlift --print',
      'holdfast draft --from three-day --days 4',
    ],
    noJson: 'A draft is a YAML file; "holdfast draft --print" writes it to stdout.',
    load: () => import('./draft.ts'),
  },
  {
    name: 'load',
    brief: 'what goes on the bar',
    operands: '<mass>',
    does: 'says what to put on the bar',
    options: [{ flags: '--bar <name>', does: 'a bar of your gear; the first one by default' }],
    examples: ['holdfast load 82.5', 'holdfast load 185lb --bar "short bar"'],
    load: () => import('./load.ts'),
  },
  {
    name: 'estimate',
    brief: 'one-repetition maximum',
    operands: '',
    does: 'estimates the one-repetition maximum, and loads for other reps',
    options: [
      { flags: '--load <mass>', does: 'what was lifted' },
      { flags: '--reps <count>', does: 'how often' },
      { flags: '--reserve <count>', does: 'how many more reps could have been done' },
    ],
    examples: ['holdfast estimate --load 100 --reps 5 --reserve 2'],
    load: () => import('./estimate.ts'),
  },
  {
    name: 'weigh',
    brief: 'record a weigh-in',
    operands: '[mass]',
    does: 'records a weigh-in and says what the trend makes of it',
    options: [
      {
        flags: '--waist <length>',
        does: 'the waist too, or alone: midway between the lowest rib and the top of the hip bone',
      },
      { flags: '--date <day>', does: 'the day weighed, as 2026-11-25; today by default' },
      { flags: '--unit <kg|lb>', does: "the program's unit by default" },
      { flags: '--sure', does: 'record a reading that looks like a slip of the finger' },
    ],
    examples: [
      'holdfast weigh 82.4',
      'holdfast weigh 181.6lb --date 2026-11-24',
      'holdfast weigh 82.4 --waist 86',
    ],
    load: () => import('./weigh.ts'),
  },
  {
    name: 'review',
    brief: 'review the cut',
    operands: '',
    does: 'reviews the cut: work done, strength kept, rate of loss, one verdict',
    options: [
      { flags: '--weeks <count>', does: 'calendar weeks to look back on; 4 by default' },
      { flags: '--why', does: 'also where each sentence comes from' },
    ],
    examples: ['holdfast review', 'holdfast review --weeks 12 --json'],
    load: () => import('./review.ts'),
  },
  {
    name: 'history',
    brief: 'results over time',
    operands: '[lift]',
    does: 'prints results over time, of one lift with a plot',
    options: [
      { flags: '--last <count>', does: 'only the newest so many results' },
      { flags: '--since <day>', does: 'only results from that day on' },
      { flags: '--search <words>', does: 'only what fits: lift, program, day, date, note' },
      { flags: '--ids', does: 'also the ids that amend takes' },
      { flags: '--deleted', does: 'what is deleted, with the ids that bring it back' },
    ],
    examples: [
      'holdfast history back-squat',
      'holdfast history --last 20',
      'holdfast history --search 2026-11',
    ],
    load: () => import('./history.ts'),
  },
  {
    name: 'export',
    brief: 'write everything out',
    operands: '',
    does: 'writes everything out, as a table, a document, a calendar or a page',
    options: [
      { flags: '--as <csv|json|ics|html>', does: 'the format' },
      { flags: '--weigh-ins', does: 'as csv: the weigh-ins in place of the sets' },
      { flags: '--waists', does: 'as csv: the waist readings in place of the sets' },
      { flags: '--out <file>', does: 'to a file; - is stdout, as without it' },
      { flags: '--replace', does: 'replace that file if it is there' },
    ],
    examples: [
      'holdfast export --as csv --out sets.csv',
      'holdfast export --as html --out cut.html',
    ],
    load: () => import('./export.ts'),
  },
  {
    name: 'import',
    brief: 'read results from a file',
    operands: '<file>',
    does: 'reads an exported file, or a table of your own, without doubles; - reads stdin',
    options: [
      { flags: '--dry-run', does: 'says what would be added, and writes nothing' },
      { flags: '--doubtful', does: 'takes unlikely weigh-ins too' },
      { flags: '--take', does: 'takes in a table of your own without asking' },
      {
        flags: '--columns <columns>',
        does: 'which column of it means what: "date=Day, lift=Movement, load=Weight, reps=Reps"',
      },
      { flags: '--lift <names...>', does: 'which lift a name in it is: "Bench=bench-press"' },
      { flags: '--dates <order>', does: 'day-first or month-first, where 3/4/2025 could be both' },
      { flags: '--unit <unit>', does: 'kg or lb, of loads without a unit' },
    ],
    examples: [
      'holdfast import history.json',
      'holdfast import years.csv --lift "Bench=bench-press"',
    ],
    load: () => import('./import.ts'),
  },
  {
    name: 'rehearse',
    brief: 'play a program forward',
    operands: '',
    does: 'plays the program forward with simulated lifters, week by week',
    options: [
      { flags: '--weeks <count>', does: 'how many weeks; 12 by default' },
      { flags: '--loss <percent>', does: 'body weight lost in a week; 0.7 in a cut, else 0' },
      { flags: '--minutes <count>', does: 'every session cut to so many minutes' },
      { flags: '--lifter <kind>', does: 'novice, trained (usual) or lean' },
      { flags: '--draws <count>', does: 'how many lifters of the kind are played; 10 by default' },
      { flags: '--compare <two...>', does: 'two programs, or two rates, side by side' },
      { flags: '--seed <number>', does: 'another run of luck; the same one gives the same' },
    ],
    examples: [
      'holdfast rehearse --weeks 12',
      'holdfast rehearse --minutes 30',
      'holdfast rehearse --loss 1 --program four-day',
      'holdfast rehearse --compare three-day four-day',
      'holdfast rehearse --compare 0.5 1.0 --lifter lean',
    ],
    load: () => import('./rehearse.ts'),
  },
  {
    name: 'gear',
    brief: 'what you own',
    operands: '',
    does: 'shows what you own, and changes it by options or in a form',
    options: [
      { flags: '--edit', does: 'open the form' },
      {
        flags: '--kit <name>',
        does: 'of another place, kept under a name: the other options say what it has, and do not change your own',
      },
      { flags: '--forget', does: 'with --kit: keep it no longer' },
      ...Object.values(GEAR_OPTIONS),
      { flags: '--new', does: 'a name that is near one you have is another thing all the same' },
      { flags: '--sure', does: 'with --defaults: what you said before may go' },
    ],
    examples: [
      'holdfast gear --plates "20kg=4, 10kg=2, 45lb=2"',
      'holdfast gear --bars "short bar=15kg" --collars "short bar=5kg"',
      'holdfast gear --edit',
    ],
    load: () => import('./gear.ts'),
  },
  {
    name: 'lifts',
    brief: 'find a lift',
    operands: '[words...]',
    does: 'finds lifts by name or muscle: what they train and need',
    options: [],
    examples: ['holdfast lifts', 'holdfast lifts row', 'holdfast lifts rear delts'],
    load: () => import('./lifts.ts'),
  },
  {
    name: 'help',
    brief: 'help for a command',
    operands: '[command]',
    does: 'shows help for a command',
    options: [],
    examples: ['holdfast help', 'holdfast help draft'],
    noJson: 'Help is for people; "holdfast schema" tells programs what each document holds.',
    load: () => import('./help.ts'),
  },
  {
    name: 'demo',
    brief: 'look around, nothing is kept',
    operands: '[command...]',
    does: 'opens everything, or runs one command, on twelve invented weeks',
    options: [],
    examples: [
      'holdfast demo',
      'holdfast demo review',
      'holdfast demo export --as html --out x.html',
    ],
    passesOn: true,
    load: () => import('./demo.ts'),
  },
  {
    name: 'settings',
    brief: 'settings of this machine',
    operands: '[name] [value]',
    does: 'shows the settings of this machine, or changes one',
    options: [],
    examples: ['holdfast settings', 'holdfast settings bell no'],
    load: () => import('./settings.ts'),
  },
  {
    name: 'amend',
    brief: 'correct or delete a set',
    operands: '<id>',
    does: 'corrects a set; deletes or brings back a set, session, weigh-in or waist reading',
    options: [
      { flags: '--load <mass>', does: 'the load that was lifted' },
      { flags: '--reps <count>', does: 'the reps that were done, or the seconds of a hold' },
      { flags: '--reserve <count>', does: 'reps left in reserve; none where it is not known' },
      { flags: '--delete', does: 'it never happened' },
      { flags: '--restore', does: 'brings back what was deleted' },
      { flags: '--dry-run', does: 'with --delete: says what would go, and deletes nothing' },
    ],
    examples: ['holdfast amend k3x9:12 --reps 7', 'holdfast history --ids'],
    load: () => import('./amend.ts'),
  },
  {
    name: 'doctor',
    brief: 'check and repair the files',
    operands: '',
    does: 'checks every data file, repairs what can be, and says what it did',
    options: [],
    examples: ['holdfast doctor'],
    load: () => import('./doctor.ts'),
  },
  {
    name: 'schema',
    brief: 'JSON Schemas of documents',
    operands: '<document>',
    does: 'prints the JSON Schema of a program, a journal line, or what a command prints',
    options: [{ flags: '--as <format>', does: 'json, or of programs text: a page to read' }],
    examples: ['holdfast schema program', 'holdfast schema today'],
    load: () => import('./schema.ts'),
  },
  {
    name: 'complete',
    brief: 'completion for your shell',
    operands: '[bash|zsh|fish]',
    does: 'prints what makes a shell complete these commands',
    options: [{ flags: '--words <lifts|days|programs>', does: 'words that the scripts ask for' }],
    examples: ['source <(holdfast complete bash)', 'holdfast complete fish | source'],
    noJson: 'What it prints is for a shell.',
    load: () => import('./complete.ts'),
  },
];

export function unknownCommand(found: string): WrongUse {
  const names = COMMANDS.map((row) => row.name);
  const near = nearestKey(found, names);
  return new WrongUse({
    what: `There is no command "${safeText(found)}".`,
    fix: near ? `Did you mean "${near}"?` : `Commands: ${names.join(', ')}.`,
  });
}
