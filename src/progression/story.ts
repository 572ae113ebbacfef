import type { Mass } from '../training/mass.ts';
import { type Bout, reserveOfSet } from './bout.ts';
import { LIMITS } from './limits.ts';

const PAIN: ReadonlySet<string> = new Set(['pain-asked', 'pain-twice', 'pain-lighter']);

/** Sessions in a row at one load. */
interface Run {
  readonly load: Mass;
  readonly bouts: Bout[];
}

/** What led a track to its present load. */
export interface Story {
  /** The latest sessions in a row at the present load, oldest first. */
  readonly run: readonly Bout[];
  /** The load before this one, where this one is heavier; null otherwise. */
  readonly cameFrom: Mass | null;
  /** Did any first set of this run reach the low end of the range? */
  readonly reached: boolean;
  /** How often in a row the next load was tried from here and given up. */
  readonly failedTries: number;
  /** The load that was given up last, where `failedTries` is not 0. */
  readonly failedLoad: Mass | null;
  /** `failedTries` as it will be after going back from this load to the one before. */
  readonly triesAfterBack: number;
  /** After a layoff or pain: the load to get back to; null when it is reached. */
  readonly goal: Mass | null;
  /** Sessions done since a step too large for the range; null when there was none. */
  readonly sinceLanding: number | null;
}

/** Reads the sessions of a track, oldest first and at least one, in order. `low` is the range's low end. */
export function storyOf(bouts: readonly Bout[], low: number): Story {
  const runs = runsOf(bouts);
  const run = runs.at(-1)?.bouts ?? [];
  const load = run[0]?.load;
  const before = runs.at(-2)?.load;
  const tries = failedTries(runs, low);
  return {
    run,
    cameFrom: load !== undefined && before !== undefined && before < load ? before : null,
    reached: reached(run, low),
    failedTries: tries,
    failedLoad: tries > 0 ? (before ?? null) : null,
    triesAfterBack: failedTries(runs.slice(0, -1), low) + 1,
    goal: goalOf(bouts),
    sinceLanding: landed(run) ? run.length : null,
  };
}

function runsOf(bouts: readonly Bout[]): readonly Run[] {
  const runs: Run[] = [];
  for (const bout of bouts) {
    const run = runs.at(-1);
    if (run && run.load === bout.load) run.bouts.push(bout);
    else runs.push({ load: bout.load, bouts: [bout] });
  }
  return runs;
}

function reached(run: readonly Bout[], low: number): boolean {
  const line = landed(run) ? landingLow(low) : low;
  return run.some(({ sets }) => (sets[0]?.count ?? 0) >= line);
}

function landed(run: readonly Bout[]): boolean {
  return run[0]?.result.exercise.why.some(({ rule }) => rule === 'up-big-step') ?? false;
}

/** The low end of the range for a while after a step that was too large for it. */
export const landingLow = (low: number): number => Math.ceil(low * LIMITS.landingShare);

/**
 * L, heavier, L, heavier, L … with the heavier load given up each time, the first load of all
 * included. A load that was kept for long and eased once is bad luck, and no try.
 */
function failedTries(runs: readonly Run[], low: number): number {
  const load = runs.at(-1)?.load;
  const givenUp: Run[] = [];
  for (let at = runs.length - 1; at >= 1; at -= 2) {
    const [heavier, next] = [runs[at - 1], runs[at]];
    if (load === undefined || !heavier || next?.load !== load || heavier.load <= load) break;
    if (!isGivenUp(heavier, next, low)) break;
    givenUp.push(heavier);
  }
  const [only] = givenUp;
  const badLuck =
    givenUp.length === 1 &&
    only !== undefined &&
    reached(only.bouts, low) &&
    only.bouts.length > LIMITS.shortTry;
  return badLuck ? 0 : givenUp.length;
}

/**
 * How many more reps (seconds) than the high end set 1 is to reach before the next load is tried
 * again after so many tries: 1, 3, 6 … for reps. Ours.
 */
export const spareAfter = (tries: number, timed: boolean): number =>
  ((tries * (tries + 1)) / 2) * (timed ? LIMITS.secondsPerRep : 1);

/**
 * The low end was never reached at a load, or it was eased again after sets that fell short: others of
 * its day, pain or other gear may have eased it, too.
 */
function isGivenUp({ bouts }: Run, next: Run, low: number): boolean {
  const isEased = next.bouts[0]?.result.exercise.move === 'ease';
  return !reached(bouts, low) || (isEased && !wentAsPlanned(bouts, low));
}

/** In the last of these sessions each set reached the low end, and left what was wanted. */
function wentAsPlanned(bouts: readonly Bout[], low: number): boolean {
  const last = bouts.at(-1);
  const line = landed(bouts) ? landingLow(low) : low;
  return (
    last?.sets.every(
      (set) => set.count >= line && reserveOfSet(set, last) >= last.result.exercise.reserve[0],
    ) ?? false
  );
}

/** Follows returns: each sets the load before it as the goal; reaching it, or easing after misses, ends it. */
function goalOf(bouts: readonly Bout[]): Mass | null {
  let goal: Mass | null = null;
  let previous: Mass | null = null;
  for (const { load, result } of bouts) {
    const { move, why } = result.exercise;
    const forPain = why.some(({ rule }) => PAIN.has(rule));
    if ((move === 'return' || forPain) && previous !== null) {
      goal = goal === null || previous > goal ? previous : goal;
    } else if (move === 'ease' || move === 'start') {
      goal = null;
    }
    if (goal !== null && load >= goal) goal = null;
    previous = load;
  }
  return goal;
}
