import type { PrescribedExercise } from './prescription.ts';

type Planned = Pick<PrescribedExercise, 'sets' | 'minis' | 'counts' | 'perSide'>;

/** `3 sets of 6 reps`, `2 sets of 9, 7 reps a side`, `13 reps, then mini-sets of 4, 5 sets at most`. */
export function setsWords({ sets, minis, counts, perSide }: Planned): string {
  const side = perSide ? ' a side' : '';
  const aims = sets.map(({ aim }) => aim);
  const [first] = aims;
  if (minis) {
    return `${first} ${counts}${side}, then mini-sets of ${minis.aim}, ${minis.mostSets} sets at most`;
  }
  const same = aims.every((aim) => aim === first);
  const number = `${aims.length} ${aims.length === 1 ? 'set' : 'sets'} of`;
  return `${number} ${same ? first : aims.join(', ')} ${counts}${side}`;
}
