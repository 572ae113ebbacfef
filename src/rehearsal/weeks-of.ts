import { median } from 'd3-array';
import type { Temporal } from 'temporal-polyfill';
import { hardSetsOf } from '../cut/set-credit.ts';
import type { Program } from '../program/program.ts';
import type { Result, SetResult } from '../progression/past.ts';
import type { Move } from '../progression/prescription.ts';
import type { Muscle } from '../training/lift.ts';
import type { Mass } from '../training/mass.ts';
import { weeklyVolume } from '../training/volume.ts';
import type { Rehearsal } from './rehearse.ts';

/** One track in one week. */
export interface RehearsedTrack {
  readonly track: string;
  readonly lift: string;
  readonly name: string;
  readonly kind: 'compound' | 'isolation';
  readonly exercise: Result['exercise'];
  /** Moves of the week's sessions in order. */
  readonly moves: readonly Move[];
  /** Of the week's last session. */
  readonly load: Mass;
  readonly sets: readonly SetResult[];
  /** True strength ÷ that at the start, mean of the week's days. */
  readonly kept: number;
}

/** Seven days of a rehearsal. */
export interface RehearsedWeek {
  /** From 1. */
  readonly week: number;
  readonly from: Temporal.PlainDate;
  readonly sessions: number;
  /** Mean of the week's sessions; null without one. */
  readonly minutes: number | null;
  /** On the week's last day with a session; null without one. */
  readonly bodyMass: Mass | null;
  readonly hardSets: ReadonlyMap<Muscle, number>;
  readonly tracks: readonly RehearsedTrack[];
  /** Median over the program's compound lifts (over all lifts where it has none) of what is truly kept. */
  readonly kept: number;
  /** Some of it was a lighter week. */
  readonly lighter: boolean;
}

/** A rehearsal of a program week by week, from its first day. */
export function weeksOf(
  program: Program,
  { sessions, kept }: Rehearsal,
  from: Temporal.PlainDate,
): RehearsedWeek[] {
  const counted = countedLifts(program);
  return Array.from({ length: Math.ceil(kept.length / 7) }, (_, at) => {
    const days = kept.slice(at * 7, at * 7 + 7);
    const start = from.add({ days: at * 7 });
    const end = start.add({ days: 7 });
    const inside = sessions.filter(
      ({ date }) => start.until(date).days >= 0 && date.until(end).days > 0,
    );
    const results = inside.flatMap((session) => session.results);
    const keptOf = (lift: string) => mean(days.map((day) => day.get(lift) ?? 1));
    return {
      week: at + 1,
      from: start,
      sessions: inside.length,
      minutes:
        inside.length === 0
          ? null
          : mean(inside.map(({ done }) => (done.end - done.start) / 60_000)),
      bodyMass: inside.at(-1)?.bodyMass ?? null,
      hardSets: weeklyVolume(
        results.map((result) => ({ trains: result.exercise.trains, hardSets: hardSetsOf(result) })),
      ),
      tracks: tracksOf(results, keptOf),
      kept: median(counted.map(keptOf)) ?? 1,
      lighter: results.some(({ lighter }) => lighter),
    };
  });
}

/** The compound lifts; of a program without one all. */
function countedLifts(program: Program): readonly string[] {
  const lifts = program.days.flatMap(({ exercises }) => exercises.map(({ lift }) => lift));
  const compounds = lifts.filter(({ kind }) => kind === 'compound');
  return [...new Set((compounds.length > 0 ? compounds : lifts).map(({ key }) => key))];
}

function tracksOf(results: readonly Result[], keptOf: (lift: string) => number): RehearsedTrack[] {
  const byTrack = new Map<string, Result[]>();
  for (const result of results) {
    const { track } = result.exercise;
    byTrack.set(track, [...(byTrack.get(track) ?? []), result]);
  }
  return [...byTrack.values()].flatMap((each) => {
    const last = each.findLast(({ sets }) => sets.length > 0);
    const load = last?.sets[0]?.load;
    if (!last || load === undefined) return [];
    const { exercise, sets } = last;
    const { track, lift, name, kind } = exercise;
    const moves = each.map((result) => result.exercise.move);
    return [{ track, lift, name, kind, exercise, moves, load, sets, kept: keptOf(lift) }];
  });
}

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / Math.max(1, values.length);
