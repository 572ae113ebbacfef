import type { History } from '../../journal/history.ts';
import type { JournalEvent } from '../../journal/records.ts';
import { type KnownSet, TABLE } from './own-sessions.ts';

/**
 * Sets that the history holds: of tables as they came in, whatever was corrected or deleted since;
 * those whose import was taken back apart, with the id that brings them back.
 */
export function setsThere(history: History) {
  const opened = new Map<string, Extract<JournalEvent, { type: 'session-opened' }>>();
  const fileOf = ({ id }: JournalEvent) => id.slice(0, id.lastIndexOf(':'));
  const events = history.events();
  for (const event of events) {
    const isOpening = event.type === 'session-opened' && event.session.startsWith(TABLE);
    if (isOpening) opened.set(fileOf(event), event);
  }
  const deleted = new Set(history.deletions.map(({ of }) => of));
  const [standing, takenBack]: [KnownSet[], KnownSet[]] = [[], []];
  for (const event of events) {
    const opening = event.type === 'set-done' ? opened.get(fileOf(event)) : undefined;
    if (event.type !== 'set-done' || !opening) continue;
    const { date, exercises } = opening.prescription;
    const lift = exercises[event.exercise]?.lift ?? '';
    const known = { date, lift, load: event.load, count: event.count };
    (deleted.has(opening.session) ? takenBack : standing).push(known);
  }
  const others = history.results.filter(({ session }) => !session.startsWith(TABLE));
  standing.push(
    ...others.flatMap(({ date, exercise: { lift }, sets }) =>
      sets.map(({ load, count }) => ({ date: date.toString(), lift, load, count })),
    ),
  );
  const by = events.find(
    (event): event is Extract<JournalEvent, { type: 'imported' }> =>
      event.type === 'imported' && event.of.some((of) => deleted.has(of)),
  );
  return { standing, takenBack, by: by?.id ?? 'ID' };
}
