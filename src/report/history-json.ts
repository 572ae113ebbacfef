import { group } from 'd3-array';
import type { Temporal } from 'temporal-polyfill';
import * as z from 'zod';
import { shownStrength } from '../cut/shown-strength.ts';
import type { History } from '../journal/history.ts';
import type { JournalEvent } from '../journal/records.ts';
import type { Result } from '../progression/past.ts';
import { lengthIn, tapeOf } from '../training/length.ts';
import { inUnit, type Mass, type Unit } from '../training/mass.ts';

/** What of a history is exported. */
export type WholeHistory = Pick<
  History,
  'results' | 'sessions' | 'decisions' | 'weighIns' | 'waists' | 'bodyMassOn'
> & { readonly events: readonly JournalEvent[] };

/** A whole history as the document that {@link historyExportSchema} describes. */
export function historyJson(
  history: WholeHistory,
  unit: Unit,
  today: Temporal.PlainDate,
): HistoryExport {
  const bySession = group(history.results, ({ session }) => session);
  return {
    schema: 1,
    kind: 'holdfast-history',
    made: today.toString(),
    unit,
    sessions: history.sessions.map((session) => ({
      id: session.session,
      start: new Date(session.start).toISOString(),
      end: new Date(session.end).toISOString(),
      date: session.date.toString(),
      program: session.program,
      day: session.day,
      closed: session.how === 'closed',
      exercises: (bySession.get(session.session) ?? []).map((result) =>
        exerciseJson(result, history.bodyMassOn, unit),
      ),
    })),
    weigh_ins: history.weighIns.map(({ date, mass }) => ({
      date: date.toString(),
      mass: inUnit(mass, unit),
    })),
    waists: history.waists.map(({ date, length }) => ({
      date: date.toString(),
      waist: lengthIn(length, tapeOf(unit)),
      unit: tapeOf(unit),
    })),
    decisions: history.decisions.map(({ date, rule, answer, subject }) => ({
      date: date.toString(),
      rule,
      answer,
      subject,
    })),
    events: history.events.map((event) => ({ ...event })),
  };
}

type ExerciseJson = HistoryExport['sessions'][number]['exercises'][number];

function exerciseJson(result: Result, bodyMassOn: History['bodyMassOn'], unit: Unit): ExerciseJson {
  const { lift, name, track, style, counts, move } = result.exercise;
  const { finished, pain, lighter } = result;
  const sets = result.sets.map((set) => {
    const max = shownStrength(result, set, bodyMassOn);
    const { count, reserve, entered } = set;
    const e1rm = max === null ? null : Number(inUnit(max as Mass, unit).toFixed(2));
    return { load: inUnit(set.load, unit), count, reserve, entered, e1rm };
  });
  return { lift, name, track, style, counts, move, finished, pain, lighter, sets };
}

const mass = z.number().meta({ description: 'in the unit named at the top' });

/**
 * What `export --as json` writes. Sessions and weigh-ins are for reading; `events` are the facts
 * they were folded from, and what an import takes. Add keys, never change these.
 */
export const historyExportSchema = z.object({
  schema: z.literal(1),
  kind: z.literal('holdfast-history'),
  made: z.iso.date(),
  unit: z.enum(['kg', 'lb']),
  sessions: z.array(
    z.object({
      id: z.string(),
      start: z.iso.datetime(),
      end: z.iso.datetime(),
      date: z.iso.date().meta({ description: 'local date at the start' }),
      program: z.string(),
      day: z.string(),
      closed: z.boolean(),
      exercises: z.array(
        z.object({
          lift: z.string(),
          name: z.string(),
          track: z.string(),
          style: z.enum(['straight', 'cluster']),
          counts: z.enum(['reps', 'seconds']),
          move: z.enum(['start', 'up', 'hold', 'ease', 'return']),
          finished: z.boolean(),
          pain: z.boolean(),
          lighter: z.boolean(),
          sets: z.array(
            z.object({
              load: mass,
              count: z.int().meta({ description: 'reps or seconds' }),
              reserve: z.number().nullable(),
              entered: z.enum(['as-planned', 'confirmed', 'typed']),
              e1rm: mass.nullable(),
            }),
          ),
        }),
      ),
    }),
  ),
  weigh_ins: z.array(z.object({ date: z.iso.date(), mass })),
  waists: z
    .array(z.object({ date: z.iso.date(), waist: z.number(), unit: z.enum(['cm', 'in']) }))
    .optional()
    .meta({ description: 'round the waist; not in files of before it was kept' }),
  decisions: z.array(
    z.object({
      date: z.iso.date(),
      rule: z.string(),
      answer: z.string(),
      subject: z.string().nullable(),
    }),
  ),
  events: z.array(z.looseObject({ id: z.string(), type: z.string() })),
});

export type HistoryExport = z.infer<typeof historyExportSchema>;
