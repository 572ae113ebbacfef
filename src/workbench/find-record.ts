import type { History, WeighIn } from '../journal/history.ts';
import type { PrescribedExercise } from '../progression/prescription.ts';
import { worksOf } from '../session/done-sets.ts';
import type { DoneSet, SessionState } from '../session/state.ts';

/** Something recorded that a later event may correct, delete or bring back. */
export type Recorded =
  | {
      readonly kind: 'set';
      readonly set: DoneSet;
      /** Position among the work sets of its lift, from 0. */
      readonly position: number;
      readonly exercise: PrescribedExercise;
      readonly session: SessionState;
    }
  | { readonly kind: 'session'; readonly session: SessionState }
  | { readonly kind: 'weigh-in'; readonly weighIn: WeighIn };

/** What stands under an id in the history, deletions applied; null where nothing does. */
export function findRecord({ closed, weighIns }: History, id: string): Recorded | null {
  const weighIn = weighIns.find((each) => each.id === id);
  if (weighIn) return { kind: 'weigh-in', weighIn };
  for (const session of closed()) {
    if (session.session === id) return { kind: 'session', session };
    for (const work of session.exercises.flatMap(worksOf)) {
      const position = work.done.findIndex((set) => set.id === id);
      const set = work.done[position];
      const exercise = work.judgedBy ?? work.prescribed;
      if (set) return { kind: 'set', set, position, exercise, session };
    }
  }
  return null;
}
