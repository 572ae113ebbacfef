import type { History } from '../journal/history.ts';
import { plannedSeconds } from '../progression/planned-seconds.ts';
import type { Prescription } from '../progression/prescription.ts';
import { ownPace } from '../training/set-clock.ts';

/** Minutes that a prescription takes: by the clock of sets, then at the lifter's own pace. */
export function sessionMinutes(
  prescription: Prescription,
  history: Pick<History, 'latest'>,
): number {
  return Math.round(plannedSeconds(prescription, paceOf(history)) / 60);
}

/** The lifter's own pace. Only sessions that were finished tell how long a plan takes. */
export function paceOf({ latest }: Pick<History, 'latest'>): number {
  return ownPace(
    latest
      .filter(({ done }) => done.how === 'closed')
      .map(({ done, planned }) => ({
        planned: plannedSeconds(planned, 1),
        took: (done.end - done.start) / 1000,
      })),
  );
}
