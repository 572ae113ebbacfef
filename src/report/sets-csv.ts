import { shownStrength } from '../cut/shown-strength.ts';
import type { WaistReading, WeighIn } from '../journal/history.ts';
import type { Past } from '../progression/past.ts';
import { type LengthUnit, lengthIn } from '../training/length.ts';
import { inUnit, type Unit } from '../training/mass.ts';
import { csvText } from './csv-text.ts';
import { SET_COLUMNS } from './set-columns.ts';

/** Every work set of a history, one row a set, with the columns of {@link SET_COLUMNS}. */
export function setsCsv(
  { results, sessions, bodyMassOn }: Pick<Past, 'results' | 'sessions' | 'bodyMassOn'>,
  unit: Unit,
  notesOf: (session: string) => readonly string[] = () => [],
): string {
  const known = new Map(sessions.map((session) => [session.session, session]));
  const places = new Map<string, number>();
  const rows = results.flatMap((result) => {
    const exercise = (places.get(result.session) ?? 0) + 1;
    places.set(result.session, exercise);
    const session = known.get(result.session) ?? null;
    return result.sets.map((set, index) =>
      SET_COLUMNS.map(({ of }) =>
        of({
          result,
          session,
          exercise,
          set,
          number: index + 1,
          estimate: shownStrength(result, set, bodyMassOn),
          unit,
          notes: notesOf(result.session),
        }),
      ),
    );
  });
  return csvText([SET_COLUMNS.map(({ name }) => name), ...rows]);
}

/** Columns that exported weigh-ins have had from the beginning. */
export const WEIGH_IN_COLUMNS = ['date', 'body_mass', 'unit'] as const;

/** Said to be right where it looked like a slip. */
export const SURE_COLUMN = 'sure';

/** Every weigh-in, one row each. */
export function weighInsCsv(
  weighIns: readonly Pick<WeighIn, 'date' | 'mass' | 'sure'>[],
  unit: Unit,
): string {
  const rows = weighIns.map(({ date, mass, sure = false }) => [
    ...[date.toString(), inUnit(mass, unit), unit],
    sure ? 'yes' : 'no',
  ]);
  return csvText([[...WEIGH_IN_COLUMNS, SURE_COLUMN], ...rows]);
}

/** Columns of the exported waist readings. */
export const WAIST_COLUMNS = ['date', 'waist', 'unit'] as const;

/** Every waist reading, one row each. */
export function waistsCsv(
  waists: readonly Pick<WaistReading, 'date' | 'length'>[],
  tape: LengthUnit,
): string {
  const rows = waists.map(({ date, length }) => [date.toString(), lengthIn(length, tape), tape]);
  return csvText([WAIST_COLUMNS, ...rows]);
}
