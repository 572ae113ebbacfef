import type { DoneExercise } from '../progression/past.ts';
import type { PrescribedExercise, Prescription } from '../progression/prescription.ts';
import { countsWords } from '../progression/set-words.ts';
import type { SetNumbers, SetPlace } from '../session/events.ts';
import type { DoneSet } from '../session/state.ts';
import { clockText } from '../text/durations.ts';
import { howMany } from '../text/words.ts';
import { basisOf } from '../training/lift.ts';
import { loadWords } from '../training/load-words.ts';
import { type Mass, massNumber, type Unit } from '../training/mass.ts';

/** Milliseconds as a clock that runs down shows them, rounded up to the second: `m:ss`, `h:mm:ss`. */
export const countdownText = (ms: number): string => clockText(ms / 1000);

/** From so many minutes on no single one counts: a session that lay open is told in hours, then in days. */
const IN_HOURS = 180;
const IN_DAYS = 2880;

/** Minutes that went by: `31 min`, `5 h`, `4 days`. */
export function minutesText(minutes: number): string {
  const whole = Math.max(0, Math.round(minutes));
  if (whole < IN_HOURS) return `${whole} min`;
  return whole < IN_DAYS ? `${Math.round(whole / 60)} h` : `${Math.round(whole / 1440)} days`;
}

/** Seconds as the lifter says them: `12 s`, `3 min`, `2 min 30 s`, `5 h`. */
export function secondsText(seconds: number): string {
  if (seconds < 90) return `${seconds} s`;
  if (seconds >= IN_HOURS * 60) return minutesText(seconds / 60);
  const minutes = `${Math.floor(seconds / 60)} min`;
  return seconds % 60 === 0 ? minutes : `${minutes} ${seconds % 60} s`;
}

/** A load in the words of its basis: `80 kg`, `12 kg a hand`, `body weight + 10 kg`. */
export const loadText = (load: Mass, exercise: DoneExercise, unit: Unit): string =>
  loadWords(load, basisOf(exercise), unit);

/** The load for block digits: `80`, `+10`, `-5`; empty for body weight alone. */
export function loadDigits(load: Mass, exercise: DoneExercise, unit: Unit): string {
  const digits = massNumber(load, unit);
  if (basisOf(exercise) !== 'added') return digits;
  if (load === 0) return '';
  return load > 0 ? `+${digits}` : digits;
}

/** `6 reps`, `1 rep`, `45 seconds`. */
export const countText = (count: number, exercise: DoneExercise): string =>
  exercise.counts === 'seconds' ? howMany(count, 'second') : howMany(count, 'rep');

/** `6 reps, 2 in reserve`. */
export function numbersText(numbers: SetNumbers, exercise: DoneExercise): string {
  const count = countText(numbers.count, exercise);
  if (numbers.failed) return `${count}, the next one failed`;
  return numbers.reserve === null ? count : `${count}, ${numbers.reserve} in reserve`;
}

/** `8 (2), 8 (1), 7 reps (in reserve)`; without brackets where no reserve was told; of a cluster `14 (0), then 5 4 reps`. */
export function repsText(
  sets: readonly { readonly count: number; readonly reserve: number | null }[],
  { counts, style }: Pick<PrescribedExercise, 'counts' | 'style'>,
): string {
  const pairs = sets.map(({ count, reserve }) =>
    reserve === null ? count : `${count} (${reserve})`,
  );
  const told = sets.some(({ reserve }) => reserve !== null);
  return `${countsWords(pairs, style)} ${counts}${told ? ' (in reserve)' : ''}`;
}

/** `saved as planned: 6 reps, 2 in reserve`; of a hold, which the clock counts, `saved as timed: 40 seconds`. */
export const savedText = (set: DoneSet, exercise: DoneExercise): string => {
  const how = exercise.counts === 'seconds' ? 'as timed' : 'as planned';
  const saved = set.entered === 'as-planned' ? `saved ${how}` : 'saved';
  return `${saved}: ${numbersText(set, exercise)}`;
};

/** Which set of how many: `set 2 of 3`, `warm-up 1 of 3`, `lead set`, `mini-set 2 of 4`. */
export function placeText(place: SetPlace, of: number): string {
  if (place.role === 'lead') return 'lead set';
  const name = { 'warm-up': 'warm-up', straight: 'set', mini: 'mini-set' }[place.role];
  return `${name} ${place.index + 1} of ${of}`;
}

/** What a day that was cut to the time there is goes without, in a sentence; the reasons stand elsewhere. */
export function shortText({ minutes, cut }: NonNullable<Prescription['short']>): string {
  const named = (key: string) =>
    cut.filter(({ rule }) => rule === key).map(({ facts }) => String(facts.name));
  const out = named('short-left-out');
  const fewer = named('short-sets');
  const inTurn = cut.find(({ rule }) => rule === 'short-pairs');
  const what = [
    ...(out.length > 0 ? [`without ${out.join(', ')}`] : []),
    ...(fewer.length > 0 ? [`fewer sets of ${fewer.join(', ')}`] : []),
    'shorter rests',
    ...(inTurn ? [`in turn ${inTurn.facts.names}`] : []),
  ];
  return `Cut to ${minutes} min: ${what.join('; ')}.`;
}
