import type { Result, SessionDone, SetResult } from '../progression/past.ts';
import { MUSCLES } from '../training/lift.ts';
import { inUnit, type Mass, type Unit } from '../training/mass.ts';
import type { Cell } from './csv-text.ts';

/** One set with all that stands around it. */
export interface SetRow {
  readonly result: Result;
  readonly session: SessionDone | null;
  /** Position of the exercise in the session, from 1. */
  readonly exercise: number;
  readonly set: SetResult;
  /** Position of the set in the exercise, from 1. */
  readonly number: number;
  /** Estimated one-repetition maximum in micrograms, or null. */
  readonly estimate: number | null;
  readonly unit: Unit;
  /** What was written down in the session, in its order. */
  readonly notes: readonly string[];
}

interface SetColumn {
  readonly name: string;
  /** What stands in it, for the documentation. */
  readonly holds: string;
  readonly of: (row: SetRow) => Cell;
}

const yesNo = (value: boolean): Cell => (value ? 'yes' : 'no');
const amount = (mass: Mass | null, unit: Unit): Cell => (mass === null ? null : inUnit(mass, unit));
const instant = (ms: number | undefined): Cell =>
  ms === undefined ? null : new Date(ms).toISOString();

const role = ({ result, number }: SetRow): Cell => {
  if (result.exercise.style === 'straight') return 'straight';
  return number === 1 ? 'lead' : 'mini';
};

const shares = ({ result: { exercise } }: SetRow): Cell =>
  MUSCLES.filter((muscle) => exercise.trains[muscle])
    .map((muscle) => `${muscle}:${exercise.trains[muscle]}`)
    .join(' ');

/** Every column of the exported sets, in order. Names and meanings never change; new ones come last. */
export const SET_COLUMNS: readonly SetColumn[] = [
  { name: 'session', holds: 'id of the session', of: ({ result }) => result.session },
  { name: 'start', holds: 'start of the session, UTC', of: ({ result }) => instant(result.start) },
  { name: 'end', holds: 'end of the session, UTC', of: ({ session }) => instant(session?.end) },
  { name: 'date', holds: 'local date at its start', of: ({ result }) => result.date.toString() },
  {
    name: 'closed',
    holds: 'yes: ended by the lifter; no: left open',
    of: ({ session }) => yesNo(session?.how !== 'abandoned'),
  },
  { name: 'program', holds: 'name of the program', of: ({ result }) => result.program },
  { name: 'day', holds: 'day of the program', of: ({ result }) => result.day },
  { name: 'lighter', holds: 'part of a lighter week', of: ({ result }) => yesNo(result.lighter) },
  { name: 'exercise', holds: 'position in the session, from 1', of: ({ exercise }) => exercise },
  { name: 'lift', holds: 'key of the lift', of: ({ result }) => result.exercise.lift },
  { name: 'name', holds: 'name of the lift', of: ({ result }) => result.exercise.name },
  {
    name: 'loading',
    holds: 'barbell, dumbbell, stack, bodyweight, band or free',
    of: ({ result }) => result.exercise.loading,
  },
  { name: 'kind', holds: 'compound or isolation', of: ({ result }) => result.exercise.kind },
  { name: 'pattern', holds: 'movement pattern', of: ({ result }) => result.exercise.pattern },
  { name: 'trains', holds: 'muscle:share, 1 direct, 0.5 indirect', of: shares },
  {
    name: 'per_side',
    holds: 'done one side at a time',
    of: ({ result }) => yesNo(result.exercise.perSide),
  },
  { name: 'counts', holds: 'reps or seconds', of: ({ result }) => result.exercise.counts },
  { name: 'hands', holds: 'dumbbells held at once', of: ({ result }) => result.exercise.hands },
  {
    name: 'body_share',
    holds: 'share of body weight lifted',
    of: ({ result }) => result.exercise.bodyShare,
  },
  {
    name: 'track',
    holds: 'what its results are compared with',
    of: ({ result }) => result.exercise.track,
  },
  { name: 'style', holds: 'straight or cluster', of: ({ result }) => result.exercise.style },
  {
    name: 'range_low',
    holds: 'low end of the range',
    of: ({ result }) => result.exercise.range[0],
  },
  {
    name: 'range_high',
    holds: 'high end of the range',
    of: ({ result }) => result.exercise.range[1],
  },
  {
    name: 'reserve_low',
    holds: 'reps in reserve asked for, low end',
    of: ({ result }) => result.exercise.reserve[0],
  },
  {
    name: 'reserve_high',
    holds: 'reps in reserve asked for, high end',
    of: ({ result }) => result.exercise.reserve[1],
  },
  {
    name: 'sets_planned',
    holds: 'sets the program asks for',
    of: ({ result }) => result.exercise.setsPlanned,
  },
  {
    name: 'sets_asked',
    holds: 'sets asked for that day; of a cluster lead and minis',
    of: ({ result }) => result.exercise.minis?.mostSets ?? result.exercise.sets.length,
  },
  {
    name: 'move',
    holds: 'start, up, hold, ease or return',
    of: ({ result }) => result.exercise.move,
  },
  {
    name: 'finished',
    holds: 'every set asked for was done',
    of: ({ result }) => yesNo(result.finished),
  },
  { name: 'pain', holds: 'pain was marked', of: ({ result }) => yesNo(result.pain) },
  { name: 'set', holds: 'position in the exercise, from 1', of: ({ number }) => number },
  { name: 'role', holds: 'straight, lead or mini', of: role },
  {
    name: 'aim',
    holds: 'reps or seconds aimed at',
    of: ({ result, number }) =>
      result.exercise.sets[number - 1]?.aim ?? result.exercise.minis?.aim ?? null,
  },
  {
    name: 'load',
    holds: 'load as set: on the bar, per hand, on the stack, or added to the body',
    of: ({ set, unit }) => amount(set.load, unit),
  },
  { name: 'unit', holds: 'kg or lb, of load and e1rm', of: ({ unit }) => unit },
  { name: 'count', holds: 'reps or seconds done', of: ({ set }) => set.count },
  {
    name: 'reserve',
    holds: 'reps in reserve; empty where not given',
    of: ({ set }) => set.reserve,
  },
  { name: 'entered', holds: 'as-planned, confirmed or typed', of: ({ set }) => set.entered },
  {
    name: 'e1rm',
    holds: 'estimated one-repetition maximum, body share included',
    of: ({ estimate, unit }) =>
      estimate === null ? null : Number(inUnit(estimate as Mass, unit).toFixed(2)),
  },
  {
    name: 'aim_of_program',
    holds: 'cut, maintain or build; empty where not kept',
    of: ({ session }) => session?.aim ?? null,
  },
  {
    name: 'notes',
    holds: 'notes of the session, one below the other, at its first set',
    of: ({ exercise, number, notes }) =>
      exercise === 1 && number === 1 && notes.length > 0 ? notes.join('\n') : null,
  },
  {
    name: 'pair',
    holds: 'word of the exercises whose sets alternated; empty: one after the other',
    of: ({ result }) => result.exercise.pair ?? null,
  },
  {
    name: 'failed',
    holds: 'the rep after the last was tried and did not come up',
    of: ({ set }) => yesNo(set.failed === true),
  },
  {
    name: 'aims',
    holds: 'aims of all sets asked for, those not done too; of a cluster that of the lead',
    of: ({ result }) => result.exercise.sets.map(({ aim }) => aim).join(' '),
  },
  {
    name: 'set_dropped',
    holds: 'a set fewer than planned was asked for, while the cut costs strength',
    of: ({ result }) => yesNo(result.exercise.why.some(({ rule }) => rule === 'one-set-fewer')),
  },
];
