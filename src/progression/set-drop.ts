import { Temporal } from 'temporal-polyfill';
import type { Plan } from '../program/program.ts';
import { type Bout, boutOf, resultsOfLift } from './bout.ts';
import { LIMITS } from './limits.ts';
import type { Past } from './past.ts';
import { slipOf } from './slipping.ts';

/** Whether a track does one set fewer than the program says. Worked out from the results each time. */
export type SetDrop =
  | { readonly kind: 'none' }
  /** Slipping in a cut: one set fewer from today. */
  | { readonly kind: 'begins' }
  | { readonly kind: 'stays' }
  /** Three steady sessions, or no cut any more: the set comes back. */
  | { readonly kind: 'ends' };

export interface DropQuestion {
  readonly program: Plan;
  readonly past: Past;
  readonly today: Temporal.PlainDate;
  readonly bouts: readonly Bout[];
  /** What the program asks for. */
  readonly setsPlanned: number;
  /** Low end of the range. */
  readonly low: number;
  readonly slipping: boolean;
  /** Can a set go: see {@link maySpareSet}. */
  readonly spare: boolean;
  /** The lifter said no to it: see {@link dropRefused}. */
  readonly refused: boolean;
}

/** One set fewer, never more: drops do not stack, and a lift loses at most one set in 14 days. */
export function setDropOf(question: DropQuestion): SetDrop {
  const { program, bouts, setsPlanned, slipping, spare, refused } = question;
  const last = bouts.at(-1);
  if (last && hasDrop(last, setsPlanned)) {
    return program.aim !== 'cut' || refused || isSteady(question)
      ? { kind: 'ends' }
      : { kind: 'stays' };
  }
  return program.aim === 'cut' && slipping && spare ? { kind: 'begins' } : { kind: 'none' };
}

/** What the review says of a dropped set, and the lifter says yes or no to. */
const DO_LESS = 'do-less';

/** Did the lifter say no to a set fewer of this track within three weeks, and not yes since? */
export function dropRefused(
  { decisions }: Pick<Past, 'decisions'>,
  track: string,
  today: Temporal.PlainDate,
): boolean {
  const since = today.subtract({ days: LIMITS.dropRefusedDays });
  const said = decisions.findLast(
    ({ rule, subject, date }) =>
      rule === DO_LESS && subject === track && Temporal.PlainDate.compare(date, since) > 0,
  );
  return said?.answer === 'no';
}

/** Was a set of this session dropped from so many? A changed program ends the drop. */
export function hasDrop({ result }: Bout, setsPlanned: number): boolean {
  const { exercise } = result;
  return (
    exercise.setsPlanned === setsPlanned &&
    exercise.why.some(({ rule }) => rule === 'one-set-fewer')
  );
}

/** Did a drop of this lift begin in the last 14 days, in any of its tracks? */
export function droppedLately(past: Past, lift: string, today: Temporal.PlainDate): boolean {
  const since = today.subtract({ days: LIMITS.dropEveryDays });
  const lately = new Map<string, boolean>();
  for (const result of resultsOfLift(past, lift)) {
    const bout = result.lighter ? null : boutOf(result);
    if (!bout) continue;
    const { track, setsPlanned } = result.exercise;
    const dropped = hasDrop(bout, setsPlanned);
    const began = dropped && !lately.get(track);
    lately.set(track, dropped);
    if (began && Temporal.PlainDate.compare(result.date, since) > 0) return true;
  }
  return false;
}

/** The last three sessions were all done with the set dropped, did not slip and reached the low end. */
function isSteady({ bouts, past, setsPlanned, low }: DropQuestion): boolean {
  const latest = bouts.slice(-LIMITS.steadySessions);
  return (
    latest.length === LIMITS.steadySessions &&
    latest.every((bout) => {
      return (
        hasDrop(bout, setsPlanned) &&
        (bout.sets[0]?.count ?? 0) >= low &&
        slipOf(past, bout.result.exercise.lift, bout.result.date) === null
      );
    })
  );
}
