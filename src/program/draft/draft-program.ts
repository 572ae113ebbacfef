import type { Lift } from '../../training/lift.ts';
import type { Reason } from '../../training/rule.ts';
import { CATALOGUE } from '../catalogue.ts';
import { checkProgram, type Finding } from '../check/check-program.ts';
import { fileProblemText } from '../file-problem.ts';
import type { Program } from '../program.ts';
import { readProgram } from '../read-program.ts';
import { PACES, type Pace } from './draft-limits.ts';
import { chosenReasons } from './explain-draft.ts';
import { givenUp, givenUpReasons, type Lost } from './given-up.ts';
import { planDays } from './plan-days.ts';
import { redraft } from './redraft.ts';
import type { DayPlans } from './room-in-week.ts';
import { LARGE } from './skeleton.ts';
import type { Wishes } from './wishes.ts';
import { SPACING, writeDraft } from './write-draft.ts';

/** A program worked out from wishes, with the reasons for it. */
export interface Draft {
  /** The file, as it may be written to disk. */
  readonly text: string;
  /** The same, read back. */
  readonly program: Program;
  /** What the check says of it. */
  readonly findings: readonly Finding[];
  readonly chosen: readonly Reason[];
  /** What of the wishes and rules could not be kept, each with its cause. */
  readonly givenUp: readonly Reason[];
  /** The same as data. */
  readonly lost: readonly Lost[];
}

/**
 * A program that comes as near to the wishes as the rules of a good program, the gear and the time
 * allow. The same wishes give the same program.
 */
export function draftProgram(wishes: Wishes): Draft {
  const lifts = wishes.from?.program.lifts ?? CATALOGUE;
  const { plan, pace, lost } = roomiest(wishes, lifts);
  const text = wishes.from
    ? redraft(plan, wishes.from, wishes)
    : writeDraft(plan, pace, wishes, introduction(wishes));
  const read = readProgram(text, wishes.name);
  if (!read.ok) {
    throw new Error(`A draft cannot be read: ${read.problems.map(fileProblemText).join('; ')}`);
  }
  const { program } = read;
  return {
    text,
    program,
    findings: checkProgram(program, wishes.gear),
    chosen: chosenReasons(program, wishes, pace),
    givenUp: givenUpReasons(lost, plan, wishes, lifts, pace),
    lost,
  };
}

/** The plan that gives up least; of several the one with the longest rests. */
function roomiest(
  wishes: Wishes,
  lifts: ReadonlyMap<string, Lift>,
): { readonly plan: DayPlans; readonly pace: Pace; readonly lost: readonly Lost[] } {
  // A program before pairs its exercises as its lifter wrote it.
  const plans = PACES.filter(({ pairs }) => !pairs || !wishes.from).map((usual) => {
    const pace = wishes.from ? { ...usual, between: wishes.from.program.restBetween } : usual;
    const plan = planDays(wishes, lifts, pace);
    return { plan, pace, lost: givenUp(plan, wishes, lifts, pace) };
  });
  const least = Math.min(...plans.map(({ lost }) => weightOf(lost)));
  return plans.find(({ lost }) => weightOf(lost) === least)!;
}

const weightOf = (lost: readonly Lost[]): number =>
  lost.reduce((sum, { what, facts: { muscle, low, sets } }) => {
    const share = what === 'sets' ? (Number(low) - Number(sets)) / Number(low) : 1;
    return sum + WEIGHT[what] * share * (LARGE.some((large) => large === muscle) ? 2 : 1);
  }, 0);

/** Sets weigh by the share of them that is missing, large muscles twice. */
const WEIGHT: Readonly<Record<Lost['what'], number>> = { movement: 4, direct: 2, sets: 1 };

const introduction = ({ days, minutes }: Wishes): readonly string[] => [
  `Drafted for ${days} days a week of at most ${minutes} minutes. The days are done one after`,
  `the other, ${SPACING[days]}.`,
];
