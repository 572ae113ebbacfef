import { dateOf } from '../session/results.ts';
import { setsAsked, setsCountedIn } from '../session/session-done.ts';
import type { SessionState } from '../session/state.ts';
import { shortDayWords } from '../text/day-words.ts';
import { elapsedMs, type Reading } from '../training/reading.ts';

const STALE_MS = 12 * 60 * 60 * 1000;

/** Did nothing happen in it for so long that it is asked about before it goes on? */
export const isStale = ({ lastAt }: SessionState, now: Reading): boolean =>
  elapsedMs(lastAt, now) > STALE_MS;

/** Which session is open, and how far it has come: `Day A, begun Wed 25 Nov: 2 of 7 sets done.` */
export function openWords(session: SessionState): string {
  const { prescription } = session;
  const begun = shortDayWords(dateOf(session).toString());
  const done = `${setsCountedIn(session)} of ${setsAsked(prescription.exercises)} sets done`;
  return `Day ${prescription.day}, begun ${begun}: ${done}.`;
}
