import { copyFileSync, existsSync, mkdirSync } from 'node:fs';
import { dirname, join } from 'node:path';
import type { Temporal } from 'temporal-polyfill';
import { pauseOn } from '../cut/aim-in-force.ts';
import { CHECK_LIMITS } from '../program/check/check-limits.ts';
import { type ProgramFigures, programFigures } from '../program/check/figures.ts';
import { type Draft, draftProgram } from '../program/draft/draft-program.ts';
import type { Best, Wishes } from '../program/draft/wishes.ts';
import type { Program } from '../program/program.ts';
import { writeWholeFile } from '../program/write-file.ts';
import type { Past } from '../progression/past.ts';
import type { Answers } from '../settings/answers-schema.ts';
import { diskSentence } from '../text/disk-words.ts';
import { lastOf } from '../text/once.ts';
import { orProblem, type Problem, Refusal } from '../text/problem.ts';
import { keyWords } from '../text/words.ts';
import { countedReserve } from '../training/effort.ts';
import type { Gear } from '../training/gear.ts';
import { KITS } from '../training/kits.ts';
import type { Lift, Loading } from '../training/lift.ts';
import type { Mass, Unit } from '../training/mass.ts';
import type { Reason } from '../training/rule.ts';
import { CURVE, oneRepMax } from '../training/strength.ts';
import { keepGear } from './gear.ts';
import type { Lifter } from './open-lifter.ts';
import type { Ports, SettingsKeeper } from './ports.ts';
import { programsFolder, toRemember } from './program-choice.ts';
import { type FindingWords, findingsOf, reasonWords } from './rules.ts';

/** A program as the answers make it, ready to be looked at. Nothing of it is written. */
export interface Drafted {
  readonly text: string;
  readonly program: Program;
  readonly figures: ProgramFigures;
  /** Hard sets a week, fewest and most, by the aim. */
  readonly band: readonly [low: number, high: number];
  readonly chosen: readonly string[];
  readonly givenUp: readonly string[];
  /** What the check would better, with what to do. */
  readonly advice: readonly string[];
  /** Lifts whose first load a recent best would give. */
  readonly lifts: readonly Lift[];
  /** The bests that it was made with: those told, then those of the sessions. */
  readonly bests: readonly Best[];
}

/** The questions that a new program comes from. Only `keep` and `take` write. */
export interface Drafting {
  /** What the lifter is asked before the first session; null once there is a program of their own. */
  readonly first: () => Answers | null;
  /** For another program later: where the questions were left, else from their start. */
  readonly again: () => Answers;
  /** Does the lifter's gear need no question? */
  readonly isGearKnown: () => boolean;
  readonly draft: (answers: Answers) => Drafted;
  /** Remembers where the questions stand; null forgets them. */
  readonly keep: (answers: Answers | null) => Problem | null;
  /** Writes the program and the gear, and makes it the program in use. */
  readonly take: (answers: Answers) => Problem | null;
  readonly keepGear: (gear: Answers['gear']) => Problem | null;
}

/** Of these nobody knows a best by its load. */
const NO_BEST: ReadonlySet<Loading> = new Set(['bodyweight', 'band']);

/** Lifts that are asked for a best: the main ones. */
const MOST_LIFTS = 6;

export function openDrafting(lifter: Lifter, settings: SettingsKeeper): Drafting {
  const isGearKnown = () =>
    lifter.journal().history().gear !== null || settings.now().gear !== null;
  /** A cut that has ended is followed by a program that keeps what it left. */
  const endedCut = () =>
    pauseOn(lifter.journal().history().decisions, lifter.today())?.until === null;
  const begun = (): Answers => {
    const isKnown = isGearKnown();
    const unit = isKnown ? lifter.gear().unit : usualUnit(lifter.ports.env);
    const kit = KITS.length - 1;
    return {
      at: isKnown ? 'aim' : 'unit',
      unit,
      kit,
      gear: isKnown ? lifter.gear() : KITS[kit]!.gear(unit),
      aim: endedCut() ? 'maintain' : 'cut',
      days: 3,
      minutes: 60,
      hurts: [],
      focus: [],
      bests: [],
    };
  };
  /** Gear may have been changed since, at another place. */
  const left = (): Answers | null => {
    const { answers } = settings.now();
    return answers && isGearKnown() ? { ...answers, gear: lifter.gear() } : answers;
  };
  const draft = lastOf((answers: Answers) => draftedFrom(wishesOf(answers, lifter)));
  const keepGearOf = (gear: Answers['gear']) =>
    orProblem(() => keepGear(lifter, gear, settings.keep));
  return {
    first: () => (lifter.hasOwnProgram() ? null : (left() ?? begun())),
    again: () => left() ?? begun(),
    isGearKnown,
    draft,
    keep: (answers) =>
      orProblem(() => {
        settings.keep({ answers });
        return null;
      }),
    keepGear: keepGearOf,
    take: (answers) =>
      orProblem(() => {
        const { text, program } = draft(answers);
        const path = pathOf(program.name, lifter);
        if (!isGearKnown() || !isSame(answers.gear, lifter.gear())) {
          keepGear(lifter, answers.gear, settings.keep);
        }
        writeNewProgram(path, text, lifter.ports);
        const { folders } = lifter;
        settings.keep({ ...toRemember(path, settings.now(), folders), answers: null });
        lifter.takeProgram(path);
        return null;
      }),
  };
}

/** Gear is plain data, so that its text tells whether it is another. */
const isSame = (one: Answers['gear'], other: Answers['gear']): boolean =>
  JSON.stringify(one) === JSON.stringify(other);

const pathOf = (name: string, { folders }: Lifter): string =>
  join(programsFolder(folders.data), programFileName(name));

/** The first of `My three days`, `My three days 2`, … whose file is not there yet. */
function freeName({ days }: Answers, lifter: Lifter): string {
  for (let count = 1; ; count += 1) {
    const name = count === 1 ? DRAFT_NAMES[days] : `${DRAFT_NAMES[days]} ${count}`;
    if (!existsSync(pathOf(name, lifter))) return name;
  }
}

function wishesOf(answers: Answers, lifter: Lifter): Wishes {
  const { days, minutes, gear, hurts, focus, unit, aim } = answers;
  const history = lifter.journal().history();
  const told = answers.bests.map((best): Best => ({ ...best, load: best.load as Mass }));
  const seen = recentBests(history.lately, lifter.today());
  return {
    name: freeName(answers, lifter),
    days,
    minutes,
    gear,
    like: [],
    without: [],
    hurts,
    focus,
    bests: [...told, ...seen.filter(({ lift }) => !told.some((best) => best.lift === lift))],
    unit,
    aim,
    bodyMass: history.bodyMassOn(lifter.today()),
    from: null,
  };
}

/** What the check would better in a draft; what was given up for a cause is not asked for again. */
export function adviceOn({ program, lost }: Draft, gear: Gear): readonly FindingWords[] {
  const given = new Set(lost.map(({ facts }) => keyWords(String(facts.muscle))));
  const isGiven = ({ facts: { muscle, muscles, pattern } }: FindingWords): boolean => {
    // A movement that is nowhere stands among what was given up.
    if (pattern !== undefined) return true;
    const named = String(muscle ?? muscles ?? '').split(/, | and /);
    return named.every((each) => given.has(keyWords(each)));
  };
  return findingsOf(program, gear).filter((found) => found.accepted === null && !isGiven(found));
}

function draftedFrom(wishes: Wishes): Drafted {
  const draft = draftProgram(wishes);
  const { text, program, chosen, givenUp } = draft;
  const words = (reasons: readonly Reason[]) =>
    reasons.map((reason) => reasonWords(reason, wishes.unit).text);
  const lifts = program.days
    .flatMap(({ exercises }) => exercises.map(({ lift }) => lift))
    .filter(({ kind, loading }) => kind === 'compound' && !NO_BEST.has(loading));
  return {
    text,
    program,
    figures: programFigures(program),
    band: CHECK_LIMITS.weeklySets[wishes.aim],
    chosen: words(chosen),
    givenUp: words(givenUp),
    advice: adviceOn(draft, wishes.gear).map((finding) => `${finding.text} ${finding.fix}`),
    lifts: [...new Map(lifts.map((lift) => [lift.key, lift])).values()].slice(0, MOST_LIFTS),
    bests: wishes.bests,
  };
}

/** Countries that weigh in pounds, by the locale's measurement or language (POSIX; CLDR, from memory). */
const POUNDS = /^[a-z]{2,3}_(US|LR|MM)\b/;

function usualUnit({ LC_ALL, LC_MEASUREMENT, LANG }: Lifter['ports']['env']): Unit {
  return POUNDS.test(LC_ALL || LC_MEASUREMENT || LANG || '') ? 'lb' : 'kg';
}

/** Older results say little of what can be done now. Ours. */
const RECENT_DAYS = 56;

/** The strongest set of each lift in the last eight weeks, pain and lighter weeks left out. */
export function recentBests(
  { results }: Pick<Past, 'results'>,
  today: Temporal.PlainDate,
): readonly Best[] {
  const from = today.subtract({ days: RECENT_DAYS }).toString();
  const bests = new Map<string, { readonly best: Best; readonly max: number }>();
  for (const { exercise, sets, date, pain, lighter } of results) {
    if (pain || lighter || exercise.counts === 'seconds' || date.toString() < from) continue;
    for (const { load, count, reserve } of sets) {
      const toFailure = count + countedReserve(reserve ?? 0);
      if (count < 1 || toFailure > CURVE.servesTo) continue;
      // Of body weight lifts the load can be none or less: more of it is still the stronger.
      const max = load > 0 ? oneRepMax(load, toFailure) : load;
      if (max <= (bests.get(exercise.lift)?.max ?? Number.NEGATIVE_INFINITY)) continue;
      const best = { lift: exercise.lift, load, reps: count, reserve: reserve ?? 0 };
      bests.set(exercise.lift, { best, max });
    }
  }
  return [...bests.values()].map(({ best }) => best);
}

const SCHEMA = 'program.schema.json';

/** What a drafted program is called where its lifter names it nothing else. */
export const DRAFT_NAMES: Readonly<Record<Wishes['days'], string>> = {
  2: 'My two days',
  3: 'My three days',
  4: 'My four days',
};

/** The file that a program of this name lies in, without its folder: `my-three-days.yaml`. */
export const programFileName = (name: string): string =>
  `${
    name
      .toLowerCase()
      .normalize('NFKD')
      .replace(/[^a-z0-9]+/g, '-')
      .replace(/^-|-$/g, '') || 'program'
  }.yaml`;

/**
 * Writes a program, and beside it the schema by which editors complete it.
 * @throws Refusal when it cannot be written; then what lay there is as it was.
 */
export function writeNewProgram(
  path: string,
  text: string,
  { clock, shippedPrograms }: Pick<Ports, 'clock' | 'shippedPrograms'>,
): void {
  const folder = dirname(path);
  try {
    mkdirSync(folder, { recursive: true, mode: 0o700 });
    const schema = join(folder, SCHEMA);
    const shipped = join(shippedPrograms, SCHEMA);
    if (!existsSync(schema) && existsSync(shipped)) copyFileSync(shipped, schema);
  } catch (error) {
    throw new Refusal({
      what: `${folder} cannot be written to.`,
      why: diskSentence(error),
      fix: 'Mend that, or name another place: "holdfast draft --out FILE".',
    });
  }
  const problem = writeWholeFile(path, text, clock.read().wall.toString(36));
  if (problem) throw new Refusal(problem);
}
