import { Temporal } from 'temporal-polyfill';
import { JOINTS, type Joint } from '../training/lift.ts';
import type { Decision } from './past.ts';

/** What the lifter says hurts: until it is taken back, or for one day. The subject is the joint. */
export const HURTS = { lasting: 'hurts', today: 'hurts-today' } as const;

/** After so many days it should be looked at. Common practice. */
export const LOOKED_AT_AFTER = 14;

/** A joint that hurts now. */
export interface Hurt {
  readonly joint: Joint;
  readonly since: Temporal.PlainDate;
  readonly forToday: boolean;
}

/** The joints that hurt on a day, as the lifter said last; in the order of {@link JOINTS}. */
export function hurtsOn(decisions: readonly Decision[], day: Temporal.PlainDate): readonly Hurt[] {
  return JOINTS.flatMap((joint): Hurt[] => {
    let hurt: Hurt | null = null;
    for (const { rule, answer, subject, date } of decisions) {
      const isLasting = rule === HURTS.lasting;
      const counts = isLasting || (rule === HURTS.today && date.equals(day));
      if (subject !== joint || !counts || Temporal.PlainDate.compare(date, day) > 0) continue;
      if (answer !== 'yes') hurt = null;
      else if (isLasting)
        hurt = hurt && !hurt.forToday ? hurt : { joint, since: date, forToday: false };
      else hurt ??= { joint, since: day, forToday: true };
    }
    return hurt ? [hurt] : [];
  });
}
