import { durationRangeText, rangeText } from '../../../text/durations.ts';
import { EFFORT } from '../../../training/effort.ts';
import { isUnderTheBar, type Lift } from '../../../training/lift.ts';
import { type Exercise, type Range, type StraightExercise, setsOf } from '../../program.ts';
import { CHECK_LIMITS } from '../check-limits.ts';
import { at, type Checked, type CheckRule } from '../check-rule.ts';

const ACSM =
  '3–5 min of rest for heavy work: ACSM 2009, MSSE 41(3):687–708; the range of reps: common practice';
const CLUSTERS = 'common practice';

/** Rules about how a single exercise is done. */
export const EXERCISE_RULES = [
  {
    key: 'compound-reps',
    standing: 'common practice',
    source: ACSM,
    sentence: ({ lift, low, high, to }) =>
      `${lift} is done for ${repsText(low, high)}; ${
        Number(to) > CHECK_LIMITS.compoundReps[1]
          ? `without a load to add, up to ${to} still end hard`
          : 'heavy compounds keep strength best at 4–10, and 1–3 are for practised lifters'
      }.`,
    find: (checked) =>
      compounds(checked)
        .filter(({ range, lift }) => !within(range, repsFor(lift)))
        .map((exercise) => {
          const [low, high] = repsFor(exercise.lift);
          const fix = `Write a range from ${low} to ${high}, such as reps: ${low + 1}-${high - 2}.`;
          return at(exercise, 'advice', { ...reps(exercise), to: high }, fix);
        }),
  },
  {
    key: 'compound-rest',
    standing: 'printed',
    source: ACSM,
    sentence: ({ lift, from, to }) =>
      `${lift} has rests of ${durationRangeText([Number(from), Number(to)])}; compounds want 3–5 min, many reps of a light one at least 90 s.`,
    find: (checked) =>
      compounds(checked)
        .filter(({ rest, range: [low] }) => {
          const isHeavy = low < CHECK_LIMITS.lightReps;
          const wanted = isHeavy ? CHECK_LIMITS.compoundRest : CHECK_LIMITS.lightRest;
          return !within([rest.from, rest.to], wanted);
        })
        .map((exercise) => at(exercise, 'advice', { ...exercise.rest }, 'Write rest: 3-5 min.')),
  },
  {
    key: 'easy-sets',
    standing: 'ours',
    source: 'ours: a hard set ends with at most 4 reps in reserve; print has no agreed line',
    sentence: ({ lift, reserve }) =>
      `${lift} stops with ${reserve} or more in reserve, too far from failure to count as hard sets.`,
    find: ({ exercises }) =>
      exercises
        .filter(({ exercise }) => exercise.reserve[0] > EFFORT.hardSetReserve)
        .map(({ exercise }) =>
          at(exercise, 'advice', { reserve: exercise.reserve[0] }, 'Write reserve: 1-2.'),
        ),
  },
  {
    key: 'cluster-reps',
    standing: 'common practice',
    source: CLUSTERS,
    sentence: ({ lift, low, high }) =>
      `The lead set of ${lift} is ${repsText(low, high)}; clusters work best from 12–15.`,
    find: (checked) =>
      clusters(checked)
        .filter(({ range }) => !within(range, CHECK_LIMITS.clusterLead))
        .map((exercise) => at(exercise, 'advice', reps(exercise), 'Write lead: 12-15.')),
  },
  {
    key: 'cluster-rest',
    standing: 'common practice',
    source: CLUSTERS,
    sentence: ({ lift, from, to }) =>
      `${lift} rests ${durationRangeText([Number(from), Number(to)])} inside its cluster; 10–15 s keep it one long set.`,
    find: (checked) =>
      clusters(checked)
        .filter(({ rest }) => !within([rest.from, rest.to], CHECK_LIMITS.clusterRest))
        .map((exercise) =>
          at(exercise, 'advice', { ...exercise.rest }, 'Write rest: 10-15 s inside cluster.'),
        ),
  },
  {
    key: 'cluster-sets',
    standing: 'common practice',
    source: CLUSTERS,
    sentence: ({ lift, sets }) => `${lift} has a cluster of ${sets} sets; five in all are enough.`,
    find: (checked) =>
      clusters(checked)
        .filter((exercise) => setsOf(exercise) > CHECK_LIMITS.clusterSets)
        .map((exercise) =>
          at(exercise, 'advice', { sets: setsOf(exercise) }, 'Write most_sets: 5 or fewer.'),
        ),
  },
  {
    key: 'cluster-compound',
    standing: 'common practice',
    source: 'common practice; under a bar that can pin the lifter: caution',
    sentence: ({ lift, bar }) =>
      bar
        ? `${lift} is done as a cluster, to failure again and again under a bar that can pin you.`
        : `${lift} is done as a cluster; compounds need long rests to stay heavy.`,
    find: (checked) =>
      clusters(checked)
        .filter(({ lift }) => lift.kind === 'compound')
        .map((exercise) => {
          const bar = isUnderTheBar(exercise.lift);
          const fix = 'Write straight sets, such as sets: 3 and reps: 5-8.';
          return at(exercise, bar ? 'error' : 'advice', { bar }, fix);
        }),
  },
] as const satisfies readonly CheckRule[];

const repsFor = ({ loading }: Lift): Range =>
  loading === 'bodyweight' ? CHECK_LIMITS.bodyReps : CHECK_LIMITS.compoundReps;

const compounds = ({ exercises }: Checked): readonly StraightExercise[] =>
  exercises.flatMap(({ exercise }) =>
    exercise.style === 'straight' &&
    exercise.lift.kind === 'compound' &&
    exercise.lift.counts === 'reps'
      ? [exercise]
      : [],
  );

const clusters = ({ exercises }: Checked): readonly Exercise[] =>
  exercises.map(({ exercise }) => exercise).filter(({ style }) => style === 'cluster');

const reps = ({ range: [low, high] }: Exercise) => ({ low, high });

const repsText = (low: unknown, high: unknown): string =>
  high === 1 ? '1 rep' : `${rangeText([Number(low), Number(high)])} reps`;

const within = ([from, to]: Range, [low, high]: Range): boolean => from >= low && to <= high;
