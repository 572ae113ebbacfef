import { isOver } from '../../session/next-set.ts';
import type { LiftWork, SessionState } from '../../session/state.ts';
import { EFFORT, isHardSet } from '../../training/effort.ts';
import type { EntryTarget } from '../entry.ts';

const ENDS = {
  'fewer-reps': 'Cluster done: fewer reps.',
  'most-sets': 'Cluster done: all its sets.',
  lifter: 'Cluster ended by you.',
} as const;

/**
 * What is to be said once an exercise is over: why its cluster ended, and which sets were too light
 * to count. Nothing where the exercise of the set put down last goes on.
 */
export function exerciseEnd(session: SessionState, { of }: EntryTarget): readonly string[] {
  const state = of && session.exercises[of.exercise];
  if (!state || !isOver(state)) return [];
  const light = lightSets(state);
  return [...(state.clusterEnd ? [ENDS[state.clusterEnd]] : []), ...(light ? [light] : [])];
}

/** `Sets 1 and 3 do not count: 5 or more in reserve, so too light.` Null where every set counts. */
export function lightSets({ prescribed, done }: LiftWork): string | null {
  if (prescribed.style === 'cluster' || prescribed.counts === 'seconds') return null;
  const light = done.flatMap(({ reserve }, at) =>
    reserve !== null && !isHardSet(reserve) ? [at + 1] : [],
  );
  if (light.length === 0) return null;
  const last = light.at(-1);
  const named =
    light.length === 1
      ? `Set ${last} does`
      : `Sets ${light.slice(0, -1).join(', ')} and ${last} do`;
  return `${named} not count: ${EFFORT.hardSetReserve + 1} or more in reserve, so too light.`;
}
