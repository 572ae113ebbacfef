import { adviceOn, DRAFT_NAMES, recentBests, writeNewProgram } from '../lifter/drafting.ts';
import { keepGear } from '../lifter/gear.ts';
import { type Lifter, openLifter } from '../lifter/open-lifter.ts';
import { toRemember } from '../lifter/program-choice.ts';
import { reasonWords } from '../lifter/rules.ts';
import { programFigures } from '../program/check/figures.ts';
import { doneText } from '../program/done-text.ts';
import { type Draft, draftProgram } from '../program/draft/draft-program.ts';
import type { Before, Best, Wishes } from '../program/draft/wishes.ts';
import type { Program } from '../program/program.ts';
import { wrapped } from '../text/columns.ts';
import { andText } from '../text/words.ts';
import type { Gear } from '../training/gear.ts';
import { partnersIn } from '../training/pairing.ts';
import type { Reason } from '../training/rule.ts';
import { askYesNo, isAttended } from './ask-yes-no.ts';
import type { Call, Run } from './call.ts';
import { type AnswersInHand, KNOWN_LIFTS, readAnswer } from './draft-answers.ts';
import { draftPath, programBefore } from './draft-file.ts';
import { askForDraft } from './draft-questions.ts';
import { textSize } from './text-size.ts';

/** Options that answer a question; any of them given, nothing is asked. */
const ANSWERS = [
  'kit',
  'days',
  'minutes',
  'like',
  'without',
  'hurts',
  'focus',
  'best',
  'aim',
  'unit',
  'name',
];

/** Works out a program from what the lifter wishes, writes it down, and says why it is so. */
export const run: Run = async (call) => {
  const lifter = openLifter(call.ports, call.global);
  const from = programBefore(call);
  const reading: AnswersInHand = {
    lifts: from?.program.lifts ?? KNOWN_LIFTS,
    unit: unitOf(call, lifter, from),
  };
  const answered = await answersOf(call, reading, lifter, from);
  if (from && reading.unit !== from.program.unit) {
    call.tell(
      `The program keeps its ${from.program.unit}; --unit is for what is typed here and for a kit.`,
    );
  }
  if (answered.kit !== undefined && call.options.print !== true) {
    await keepKit(readAnswer.kit(answered.kit).gear(reading.unit), lifter);
  }
  const wishes = wishesOf(answered, reading, lifter, from);
  const path = call.options.print === true ? null : draftPath(call, lifter, wishes.name);
  const draft = draftProgram(wishes);
  const { width } = textSize(call.ports);
  const why = explanation(draft, wishes, width);
  if (path === null) {
    call.write(draft.text.replace(/\n$/, ''));
    for (const line of why) call.tell(line);
    return 0;
  }
  writeNewProgram(path, draft.text, call.ports);
  const plan = planLines(draft.program, width);
  call.print([...plan, '', ...why, '', `Written to ${path}.`].join('\n'));
  const isUsed =
    call.options.use === true ||
    (isAsked(call) && (await askYesNo(call, 'Use it from now on, yes or no?', 'yes')));
  if (isUsed) {
    const { writeSettings } = await import('../settings/write-settings.ts');
    const { folders } = lifter;
    writeSettings(folders.config, toRemember(path, lifter.settings().settings, folders));
    call.print('It is the program in use now.');
  } else {
    call.print(`Use it with: holdfast --program ${JSON.stringify(path)}`);
  }
  return 0;
};

/** Are the questions asked: somebody is there, and none is answered by an option? */
const isAsked = (call: Call): boolean =>
  ANSWERS.every((option) => call.options[option] === undefined) && isAttended(call);

type Answered = Readonly<Record<string, string>>;

function unitOf({ options }: Call, lifter: Lifter, from: Before | null) {
  if (typeof options.unit === 'string') return readAnswer.unit(options.unit);
  return from?.program.unit ?? lifter.gear().unit;
}

/** What was typed, or what is asked for where there is a terminal and nothing was typed. */
async function answersOf(
  call: Call,
  reading: AnswersInHand,
  lifter: Lifter,
  from: Before | null,
): Promise<Answered> {
  const typed = Object.fromEntries(
    ANSWERS.flatMap((option) => {
      const found = call.options[option];
      return found === undefined ? [] : [[option, [found].flat().map(String).join(',')]];
    }),
  );
  if (!isAsked(call)) return typed;
  const usual = from
    ? { days: String(daysOf(from)), aim: from.program.aim }
    : ({} as Record<string, string>);
  // What is known already is not asked again.
  const isKnown = (option: string) => option === 'kit' && isGearSaid(lifter);
  const check = (option: string, answer: string) => void READ[option]?.(answer, reading);
  return askForDraft(call, usual, check, isKnown);
}

const isGearSaid = (lifter: Lifter): boolean =>
  lifter.journal().history().gear !== null || lifter.settings().settings.gear !== null;

const READ: Readonly<Record<string, (text: string, reading: AnswersInHand) => unknown>> = {
  kit: readAnswer.kit,
  days: readAnswer.days,
  minutes: readAnswer.minutes,
  aim: readAnswer.aim,
  like: readAnswer.lifts,
  without: readAnswer.lifts,
  hurts: readAnswer.joints,
  focus: readAnswer.muscles,
  best: readAnswer.bests,
};

function wishesOf(
  answered: Answered,
  reading: AnswersInHand,
  lifter: Lifter,
  from: Before | null,
): Wishes {
  const { kit, days, minutes, aim, name, like, without, hurts, focus, best } = answered;
  const wished = days === undefined ? (from ? daysOf(from) : 3) : readAnswer.days(days);
  return {
    name: name === undefined ? nameFor(wished, from) : readAnswer.name(name),
    days: wished,
    minutes: minutes === undefined ? 60 : readAnswer.minutes(minutes),
    gear: kit === undefined ? lifter.gear() : readAnswer.kit(kit).gear(reading.unit),
    like: readAnswer.lifts(like ?? '', reading),
    without: readAnswer.lifts(without ?? '', reading),
    hurts: readAnswer.joints(hurts ?? ''),
    focus: readAnswer.muscles(focus ?? ''),
    bests: withHistory(readAnswer.bests(best ?? '', reading), lifter),
    unit: from?.program.unit ?? reading.unit,
    aim: aim === undefined ? (from?.program.aim ?? 'cut') : readAnswer.aim(aim),
    bodyMass: lifter.journal().history().bodyMassOn(lifter.today()),
    from,
  };
}

/** Laid out over another number of days a program is another one. */
const nameFor = (days: Wishes['days'], from: Before | null): string =>
  from?.program.days.length === days ? from.program.name : DRAFT_NAMES[days];

/** Gear of a kit is what the lifter owns from now on. */
async function keepKit(gear: Gear, lifter: Lifter): Promise<void> {
  const { writeSettings } = await import('../settings/write-settings.ts');
  keepGear(lifter, gear, (change) => writeSettings(lifter.folders.config, change));
}

/** What was told, and of other lifts the strongest set of the last eight weeks. */
function withHistory(told: readonly Best[], lifter: Lifter): readonly Best[] {
  const bests = recentBests(lifter.journal().history().lately, lifter.today());
  return [...told, ...bests.filter(({ lift }) => !told.some((best) => best.lift === lift))];
}

const daysOf = ({ program: { daysPerWeek } }: Before): Wishes['days'] =>
  daysPerWeek <= 2 ? 2 : daysPerWeek === 3 ? 3 : 4;

/** The program day by day, as on paper. */
function planLines(program: Program, width: number): string[] {
  const { days } = programFigures(program);
  return [
    program.name,
    ...days.flatMap(({ name, exercises, minutes }) => [
      '',
      `${name} · ${minutes} min`,
      ...exercises.flatMap((one) => {
        const partners = partnersIn(exercises, one).map(({ lift }) => lift.name);
        const turn = partners.length > 0 ? `, in turn with ${andText(partners)}` : '';
        return wrapped(`${one.lift.name}: ${doneText(one)}${turn}`, width - 2, '  ').map(
          (line) => `  ${line}`,
        );
      }),
    ]),
  ];
}

function explanation(draft: Draft, wishes: Wishes, width: number): string[] {
  const told = (reasons: readonly Reason[]) =>
    reasons.flatMap((reason) => wrapped(`- ${reasonWords(reason, wishes.unit).text}`, width, '  '));
  const findings = adviceOn(draft, wishes.gear);
  return [
    'Chosen:',
    ...told(draft.chosen),
    ...(draft.givenUp.length > 0 ? ['', 'Given up:', ...told(draft.givenUp)] : []),
    '',
    ...(findings.length === 0
      ? [
          draft.lost.length > 0
            ? 'Of what is not given up the check finds nothing to better.'
            : 'The check finds nothing to better.',
        ]
      : [
          'The check says:',
          ...findings.flatMap(({ text, fix }) => wrapped(`- ${text} ${fix}`, width, '  ')),
        ]),
  ];
}
