import type { Exercise } from '../program/program.ts';
import type { Mass } from '../training/mass.ts';
import { predictedAims } from './aims.ts';
import type { Bout } from './bout.ts';
import { exerciseFacts } from './case.ts';
import { type ExerciseDraft, MOVED } from './draft.ts';
import { OF_SETS } from './light-gear.ts';
import { madeLoadable, type Rack } from './rack.ts';
import { because } from './rules/progression-rules.ts';
import { trackOf } from './track.ts';

/**
 * The most that each exercise of a day may be loaded with beside the others of its lift and range,
 * which the loads of all are for; null where nothing bounds it. Each goes by its own results, but the
 * last sets are the most tired ones: none is heavier than one before it, unless the program starts it
 * so, and those that the program starts alike share one load. Ours.
 */
export function sharedLoads(
  exercises: readonly Exercise[],
  loads: readonly (Mass | null)[],
): readonly (Mass | null)[] {
  const kin = exercises.map(kinOf);
  return exercises.map(({ start }, at) => {
    const bounds = exercises.flatMap((other, place) => {
      const load = loads[place] ?? null;
      if (load === null || place === at || kin[place] !== kin[at]) return [];
      const isAlike = start !== null && other.start === start;
      const mayRise = start !== null && other.start !== null && other.start < start;
      return isAlike || (place < at && !mayRise) ? [load] : [];
    });
    const own = loads[at] ?? null;
    const [least] = bounds.sort((one, other) => one - other);
    return least !== undefined && own !== null && least < own ? least : null;
  });
}

/** A day's second exercise of a kind has a track of its own, numbered. */
const kinOf = (exercise: Exercise): string => {
  const { range, bar, step } = exercise;
  return JSON.stringify([trackOf(exercise).replace(/ \(\d+\)$/, ''), range, bar, step]);
};

/** The draft at no more than the load that it shares; after pain the question stands as it is. */
export function onSharedLoad(
  exercise: Exercise,
  draft: ExerciseDraft,
  rack: Rack,
  last: Bout | undefined,
  most: Mass | null,
): ExerciseDraft {
  const { load: own, reserve, aims, move } = draft;
  if (most === null || own === null || draft.askPain) return draft;
  const load = madeLoadable(rack, most);
  if (load >= own) return draft;
  const timed = exercise.lift.counts === 'seconds';
  const question = last && {
    ...{ last, sets: aims.length, range: exercise.range },
    ...{ target: exercise.range[1], reserve, timed },
  };
  const before = last?.load ?? own;
  const moved = load > before ? 'up' : load < before ? 'ease' : 'hold';
  return {
    ...draft,
    move: MOVED.has(move) ? moved : move,
    load,
    aims: question ? predictedAims(question, rack, load) : aims,
    why: [
      because('one-load-a-day', exerciseFacts(exercise, { load })),
      ...draft.why.filter(({ rule }) => OF_SETS.has(rule)),
    ],
  };
}
