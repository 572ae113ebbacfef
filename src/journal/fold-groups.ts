import type { Temporal } from 'temporal-polyfill';
import type { Decision } from '../progression/past.ts';
import { fold } from '../session/apply.ts';
import type { SessionEvent, Stamp } from '../session/events.ts';
import { inForce } from '../session/in-force.ts';
import { localDate } from '../session/results.ts';
import type { SessionState } from '../session/state.ts';
import { dateOfText } from '../training/day-number.ts';
import type { Gear } from '../training/gear.ts';
import type { Mass } from '../training/mass.ts';
import {
  compareRanked,
  type EventGroup,
  type eventGroups,
  type Loose,
  type Ranked,
  ranked,
  type SessionGroups,
  splitGroups,
} from './event-groups.ts';
import type { Deletion, WaistReading, WeighIn } from './history.ts';
import { type Damage, fileOf } from './lines.ts';
import type { Correction, JournalEvent } from './records.ts';

/** A session folded from its events, corrections applied. */
export interface FoldedSession {
  readonly state: SessionState;
  readonly foreign: boolean;
  /** The file that was written to last. */
  readonly own: boolean;
  readonly file: string;
  /** Name of the device that wrote to it last. */
  readonly device: string;
  /** Ids of the files that it was written to. */
  readonly ids: readonly string[];
}

export interface Folded {
  /** Finished or closed as they were, by start, device and id. */
  readonly closed: readonly FoldedSession[];
  /** Neither closed nor discarded, in the same order. */
  readonly open: readonly FoldedSession[];
  readonly facts: LooseFacts;
  readonly damages: readonly Damage[];
}

/** What groups of events come to, in whatever order they come: nothing is judged. */
export function foldGroups({
  groups,
  namedByNewer,
  damages,
}: ReturnType<typeof eventGroups>): Folded {
  const { sessions, loose, damages: lost } = splitGroups(groups);
  const facts = looseFacts(loose);
  const deleted = deletedIds(facts.deletions);
  const corrections = correctionsBySession(sessions, facts.corrections);
  const folded = sessions
    .filter(({ session }) => !deleted.has(session))
    .map((each) => {
      const found = corrections.get(each.session) ?? [];
      return foldSession(each, found, deleted, namedByNewer);
    })
    .filter((each) => each !== null)
    .sort((a, b) => bySessionOrder(orderOf(a.state), orderOf(b.state)));
  return {
    closed: folded.filter(({ state }) => isClosed(state)),
    open: folded.filter(({ state }) => state.stage.kind !== 'closed'),
    facts,
    damages: [...damages, ...lost],
  };
}

function foldSession(
  { groups }: SessionGroups,
  corrections: readonly Ranked<CorrectionEvent>[],
  deleted: ReadonlySet<string>,
  namedByNewer: ReadonlySet<string>,
): FoldedSession | null {
  const events = sessionEvents(groups, corrections, deleted);
  const state = fold(events);
  if (!state) return null;
  const named = namedByNewer.has(state.session) || events.some(({ id }) => namedByNewer.has(id));
  return {
    state,
    foreign: named || groups.some(({ foreign }) => foreign),
    own: groups.at(-1)?.own ?? false,
    file: groups.at(-1)?.name ?? '',
    ids: groups.map(({ id }) => id),
    device: deviceOf(groups.at(-1)?.events[0]) ?? state.device,
  };
}

const deviceOf = (first: JournalEvent | undefined): string | undefined =>
  first?.type === 'session-taken-over' ? first.device : undefined;

function correctionsBySession(
  sessions: readonly SessionGroups[],
  corrections: readonly Ranked[],
): ReadonlyMap<string, Ranked<CorrectionEvent>[]> {
  const sessionOf = new Map(
    sessions.flatMap(({ session, groups }) => groups.map(({ id }) => [id, session] as const)),
  );
  const found = new Map<string, Ranked<CorrectionEvent>[]>();
  for (const each of corrections as readonly Ranked<CorrectionEvent>[]) {
    const [of] = [each.event.of].flat();
    const session = of === undefined ? undefined : sessionOf.get(fileOf(of));
    if (session === undefined) continue;
    const others = found.get(session);
    if (others) others.push(each);
    else found.set(session, [each]);
  }
  return found;
}

/** What decides the order of sessions. */
export interface SessionOrder {
  readonly start: number;
  /** Name of the device that opened it. */
  readonly device: string;
  readonly session: string;
}

export function bySessionOrder(a: SessionOrder, b: SessionOrder): number {
  if (a.start !== b.start) return a.start - b.start;
  const [textA, textB] = [`${a.device} ${a.session}`, `${b.device} ${b.session}`];
  return textA < textB ? -1 : textA > textB ? 1 : 0;
}

const orderOf = ({ openedAt, device, session }: SessionState): SessionOrder => ({
  start: openedAt.wall,
  device,
  session,
});

const isClosed = ({ stage }: SessionState): boolean =>
  stage.kind === 'closed' && stage.how !== 'discarded';

type CorrectionEvent = Correction & Stamp;

type Amendment = Extract<SessionEvent, { type: 'set-amended' }>;

const NUMBERS = ['load', 'count', 'reserve'] as const;

/**
 * The events of one session in order: what its files hold, then what was corrected afterwards. Of
 * several amendments of one number the latest wins, wherever it was written.
 */
function sessionEvents(
  groups: readonly EventGroup[],
  corrections: readonly Ranked<CorrectionEvent>[],
  deleted: ReadonlySet<string>,
): readonly SessionEvent[] {
  const own = groups.flatMap(({ events }) => events.filter(isOfSession));
  const standing = own.filter(({ id, type }) => type !== 'set-done' || !deleted.has(id));
  if (corrections.length === 0) return standing;
  const inSession = latestInSession(groups);
  return [...standing, ...corrections.map((each) => withoutOutdated(each, inSession))];
}

const OTHERS: ReadonlySet<JournalEvent['type']> = new Set<JournalEvent['type']>([
  'weighed',
  'waist-measured',
  'decided',
  'gear-set',
  'kit-kept',
  'deleted',
  'imported',
  'session-taken-over',
]);

const isOfSession = (event: JournalEvent): event is SessionEvent => !OTHERS.has(event.type);

const numberKey = (of: string, number: string): string => `${of} ${number}`;

function latestInSession(groups: readonly EventGroup[]): ReadonlyMap<string, Ranked> {
  const latest = new Map<string, Ranked>();
  for (const { events } of groups) {
    const standing = new Set(inForce(events.filter(isOfSession)).map(({ id }) => id));
    for (const each of ranked(events)) {
      if (each.event.type !== 'set-amended' || !standing.has(each.event.id)) continue;
      for (const number of NUMBERS.filter((name) => name in each.event)) {
        const key = numberKey(each.event.of, number);
        const before = latest.get(key);
        if (!before || compareRanked(before, each) < 0) latest.set(key, each);
      }
    }
  }
  return latest;
}

function withoutOutdated(
  correction: Ranked<CorrectionEvent>,
  inSession: ReadonlyMap<string, Ranked>,
): CorrectionEvent {
  const { event } = correction;
  if (event.type !== 'set-amended') return event;
  const outdated = NUMBERS.filter((number) => {
    const other = inSession.get(numberKey(event.of, number));
    return other !== undefined && compareRanked(correction, other) < 0;
  });
  const { load, count, reserve, ...rest } = event;
  const kept = Object.entries({ load, count, reserve }).filter(
    ([name, value]) => value !== undefined && !outdated.some((number) => number === name),
  );
  return { ...rest, ...Object.fromEntries(kept) } as Amendment;
}

/** What the events outside sessions come to. */
interface LooseFacts {
  readonly weighIns: readonly WeighIn[];
  readonly waists: readonly WaistReading[];
  readonly decisions: readonly Decision[];
  readonly kits: readonly { readonly name: string; readonly gear: Gear }[];
  readonly gear: Gear | null;
  /** Deletions in force: the id of each, and what it takes away. */
  readonly deletions: readonly Deletion[];
  /** Corrections of sets, oldest first. */
  readonly corrections: readonly Loose[];
}

/** @param loose events in order over all files */
function looseFacts(loose: readonly Loose[]): LooseFacts {
  const gone = takenBack(loose);
  const standing = loose.filter(({ event }) => !gone.has(event.id));
  const deletions = standing.flatMap(({ event }) =>
    event.type === 'deleted' ? [event.of].flat().map((of) => ({ id: event.id, of })) : [],
  );
  const deleted = deletedIds(deletions);
  const weighed: Event<'weighed'>[] = [];
  const measured: Event<'waist-measured'>[] = [];
  const decisions: Decision[] = [];
  const corrections: Loose[] = [];
  const kits = new Map<string, Gear | null>();
  let gear: Gear | null = null;
  for (const each of standing) {
    const { event } = each;
    if (deleted.has(event.id)) continue;
    if (event.type === 'weighed') weighed.push(event);
    else if (event.type === 'waist-measured') measured.push(event);
    else if (event.type === 'decided') decisions.push(decision(event));
    else if (event.type === 'gear-set') gear = event.gear;
    else if (event.type === 'kit-kept') kits.set(event.name, event.gear);
    else if (event.type !== 'deleted' && event.type !== 'imported') corrections.push(each);
  }
  // A stable sort: of one day, in order of being written.
  for (const readings of [weighed, measured]) {
    readings.sort((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : 0));
  }
  const [weighIns, waists] = [
    weighed.map((event) => new DatedWeighIn(event)),
    measured.map(waistReading),
  ];
  const named = [...kits].flatMap(([name, of]) => (of ? [{ name, gear: of }] : []));
  return { weighIns, waists, decisions, kits: named, gear, deletions, corrections };
}

const deletedIds = (deletions: readonly Deletion[]): ReadonlySet<string> =>
  new Set(deletions.map(({ of }) => of));

/** Ids that an undo in force names. The latest decides first. */
function takenBack(loose: readonly Loose[]): ReadonlySet<string> {
  const gone = new Set<string>();
  for (const { event } of loose.toReversed()) {
    if (event.type === 'undone' && !gone.has(event.id)) gone.add(event.of);
  }
  return gone;
}

type Event<Type extends Loose['event']['type']> = Extract<Loose['event'], { type: Type }>;

/** There are years of them, and of most the date is never asked for. */
class DatedWeighIn implements WeighIn {
  readonly id: string;
  readonly mass: Mass;
  readonly at: number;
  readonly sure?: boolean;
  private readonly on: string;
  private made: Temporal.PlainDate | null = null;

  constructor({ id, mass, on, at, sure }: Event<'weighed'>) {
    this.id = id;
    this.mass = mass;
    this.at = at.wall;
    if (sure) this.sure = sure;
    this.on = on;
  }

  get date(): Temporal.PlainDate {
    this.made ??= dateOfText(this.on);
    return this.made;
  }
}

const waistReading = ({ id, length, on }: Event<'waist-measured'>): WaistReading => ({
  id,
  length,
  date: dateOfText(on),
});

const decision = ({ rule, answer, subject, at, zone }: Event<'decided'>): Decision => ({
  rule,
  answer,
  subject,
  at: at.wall,
  date: localDate(at.wall, zone),
});
