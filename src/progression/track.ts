import type { Exercise, Range } from '../program/program.ts';
import type { Gear } from '../training/gear.ts';
import { isUnderTheBar } from '../training/lift.ts';

/**
 * What the results of an exercise are compared with: one lift, one style and one range exactly, or
 * the track that the program names.
 */
export function trackOf(exercise: Exercise): string {
  const { lift, style, range, track } = exercise;
  const kin = `${lift.key} ${style} `;
  // An exercise that was made again from its prescription names its whole track.
  if (track?.startsWith(kin)) return track;
  return kin + (track ?? `${range[0]}-${range[1]}`);
}

/** Lift and range of a track of straight sets; null for clusters, and where the program names the track. */
export function rangeOfTrack(
  track: string,
): { readonly lift: string; readonly range: Range } | null {
  const [, lift, low, high] = /^(\S+) straight (\d+)-(\d+)$/.exec(track) ?? [];
  return lift ? { lift, range: [Number(low), Number(high)] } : null;
}

/**
 * Reps in reserve to stop at. A barbell bench press or squat keeps at least one, whatever the
 * program says, unless safeties catch the bar.
 */
export function reserveToKeep(exercise: Exercise, gear: Gear): Range {
  const [low, high] = exercise.reserve;
  return needsSafeties(exercise, gear) ? [Math.max(1, low), Math.max(1, high)] : [low, high];
}

/** A bar that may pin the lifter, and nothing to catch it. */
export const needsSafeties = ({ lift }: Exercise, gear: Gear): boolean =>
  !gear.safeties && isUnderTheBar(lift);
