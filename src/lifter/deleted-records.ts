import type { History } from '../journal/history.ts';
import { fileOf } from '../journal/lines.ts';
import { localDate } from '../session/results.ts';
import { dayWords } from '../text/day-words.ts';
import { lengthText, tapeOf } from '../training/length.ts';
import { massText, type Unit } from '../training/mass.ts';

type Sources = Pick<History, 'deletions' | 'events'>;

/** What is deleted, the latest deletion first: its id, and what it was. */
export function deletedRecords(
  { deletions, events }: Sources,
  unit: Unit,
): readonly { readonly id: string; readonly what: string }[] {
  const all = events();
  const ids = [...new Set(deletions.map(({ of }) => of).toReversed())];
  return ids.flatMap((id) => {
    const event = all.find(
      (each) => each.id === id || (each.type === 'session-opened' && each.session === id),
    );
    if (!event) return [];
    const day = dayWords(localDate(event.at.wall, event.zone));
    switch (event.type) {
      case 'session-opened':
        return [
          {
            id,
            what: `session of ${day}, ${event.prescription.program}, day ${event.prescription.day}`,
          },
        ];
      case 'set-done':
        return [{ id, what: `set of ${day}, ${massText(event.load, unit)} × ${event.count}` }];
      case 'weighed':
        return [{ id, what: `weigh-in of ${event.on}, ${massText(event.mass, unit)}` }];
      case 'waist-measured':
        return [{ id, what: `waist of ${event.on}, ${lengthText(event.length, tapeOf(unit))}` }];
      default:
        return [];
    }
  });
}

/** The id of the deleted session that holds what `id` names; null where none does. */
export function deletedSessionOf({ deletions, events }: Sources, id: string): string | null {
  const all = events();
  if (!all.some((event) => event.id === id)) return null;
  const opened = all.find(
    (event) => event.type === 'session-opened' && fileOf(event.id) === fileOf(id),
  );
  const session = opened?.type === 'session-opened' ? opened.session : null;
  return deletions.some(({ of }) => of === session) ? session : null;
}
