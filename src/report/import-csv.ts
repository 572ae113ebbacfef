import { Temporal } from 'temporal-polyfill';
import { Refusal } from '../text/problem.ts';
import { type Length, readLength, WAIST_LIMITS } from '../training/length.ts';
import type { Mass } from '../training/mass.ts';
import { type CsvRecord, csvRecord, readCsvText } from './csv-text.ts';
import { type Holdings, type Imported, waistKey, weighInKey } from './import-json.ts';
import { sessionFromRows } from './session-rows.ts';
import { SET_COLUMNS } from './set-columns.ts';
import { SURE_COLUMN, WAIST_COLUMNS, WEIGH_IN_COLUMNS } from './sets-csv.ts';

/** Columns that an import can do without: they tell what other columns give, or came later. */
const NOT_NEEDED = new Set([
  'e1rm',
  'role',
  'closed',
  'end',
  'aim_of_program',
  'aims',
  'notes',
  'pair',
  'failed',
  'set_dropped',
]);

/** Does its first line look like that of an exported file, whole or not? Any other table is the lifter's own. */
export function isExportedCsv(text: string): boolean {
  const [first = ''] = text.replace(/^\ufeff/, '').split(/\r?\n/, 1);
  const headings = first.split(',');
  const named = SET_COLUMNS.filter(({ name }) => headings.includes(name)).length;
  const holds = (columns: readonly string[]) => columns.every((name) => headings.includes(name));
  return named * 2 >= SET_COLUMNS.length || holds(WEIGH_IN_COLUMNS) || holds(WAIST_COLUMNS);
}

/**
 * Reads an exported file of sets, of weigh-ins or of waist readings, told apart by its headings, and gives what the
 * history does not hold yet. Columns may stand in any order; others are passed over.
 * @throws Refusal with row and column at the first thing that cannot be read; nothing is imported then.
 */
export function importCsv(text: string, holdings: Holdings): Imported {
  const [headings = [], ...rows] = readCsvText(text);
  const records = rows.map((cells, at) => csvRecord(headings, cells, at + 2));
  if (WEIGH_IN_COLUMNS.every((name) => headings.includes(name))) {
    return importWeighIns(records, holdings);
  }
  if (WAIST_COLUMNS.every((name) => headings.includes(name))) {
    return importWaists(records, holdings);
  }
  const missing = SET_COLUMNS.filter(
    ({ name }) => !NOT_NEEDED.has(name) && !headings.includes(name),
  ).map(({ name }) => name);
  if (missing.length > 0) {
    throw new Refusal({
      what: `The file has no column ${missing.join(', ')}.`,
      why: 'Only a file made by export --as csv can be imported.',
    });
  }
  return importSets(records, holdings);
}

function importSets(records: readonly CsvRecord[], holdings: Holdings): Imported {
  const bySession = new Map<string, CsvRecord[]>();
  for (const record of records) {
    const session = record.text('session');
    bySession.set(session, [...(bySession.get(session) ?? []), record]);
  }
  const fresh = [...bySession].filter(([session]) => !holdings.sessions.has(session));
  for (const [, [first]] of fresh) if (first) dateOf(first, holdings);
  return {
    sessions: fresh
      .map(([session, rows]) => sessionFromRows(session, rows))
      .sort((a, b) => a.start - b.start),
    weighIns: [],
    waists: [],
    known: bySession.size - fresh.length,
    told: [...bySession.keys()],
  };
}

function importWeighIns(records: readonly CsvRecord[], holdings: Holdings): Imported {
  const seen = new Set(holdings.weighIns);
  const weighIns = records
    .map((record) => ({
      on: dateOf(record, holdings).toString(),
      mass: bodyMassOf(record),
      ...(!record.empty(SURE_COLUMN) && record.yes(SURE_COLUMN) && { sure: true }),
    }))
    .filter(({ on, mass }) => {
      const key = weighInKey(on, mass);
      return !seen.has(key) && seen.add(key);
    });
  return {
    sessions: [],
    weighIns,
    waists: [],
    known: records.length - weighIns.length,
    told: [],
  };
}

function importWaists(records: readonly CsvRecord[], holdings: Holdings): Imported {
  const seen = new Set(holdings.waists);
  const waists = records
    .map((record) => ({ on: dateOf(record, holdings).toString(), length: waistOf(record) }))
    .filter(({ on, length }) => {
      const key = waistKey(on, length);
      return !seen.has(key) && seen.add(key);
    });
  return { sessions: [], weighIns: [], waists, known: records.length - waists.length, told: [] };
}

function waistOf(record: CsvRecord): Length {
  const read = readLength(`${record.text('waist')} ${record.text('unit')}`, 'cm');
  if (read && read.length >= WAIST_LIMITS[0] && read.length <= WAIST_LIMITS[1]) return read.length;
  throw new Refusal({
    what: `Row ${record.row}, column waist: that is the waist of nobody.`,
    fix: 'Mend the row or export the file again; nothing was imported.',
  });
}

function dateOf(record: CsvRecord, { until }: Holdings): Temporal.PlainDate {
  const date = record.date('date');
  if (Temporal.PlainDate.compare(date, until) <= 0) return date;
  throw new Refusal({
    what: `Row ${record.row}, column date: ${date.toString()} is still to come.`,
    fix: 'Mend the row, or the clock of this machine; nothing was imported.',
  });
}

function bodyMassOf(record: CsvRecord): Mass {
  const found = record.mass('body_mass');
  if (found > 0) return found;
  throw new Refusal({
    what: `Row ${record.row}, column body_mass: nobody weighs that.`,
    fix: 'Mend the row or export the file again; nothing was imported.',
  });
}
