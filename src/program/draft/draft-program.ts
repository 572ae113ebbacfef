import type { Reason } from '../../training/rule.ts';
import { CATALOGUE } from '../catalogue.ts';
import { checkProgram, type Finding } from '../check/check-program.ts';
import { fileProblemText } from '../file-problem.ts';
import type { Program } from '../program.ts';
import { readProgram } from '../read-program.ts';
import { draftReason } from './draft-rules.ts';
import { chosenReasons } from './explain-draft.ts';
import { type FoundPlan, findPlan } from './find-plan.ts';
import { givenUpReasons } from './given-up.ts';
import { redraft } from './redraft.ts';
import type { Wishes } from './wishes.ts';
import { writeDraft } from './write-draft.ts';

/** A program worked out from wishes, with the reasons for it. */
export interface Draft {
  /** The file, as it may be written to disk. */
  readonly text: string;
  /** The same, read back. */
  readonly program: Program;
  /** What the check says of it. */
  readonly findings: readonly Finding[];
  readonly chosen: readonly Reason[];
  /** What of the wishes and rules could not be kept; the last says what stands in each other's way. */
  readonly givenUp: readonly Reason[];
}

/** Plans looked at for the draft, and for each answer to what would have been enough. */
const EFFORT = { draft: 80_000, enough: 6_000 } as const;

/**
 * A program that comes as near to the wishes as the rules of a good program, the gear and the time
 * allow. The same wishes give the same program.
 */
export function draftProgram(wishes: Wishes): Draft {
  const lifts = wishes.from?.program.lifts ?? CATALOGUE;
  const found = findPlan(wishes, lifts, EFFORT.draft);
  const text = textOf(found, wishes);
  const read = readProgram(text, wishes.name);
  if (!read.ok) {
    throw new Error(`A draft cannot be read: ${read.problems.map(fileProblemText).join('; ')}`);
  }
  const { program } = read;
  const givenUp = givenUpReasons(program, wishes, found, lifts);
  return {
    text,
    program,
    findings: checkProgram(program, wishes.gear),
    chosen: chosenReasons(program, wishes, found),
    givenUp: [...givenUp, ...conflict(wishes, givenUp, found, lifts)],
  };
}

function textOf({ plan, pace }: FoundPlan, wishes: Wishes): string {
  if (wishes.from) return redraft(plan, wishes.from, wishes);
  const said = [
    `Drafted for ${wishes.days} days a week of at most ${wishes.minutes} minutes. The days are done one after`,
    wishes.days < 4
      ? 'the other, with a day of rest between them (Monday, Wednesday and Friday, for example).'
      : 'the other, at most two of them running (Monday, Tuesday, Thursday and Friday, for example).',
  ];
  return writeDraft(plan, pace, wishes, said);
}

/** What stands in the way where time is the matter, and how many minutes would have been enough. */
function conflict(
  wishes: Wishes,
  givenUp: readonly Reason[],
  { score, pace }: FoundPlan,
  lifts: Parameters<typeof findPlan>[1],
): readonly Reason[] {
  const isShort = givenUp.some(
    ({ rule, facts }) =>
      facts.cause === 'time' || rule === 'draft-focus-low' || rule === 'draft-minor-low',
  );
  if (!isShort) return [];
  const { days, minutes } = wishes;
  const enough =
    MORE_MINUTES.find((more) => {
      if (more <= minutes) return false;
      const other = findPlan({ ...wishes, minutes: more }, lifts, EFFORT.enough, [pace]);
      return other.score < GOOD;
    }) ?? null;
  const more = enough === null && days < 4 && score >= GOOD;
  if (enough === null && !more) return [];
  return [draftReason('draft-conflict', { days, minutes, enough, more })];
}

const MORE_MINUTES = [30, 45, 60, 75] as const;
/** The score of a plan that lacks nothing that is told. */
const GOOD = 40;
