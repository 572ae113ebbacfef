import { Refusal } from '../text/problem.ts';
import { type CsvRecord, csvRecord } from './csv-record.ts';
import { readCsvText } from './csv-text.ts';
import { type Holdings, type Imported, weighInKey } from './imported.ts';
import { sessionFromRows } from './session-from-rows.ts';
import { SET_COLUMNS } from './set-columns.ts';
import { WEIGH_IN_COLUMNS } from './sets-csv.ts';

/** Columns that an import can do without: they only tell what other columns give. */
const NOT_NEEDED = new Set(['e1rm', 'role', 'closed', 'end', 'aim_of_program']);

/**
 * Reads an exported file of sets or of weigh-ins, told apart by its headings, and gives what the
 * history does not hold yet. Columns may stand in any order; others are passed over.
 * @throws Refusal with row and column at the first thing that cannot be read; nothing is imported then.
 */
export function importCsv(text: string, holdings: Holdings): Imported {
  const [headings = [], ...rows] = readCsvText(text);
  const records = rows.map((cells, at) => csvRecord(headings, cells, at + 2));
  if (WEIGH_IN_COLUMNS.every((name) => headings.includes(name))) {
    return importWeighIns(records, holdings);
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
  return {
    sessions: fresh
      .map(([session, rows]) => sessionFromRows(session, rows))
      .sort((a, b) => a.start - b.start),
    weighIns: [],
    known: bySession.size - fresh.length,
  };
}

function importWeighIns(records: readonly CsvRecord[], holdings: Holdings): Imported {
  const seen = new Set(holdings.weighIns);
  const weighIns = records
    .map((record) => ({ on: record.date('date').toString(), mass: record.mass('body_mass') }))
    .filter(({ on, mass }) => {
      const key = weighInKey(on, mass);
      return !seen.has(key) && seen.add(key);
    });
  return { sessions: [], weighIns, known: records.length - weighIns.length };
}
