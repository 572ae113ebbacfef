import { resolve } from 'node:path';
import { onDisk } from '../journal/disk/disk-trouble.ts';
import { readEvent } from '../journal/read-event.ts';
import type { JournalEvent } from '../journal/records.ts';
import { type Lifter, openLifter } from '../lifter/open-lifter.ts';
import { importCsv, isExportedCsv } from '../report/import-csv.ts';
import { importJson, waistKey, weighInKey } from '../report/import-json.ts';
import { jsonText } from '../text/json-text.ts';
import { Refusal } from '../text/problem.ts';
import { howMany } from '../text/words.ts';
import type { Call, Run } from './call.ts';
import { doubtfulOf, doubtText, weighInsTaken } from './import-doubts.ts';
import { importOwn } from './import-own.ts';
import type { ImportJson } from './import-schema.ts';
import { longWork } from './long-work.ts';
import { isStdin, readStdin } from './read-stdin.ts';

/** Reads an exported file back, or a table of the lifter's own, without doubles; says what came in. */
export const run: Run = async (call) => {
  const text = isStdin(call.args[0]) ? await readStdin(call) : textOf(call);
  const lifter = openLifter(call.ports, call.global);
  const isJson = /^\s*\{/.test(text);
  if (!isJson && !isExportedCsv(text)) return importOwn(text, call, lifter);
  const found = (isJson ? eventsOf : rowsOf)(text, lifter, call.options.doubtful === true);
  const isTried = call.options.dryRun === true;
  const answer = (said: readonly string[], id: string | null): void => {
    const json: ImportJson = { schema: 1, written: !isTried, id, ...found.counts };
    call.print(call.global.json ? jsonText(json) : said.join(' '));
    if (call.global.json) call.tell(said.join(' '));
  };
  if (isTried) {
    answer(['Nothing is written yet.', ...found.said], null);
    return 0;
  }
  const written = await longWork(call, 'Importing', found.steps);
  const of = written.flat();
  const isStopped = written.length < found.steps.length;
  const said = isStopped
    ? [`Stopped: ${of.length} sessions and weigh-ins are in; importing again adds the rest.`]
    : found.said;
  if (of.length === 0) {
    answer(said, null);
    return isStopped ? 130 : 0;
  }
  const { id } = lifter.journal().record({ type: 'imported', of });
  answer([...said, `"holdfast amend ${id} --delete" takes all of it back.`], id);
  return isStopped ? 130 : 0;
};

/** What an import would add, in sentences, and the way to do it. */
interface Found {
  readonly said: readonly string[];
  readonly counts: Pick<ImportJson, 'sessions' | 'weigh_ins' | 'known' | 'doubtful'>;
  /** Each writes one file, and gives the ids of the sessions and weigh-ins that came in. */
  readonly steps: readonly (() => readonly string[])[];
}

function textOf({ args: [file = ''], ports }: Call): string {
  const path = resolve(ports.cwd, file);
  const bytes = onDisk(`${path} could not be read`, () => ports.files.read(path));
  if (!bytes) {
    throw new Refusal({
      what: `There is no file ${path}.`,
      fix: 'Name a file that "holdfast export" wrote, or a table of your own saved as csv.',
    });
  }
  return decoded(bytes);
}

/** As spreadsheets save: UTF-16 with its mark, UTF-8, else the code page of Windows in the west. */
function decoded(bytes: Uint8Array): string {
  const [first, second] = bytes;
  if (first === 0xff && second === 0xfe) return new TextDecoder('utf-16le').decode(bytes);
  if (first === 0xfe && second === 0xff) return new TextDecoder('utf-16be').decode(bytes);
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder('windows-1252').decode(bytes);
  }
}

/** A clock that is a little ahead, or a zone further east, is no mistake. */
const A_DAY_MS = 86_400_000;

function eventsOf(text: string, lifter: Lifter, takesDoubtful: boolean): Found {
  const journal = lifter.journal();
  const { events, sessions, open, weighIns, deletions } = journal.history();
  const found = importJson(text, readEvent, {
    events: new Set(events().map(({ id }) => id)),
    sessions: new Set([...sessions, ...open].map(({ session }) => session)),
    weighIns: new Set(weighIns.map(({ date, mass }) => weighInKey(date.toString(), mass))),
    until: lifter.ports.clock.read().wall + A_DAY_MS,
  });
  const weighed = found.files.flatMap(({ events: of }) => of).filter(isWeighed);
  const doubtful = takesDoubtful ? [] : doubtfulOf(weighed, lifter);
  const files = found.files
    .map(({ events: of }) => of.filter((event) => !(doubtful as JournalEvent[]).includes(event)))
    .filter((of) => of.length > 0);
  const added = files.reduce((sum, of) => sum + of.length, 0);
  const told = new Set(
    found.all.flatMap((event) => (event.type === 'session-opened' ? [event.session] : [])),
  );
  return {
    said: [
      `${howMany(added, 'event')} added, ${found.known} were here already.`,
      ...(found.unread > 0
        ? [`${found.unread} were not understood and left out: a newer version wrote them.`]
        : []),
      ...(found.ahead > 0 ? [`${found.ahead} of days still to come were left out.`] : []),
      ...deletedText(deletions.map(({ of }) => of).filter((id) => told.has(id))),
      ...doubtText(doubtful, lifter),
    ],
    counts: {
      sessions: files.flat().filter(({ type }) => type === 'session-opened').length,
      weigh_ins: files.flat().filter(isWeighed).length,
      known: found.known,
      doubtful: doubtful.length,
    },
    steps: together(files).map((of) => () => {
      journal.importEvents(of);
      return of.flatMap((event) => {
        if (event.type === 'session-opened') return [event.session];
        return event.type === 'weighed' ? [event.id] : [];
      });
    }),
  };
}

/** A file for each day weighed would be thousands: those of a month go into one. */
function together(
  files: readonly (readonly JournalEvent[])[],
): readonly (readonly JournalEvent[])[] {
  const weighed = files.filter((of) => of.every(isWeighed)).flat();
  const rest = files.filter((of) => !of.every(isWeighed));
  const months = byMonth(weighed, ({ at }) => new Date(at.wall).toISOString());
  return [...rest, ...months.values()];
}

/** In order of the day, which begins with year and month. */
function byMonth<T>(of: readonly T[], dayOf: (each: T) => string): ReadonlyMap<string, T[]> {
  const months = new Map<string, T[]>();
  for (const each of of.toSorted((a, b) => dayOf(a).localeCompare(dayOf(b), 'en'))) {
    const month = dayOf(each).slice(0, 7);
    months.set(month, [...(months.get(month) ?? []), each]);
  }
  return months;
}

const isWeighed = (event: JournalEvent): event is Extract<JournalEvent, { type: 'weighed' }> =>
  event.type === 'weighed';

function rowsOf(text: string, lifter: Lifter, takesDoubtful: boolean): Found {
  const journal = lifter.journal();
  const { weighIns, waists, sessions, open, deletions } = journal.history();
  const deleted = deletions.map(({ of }) => of);
  const found = importCsv(text, {
    sessions: new Set([...[...sessions, ...open].map(({ session }) => session), ...deleted]),
    weighIns: new Set(weighIns.map(({ date, mass }) => weighInKey(date.toString(), mass))),
    waists: new Set(waists.map(({ date, length }) => waistKey(date.toString(), length))),
    until: lifter.today().add({ days: 1 }),
  });
  const { taken: weighed, doubtful } = weighInsTaken(found.weighIns, lifter, takesDoubtful);
  return {
    said: [
      `${found.sessions.length} sessions and ${weighed.length} weigh-ins added, ${found.known} were here already.`,
      ...(found.waists.length > 0 ? [`${found.waists.length} waist readings added.`] : []),
      ...deletedText(deleted.filter((id) => found.told.includes(id))),
      ...doubtText(doubtful, lifter),
    ],
    counts: {
      sessions: found.sessions.length,
      weigh_ins: weighed.length,
      known: found.known,
      doubtful: doubtful.length,
    },
    steps: [
      ...found.sessions.map((session) => () => {
        journal.importSession(session);
        return [session.session];
      }),
      ...[...byMonth(weighed, ({ on }) => on).values()].map((of) => () => {
        const facts = of.map((each) => ({ type: 'weighed', ...each }) as const);
        return journal.recordOf(of[0]?.on ?? '', facts).map(({ id }) => id);
      }),
      ...[...byMonth(found.waists, ({ on }) => on).values()].map((of) => () => {
        const facts = of.map((each) => ({ type: 'waist-measured', ...each }) as const);
        return journal.recordOf(of[0]?.on ?? '', facts).map(({ id }) => id);
      }),
    ],
  };
}

/** What was deleted here stays so, whatever a file still tells of it. */
const deletedText = (ids: readonly string[]): readonly string[] => {
  const sessions = [...new Set(ids)];
  if (sessions.length === 0) return [];
  const [first] = sessions;
  return [
    `${sessions.length === 1 ? '1 session is' : `${sessions.length} sessions are`} deleted here and ${sessions.length === 1 ? 'stays' : 'stay'} so: "holdfast amend ${first} --restore" brings ${sessions.length === 1 ? 'it' : 'the first'} back.`,
  ];
};
