import type { SessionState } from '../../session/state.ts';
import type { EntryTarget } from '../entry.ts';

const ENDS = {
  'fewer-reps': 'Cluster done: fewer reps.',
  'most-sets': 'Cluster done: all its sets.',
  lifter: 'Cluster ended by you.',
} as const;

/** Why the cluster of the set put down last is over; nothing where it is not, or is none. */
export function clusterEnd(session: SessionState, { of }: EntryTarget): readonly string[] {
  const end = of && session.exercises[of.exercise]?.clusterEnd;
  return end ? [ENDS[end]] : [];
}
