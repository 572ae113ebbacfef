import type { Exercise, Plan } from '../program/program.ts';
import type { Mass } from '../training/mass.ts';
import { boutsOf } from './bout.ts';
import type { AskedChange } from './draft.ts';
import { draftFirst } from './draft-first.ts';
import { draftLater } from './draft-later.ts';
import { finishDraft } from './finish-draft.ts';
import { onLightGear, withoutLightGear } from './light-gear.ts';
import { lighterWeekOf } from './lighter-week.ts';
import type { Circumstances, Past } from './past.ts';
import type { PrescribedExercise } from './prescription.ts';
import { rackFor } from './rack.ts';
import { readCase } from './read-case.ts';
import { onSharedLoad } from './same-lift.ts';
import { trackOf } from './track.ts';

export interface PrescribeOptions {
  readonly change?: AskedChange;
  /** Tracks that lose a set today, earlier in the same session. */
  readonly dropped?: ReadonlySet<string>;
  /** No more than this, beside the same lift elsewhere in the day. */
  readonly most?: Mass | null;
}

/**
 * Today's prescription of one exercise, with its reasons. Also for an exercise that is not in the
 * program (another lift in its place), and for what the lifter changes. Warm-ups depend on the rest
 * of the day and are not in it.
 */
export function prescribeExercise(
  program: Plan,
  exercise: Exercise,
  whole: Past,
  circumstances: Circumstances,
  { change, dropped, most = null }: PrescribeOptions = {},
): PrescribedExercise {
  const { today, gear } = circumstances;
  const { bar, step } = exercise;
  const rack = rackFor({ ...exercise.lift, bar, step }, gear, whole.bodyMassOn(today));
  const past = withoutLightGear(whole, exercise, circumstances);
  const bouts = boutsOf(past, trackOf(exercise));
  const lighter = lighterWeekOf(past, today) !== null;
  const each = readCase(program, exercise, past, circumstances, rack, bouts, dropped);
  const asked = each
    ? draftLater(each, { bouts, past, lighter, cutFrom: program.cutFrom, change: change ?? null })
    : draftFirst(exercise, past, circumstances, { program, rack, lighter, change: change ?? null });
  const shared = onSharedLoad(exercise, asked, rack, bouts.at(-1), most);
  const draft = onLightGear(exercise, shared, rack, bouts.at(-1));
  return finishDraft(exercise, draft, past, gear, rack);
}
