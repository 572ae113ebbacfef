import { durationRangeText, rangeText } from '../text/durations.ts';
import type { Exercise } from './program.ts';

/** How an exercise of a program is done: `3 × 5–8, 3–5 min`; of a cluster `12–15, then mini-sets, 5 sets at most`. */
export function doneText(exercise: Exercise): string {
  const { from, to } = exercise.rest;
  return exercise.style === 'cluster'
    ? `${rangeText(exercise.range)}, then mini-sets, ${exercise.mostSets} sets at most`
    : `${doneShortText(exercise)}, ${durationRangeText([from, to])}`;
}

/** The same where there is little room. */
export function doneShortText(exercise: Exercise): string {
  const counted = `${rangeText(exercise.range)}${exercise.lift.counts === 'seconds' ? ' s' : ''}`;
  return exercise.style === 'cluster' ? `${counted}, then minis` : `${exercise.sets} × ${counted}`;
}
