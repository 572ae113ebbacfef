import type { SessionEvent, Stamp } from '../session/events.ts';
import { inForce } from '../session/in-force.ts';
import type { EventGroup } from './event-groups.ts';
import { compareRanked, type Ranked, ranked } from './latest.ts';
import type { Correction, JournalEvent } from './records.ts';

export type CorrectionEvent = Correction & Stamp;

type Amendment = Extract<SessionEvent, { type: 'set-amended' }>;

const NUMBERS = ['load', 'count', 'reserve'] as const;

/**
 * The events of one session in order: what its files hold, then what was corrected afterwards. Of
 * several amendments of one number the latest wins, wherever it was written.
 */
export function sessionEvents(
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
  'decided',
  'gear-set',
  'deleted',
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
