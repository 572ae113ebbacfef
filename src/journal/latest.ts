import { fileOf, sequenceOf } from './line-codec.ts';
import type { JournalEvent } from './records.ts';

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
