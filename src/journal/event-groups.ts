import type { SessionEvent } from '../session/events.ts';
import { type Damage, fileOf, type JournalFile, type JournalLine, sequenceOf } from './lines.ts';
import type { JournalEvent, LooseEvent } from './records.ts';

/** The events of one file id, wherever they were found. */
export interface EventGroup {
  /** Id of the file that they were first written to. */
  readonly id: string;
  /** In order of their sequence number, each once. */
  readonly events: readonly JournalEvent[];
  /** Some of it was not understood, or is missing. */
  readonly foreign: boolean;
  /** Events before the last are in no file. */
  readonly hasHole: boolean;
  /** Path of the file where the last event stands. */
  readonly name: string;
  /** This device made that file. */
  readonly own: boolean;
}

interface Found {
  readonly bySequence: Map<number, { readonly line: JournalLine; readonly file: JournalFile }>;
  isDamaged: boolean;
  /** Files that tell the same event otherwise, each with the one that counts. */
  readonly conflicts: Map<string, string>;
}

/**
 * Puts the events of all files together by the file that they were first written to. The same
 * event met twice (in copies that a syncer left, or an import) counts once; holes are reported.
 */
export function eventGroups(files: readonly JournalFile[]): {
  readonly groups: readonly EventGroup[];
  /** Ids that lines of a newer version speak of. */
  readonly namedByNewer: ReadonlySet<string>;
  readonly damages: readonly Damage[];
} {
  const found = new Map<string, Found>();
  const namedByNewer = new Set<string>();
  for (const file of files) {
    const ids = new Set<string>();
    for (const line of file.lines) {
      if (line.kind === 'damaged') continue;
      if (line.kind === 'newer') for (const name of line.names) namedByNewer.add(name);
      const id = line.kind === 'event' ? line.event.id : line.id;
      const of = fileOf(id);
      ids.add(of);
      put(found, of, sequenceOf(id), line, file);
    }
    // Which events a damaged line held cannot be known, so it counts against every id in its file.
    if (!file.lines.some(({ kind }) => kind === 'damaged')) continue;
    for (const id of ids) {
      const group = found.get(id);
      if (group) group.isDamaged = true;
    }
  }
  const groups = [...found].map(([id, each]) => groupOf(id, each)).filter((each) => each !== null);
  return {
    groups,
    namedByNewer,
    damages: [
      ...files.flatMap(damagesOf),
      ...groups.flatMap(holesOf),
      ...[...found.values()].flatMap(conflictsOf),
    ],
  };
}

/** Of copies, the one in a file of this device counts: that is where it goes on. */
function put(
  found: Map<string, Found>,
  id: string,
  sequence: number,
  line: JournalLine,
  file: JournalFile,
): void {
  let group = found.get(id);
  if (!group) {
    group = { bySequence: new Map(), isDamaged: false, conflicts: new Map() };
    found.set(id, group);
  }
  const before = group.bySequence.get(sequence);
  const counts = !before || (file.own && !before.file.own);
  if (counts) group.bySequence.set(sequence, { line, file });
  if (before && !isSame(before.line, line)) {
    const [kept, other] = counts ? [file, before.file] : [before.file, file];
    group.conflicts.set(other.name, kept.name);
    group.isDamaged = true;
  }
}

/** Do two values of JSON say the same, in whatever order their fields stand? */
function isSame(a: unknown, b: unknown): boolean {
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return a === b;
  const [left, right] = [a, b] as Readonly<Record<string, unknown>>[];
  const names = new Set([...Object.keys(a), ...Object.keys(b)]);
  return [...names].every((name) => isSame(left?.[name], right?.[name]));
}

function groupOf(id: string, { bySequence, isDamaged }: Found): EventGroup | null {
  const inOrder = [...bySequence].sort(([a], [b]) => a - b);
  const last = inOrder.at(-1);
  if (!last) return null;
  const events = inOrder.flatMap(([, { line }]) => (line.kind === 'event' ? [line.event] : []));
  const isWhole = events.length === last[0] + 1;
  // An import leaves out what is here already and what was doubtful, so nothing of it is missing.
  const isImported =
    events.every(isLoose) && inOrder.every(([, { file }]) => !file.name.includes(id));
  const hasHole = !isDamaged && !isImported && bySequence.size <= last[0];
  const { name, own } = last[1].file;
  return { id, events, foreign: isDamaged || !isWhole, hasHole, name, own };
}

function damagesOf({ name: file, lines, tail, trouble }: JournalFile): Damage[] {
  const damages: Damage[] = trouble ? [{ file, kind: 'unreadable', problem: trouble }] : [];
  const damaged = lines.flatMap(({ kind }, at) => (kind === 'damaged' ? [at + 1] : []));
  const newer = lines.filter(({ kind }) => kind === 'newer').length;
  if (tail > 0) {
    damages.push({
      file,
      kind: 'tail',
      problem: {
        what: `${file} ends in a line that was not written whole.`,
        why: 'That happens when the power goes while it is being saved; what was shown as saved stands before it.',
      },
    });
  }
  if (damaged.length > 0) {
    damages.push({
      file,
      kind: 'damaged',
      problem: {
        what: `${file} has ${damaged.length === 1 ? 'a damaged line' : 'damaged lines'}: ${damaged.slice(0, 5).join(', ')}.`,
        why: 'It is left as it is, and its session moves no load.',
        fix: 'Bring the file back from a backup if you have one.',
      },
    });
  }
  if (newer > 0) {
    damages.push({
      file,
      kind: 'newer',
      problem: {
        what: `${file} holds ${newer === 1 ? 'a line' : `${newer} lines`} that this version does not understand.`,
        why: 'A newer version of holdfast or another program wrote that; it is kept and skipped, and its session moves no load.',
        fix: 'Update holdfast on this device; if it is the newest, bring the file back from a backup.',
      },
    });
  }
  return damages;
}

const conflictsOf = ({ conflicts }: Found): Damage[] =>
  [...conflicts].map(([file, kept]) => ({
    file,
    kind: 'conflict',
    problem: {
      what: `${file} tells the same sets otherwise than ${kept}.`,
      why: `What copies the folder kept both. ${kept} counts meanwhile, and its session moves no load.`,
      fix: 'Compare the two, and move the wrong one out of the journal folder.',
    },
  }));

function holesOf({ hasHole, name: file }: EventGroup): Damage[] {
  return hasHole
    ? [
        {
          file,
          kind: 'missing',
          problem: {
            what: `${file}: some events before the last are missing.`,
            fix: 'If another device keeps this folder too, let it finish copying.',
          },
        },
      ]
    : [];
}

/** The files of one session: that of the device which opened it, then those that went on with it. */
export interface SessionGroups {
  readonly session: string;
  readonly groups: readonly EventGroup[];
}

type Opening = Extract<SessionEvent, { type: 'session-opened' }>;
type TakingOver = Extract<LooseEvent, { type: 'session-taken-over' }>;

/** Events of files that hold no session, in order over all files. */
export type Loose = Ranked<Exclude<JournalEvent, Opening | TakingOver>>;

/** Tells sessions and the files of single days apart, and puts the files of each session in order. */
export function splitGroups(groups: readonly EventGroup[]): {
  readonly sessions: readonly SessionGroups[];
  readonly loose: readonly Loose[];
  readonly damages: readonly Damage[];
} {
  const openings = new Map<string, EventGroup>();
  const takings: { readonly event: TakingOver; readonly group: EventGroup }[] = [];
  const loose: Loose[] = [];
  const damages: Damage[] = [];
  for (const group of groups) {
    const [first] = group.events;
    if (first?.type === 'session-opened') {
      if (!openings.has(first.session)) openings.set(first.session, group);
    } else if (first?.type === 'session-taken-over') {
      takings.push({ event: first, group });
    } else if (group.events.every(isLoose)) {
      loose.push(...ranked(group.events.filter(isLoose)));
    } else {
      damages.push(withoutOpening(group));
    }
  }
  const sessions = [...openings].map(([session, opened]) => ({
    session,
    groups: chain(
      opened,
      takings.filter(({ event }) => event.session === session),
    ),
  }));
  return { sessions, loose: loose.sort(compareRanked), damages };
}

/** Each taking over comes behind the file that it had read last; of two, the earlier one first. */
function chain(
  opened: EventGroup,
  takings: readonly { readonly event: TakingOver; readonly group: EventGroup }[],
): EventGroup[] {
  const inOrder = takings.toSorted((a, b) =>
    compareRanked(
      { event: a.event, rank: a.event.at.wall },
      { event: b.event, rank: b.event.at.wall },
    ),
  );
  const following = (group: EventGroup): EventGroup[] => [
    group,
    ...inOrder
      .filter(({ event }) => fileOf(event.after) === group.id)
      .flatMap((taking) => (taking.group === group ? [] : following(taking.group))),
  ];
  const chained = following(opened);
  // What follows a file that is not here yet still belongs to the session.
  return [
    ...chained,
    ...inOrder.map(({ group }) => group).filter((group) => !chained.includes(group)),
  ];
}

const LOOSE: ReadonlySet<JournalEvent['type']> = new Set<JournalEvent['type']>([
  'weighed',
  'waist-measured',
  'decided',
  'gear-set',
  'kit-kept',
  'deleted',
  'imported',
  'set-amended',
  'sets-confirmed',
  'undone',
]);

const isLoose = (event: JournalEvent): event is Loose['event'] => LOOSE.has(event.type);

const withoutOpening = ({ name: file }: EventGroup): Damage => ({
  file,
  kind: 'no-opening',
  problem: {
    what: `${file} holds sets, but the line that opened their session is missing or damaged.`,
    fix: 'Bring the file back from a backup if you have one.',
  },
});

/** An event with what decides which of two is the later. */
export interface Ranked<Event extends JournalEvent = JournalEvent> {
  readonly event: Event;
  /** The latest instant in its file so far: a clock set back does not undo the file's own order. */
  readonly rank: number;
}

/** The events of one file, in its order, with their ranks. */
export function ranked<Event extends JournalEvent>(events: readonly Event[]): Ranked<Event>[] {
  let rank = Number.NEGATIVE_INFINITY;
  return events.map((event) => {
    rank = Math.max(rank, event.at.wall);
    return { event, rank };
  });
}

/** Order of events of several files: instant, then file id, then sequence number. */
export function compareRanked(a: Ranked, b: Ranked): number {
  if (a.rank !== b.rank) return a.rank - b.rank;
  const [fileA, fileB] = [fileOf(a.event.id), fileOf(b.event.id)];
  if (fileA !== fileB) return fileA < fileB ? -1 : 1;
  return sequenceOf(a.event.id) - sequenceOf(b.event.id);
}
