import type { Mass } from '../training/mass.ts';
import type { LastTime, PrescribedExercise } from './prescription.ts';

/** The loads of last time, each once: `45 lb, 50 lb`. */
export const lastLoads = (
  { load, loads = [load] }: Pick<LastTime, 'load' | 'loads'>,
  words: (load: Mass) => string,
): string => [...new Set(loads)].map(words).join(', ');

/**
 * Reps of the sets of an exercise in a row: `8, 7, 6`, and of a cluster its lead set before its
 * mini-sets: `14, then 5 4`.
 */
export function countsWords(
  counts: readonly (string | number)[],
  style: 'straight' | 'cluster',
  between = ', ',
): string {
  const [lead, ...minis] = counts;
  return style === 'cluster' && minis.length > 0
    ? `${lead}, then ${minis.join(' ')}`
    : counts.join(between);
}

type Planned = Pick<PrescribedExercise, 'sets' | 'minis' | 'counts' | 'perSide'>;

/** `3 sets of 6 reps`, `2 sets of 9, 7 reps a side`, `13 reps, then mini-sets of 4, 5 sets at most`. */
export function setsWords({ sets, minis, counts, perSide }: Planned): string {
  const aims = sets.map(({ aim }) => aim);
  const [first] = aims;
  const isOne = first === 1 && (minis !== null || aims.every((aim) => aim === 1));
  const what = `${isOne ? counts.slice(0, -1) : counts}${perSide ? ' a side' : ''}`;
  if (minis) {
    return `${first} ${what}, then mini-sets of ${minis.aim}, ${minis.mostSets} sets at most`;
  }
  const same = aims.every((aim) => aim === first);
  const number = `${aims.length} ${aims.length === 1 ? 'set' : 'sets'} of`;
  return `${number} ${same ? first : aims.join(', ')} ${what}`;
}
