import type { SessionEvent } from './events.ts';

/**
 * The events that were not taken back, without the undos themselves. An undo also takes back what
 * the rules made of the act it names; undoing the undo restores both. The opening stays.
 */
export function inForce(events: readonly SessionEvent[]): readonly SessionEvent[] {
  const undone = undoneIds(events);
  if (undone.size === 0) return events.filter(({ type }) => type !== 'undone');
  const standing: SessionEvent[] = [];
  let act: SessionEvent | null = null;
  for (const event of events) {
    if (event.type === 'undone') continue;
    if (!isRuleMade(event)) act = event;
    if (act && stands(act, undone) && stands(event, undone)) standing.push(event);
  }
  return standing;
}

const stands = ({ type, id }: SessionEvent, undone: ReadonlySet<string>): boolean =>
  type === 'session-opened' || !undone.has(id);

/** Ids named by the undos that are in force. An undo only names what came before it, so the last one decides first. */
export function undoneIds(events: readonly SessionEvent[]): ReadonlySet<string> {
  const undone = new Set<string>();
  for (const event of events.toReversed()) {
    if (event.type === 'undone' && !undone.has(event.id)) undone.add(event.of);
  }
  return undone;
}

/** Did a rule make this of the act before it? */
export function isRuleMade(event: SessionEvent): boolean {
  return (
    event.type === 'cluster-resumed' ||
    (event.type === 'cluster-ended' && event.reason !== 'lifter')
  );
}
