import { group } from 'd3-array';
import type { Temporal } from 'temporal-polyfill';
import type { JournalEvent } from '../journal/records.ts';
import type { PrescribedExercise } from '../progression/prescription.ts';
import type { SessionFact } from '../session/events.ts';
import { Refusal } from '../text/problem.ts';
import type { Length } from '../training/length.ts';
import type { Mass } from '../training/mass.ts';
import { historyExportSchema } from './history-json.ts';

/** What an exported history adds: events under the file they were first written to. */
export interface ImportedEvents {
  readonly files: readonly { readonly file: string; readonly events: readonly JournalEvent[] }[];
  /** Events that were there already, or belong to a session that was. */
  readonly known: number;
  /** Events that this version cannot read; they are kept out. */
  readonly unread: number;
  /** Every event that was understood. */
  readonly all: readonly JournalEvent[];
  /** Events of a day that is still to come: a clock was wrong, or a table; they are kept out. */
  readonly ahead: number;
}

/** Of an exercise that was imported as a table: what no table tells. */
export const NOT_TOLD = {
  system: null,
  bar: null,
  step: null,
  rest: { from: 0, to: 0 },
  warmUp: [],
  why: [],
  last: null,
  askPain: false,
  note: null,
  form: null,
  caution: null,
} as const satisfies Partial<PrescribedExercise>;

/** What a history holds already: nothing of it is imported twice. */
export interface KnownEvents {
  readonly events: ReadonlySet<string>;
  readonly sessions: ReadonlySet<string>;
  /** {@link weighInKey} of every weigh-in, however it came here. */
  readonly weighIns: ReadonlySet<string>;
  /** Epoch milliseconds up to which an event may have been. */
  readonly until: number;
}

/**
 * Reads the document that `export --as json` writes and gives the events that the history does not
 * hold yet, each with the id it had. A session that is there under other events (from a file of
 * sets) is left as it is.
 * @param readEvent reads one event, null where it is not understood.
 * @throws Refusal where the text is no such document.
 */
export function importJson(
  text: string,
  readEvent: (value: unknown) => JournalEvent | null,
  known: KnownEvents,
): ImportedEvents {
  const read = documentOf(text).events.map(readEvent);
  const understood = read.filter((event) => event !== null);
  const events = understood.filter((event) => !isAhead(event, known));
  const byFile = group(events, ({ id }) => id.slice(0, id.lastIndexOf(':')));
  const files = [...byFile]
    .filter(([, of]) => !of.some((event) => isElsewhere(event, known)))
    .map(([file, of]) => ({
      file,
      events: fresh(of, known).filter((each) => !isWeighed(each, known)),
    }))
    .filter(({ events: of }) => of.length > 0);
  const added = files.reduce((sum, { events: of }) => sum + of.length, 0);
  return {
    files,
    all: events,
    known: events.length - added,
    unread: read.length - understood.length,
    ahead: understood.length - events.length,
  };
}

function fresh(events: readonly JournalEvent[], known: KnownEvents): readonly JournalEvent[] {
  const seen = new Set(known.events);
  return events.filter(({ id }) => !seen.has(id) && seen.add(id));
}

const isAhead = (event: JournalEvent, { until }: KnownEvents): boolean =>
  event.at.wall > until || ('on' in event && Date.parse(event.on) > until);

/** A weigh-in that came here by a table has another id. */
const isWeighed = (event: JournalEvent, known: KnownEvents): boolean =>
  event.type === 'weighed' && known.weighIns.has(weighInKey(event.on, event.mass));

const isElsewhere = (event: JournalEvent, known: KnownEvents): boolean =>
  event.type === 'session-opened' &&
  known.sessions.has(event.session) &&
  !known.events.has(event.id);

function documentOf(text: string) {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    // The parser's own message speaks of tokens; what helps is which file is wanted.
    throw new Refusal({
      what: 'The file is not JSON, or it was cut short.',
      fix: 'Export it again with export --as json.',
    });
  }
  const found = historyExportSchema.safeParse(value);
  if (found.success) return found.data;
  const { schema = null } = (value ?? {}) as { schema?: unknown };
  if (typeof schema === 'number' && schema > 1) {
    throw new Refusal({
      what: 'This history was exported by a newer version of holdfast.',
      fix: 'Import it with that version, or export it again with this one.',
    });
  }
  const [issue] = found.error.issues;
  throw new Refusal({
    what: `This is no history that holdfast exported: ${issue?.path.join('.') || 'the document'}: ${issue?.message ?? 'not as expected'}.`,
    fix: 'Only a file made by export --as json can be imported.',
  });
}

/** A session read from an exported file, as facts in order. */
export interface ImportedSession {
  readonly session: string;
  /** Epoch milliseconds at its start; every fact of it is stamped with it. */
  readonly start: number;
  /** Epoch milliseconds at its end; null where the file does not tell. */
  readonly end: number | null;
  /** Minutes that local time was ahead of UTC, as far as the exported dates tell. */
  readonly zone: number;
  /** `device` of the opening fact is left for the journal to fill. */
  readonly facts: readonly SessionFact[];
}

/** What an exported file adds to a history. */
export interface Imported {
  readonly sessions: readonly ImportedSession[];
  readonly weighIns: readonly {
    readonly on: string;
    readonly mass: Mass;
    /** The lifter said that it is right, however it looks. */
    readonly sure?: boolean;
  }[];
  readonly waists: readonly { readonly on: string; readonly length: Length }[];
  /** Sessions and weigh-ins that were there already, and were left as they are. */
  readonly known: number;
  /** Every session that the file tells of. */
  readonly told: readonly string[];
}

/** What a history holds already: nothing of it is imported twice. */
export interface Holdings {
  readonly sessions: ReadonlySet<string>;
  /** {@link weighInKey} of every weigh-in. */
  readonly weighIns: ReadonlySet<string>;
  /** {@link waistKey} of every waist reading. */
  readonly waists: ReadonlySet<string>;
  /** The latest day that a row may name. */
  readonly until: Temporal.PlainDate;
}

/** Two weigh-ins of one day with the same mass are one. */
export const weighInKey = (on: string, mass: Mass): string => `${on} ${mass}`;

/** The same of two waist readings. */
export const waistKey = (on: string, length: Length): string => `${on} ${length}`;
