import { andText, howMany, keyWords } from '../../../text/words.ts';
import type { Muscle } from '../../../training/lift.ts';
import { CHECK_LIMITS } from '../check-limits.ts';
import type { Checked, CheckRule, Found } from '../check-rule.ts';
import type { MuscleFigures } from '../figures.ts';

const SETS_SOURCE =
  'common practice in a cut: 6–10. At least 4 as a minimum with loads of 6–15 reps (Iversen 2021, Sports Med 51(10):2079–2095), about 10 for growth (ACSM 2026); in an energy deficit evidence on the best number is insufficient (Roth 2022, Eur J Appl Physiol 122:1129–1151). Counted 1 direct, 0.5 indirect (Pelland 2024)';

/** Rules about how much each muscle does in the average week. */
export const VOLUME_RULES = [
  {
    key: 'few-hard-sets',
    standing: 'common practice',
    source: SETS_SOURCE,
    sentence: ({ muscle, sets, low }) =>
      `${hardSets(sets)} a week for the ${keyWords(String(muscle))}; at least ${low} is the aim.`,
    find: (checked) =>
      muscles(
        checked,
        ({ hardSets, directDays }) =>
          directDays > 0 && hardSets < CHECK_LIMITS.fewSets[checked.program.aim],
      ).map((figures) => ({
        ...placed(checked, figures.muscle),
        severity: 'advice',
        facts: volumeFacts(checked, figures),
        fix: addSets(checked, figures),
      })),
  },
  {
    key: 'many-hard-sets',
    standing: 'common practice',
    source: SETS_SOURCE,
    sentence: ({ muscle, sets, high }) =>
      `${hardSets(sets)} a week for the ${keyWords(String(muscle))}; over ${high} is more than most recover from.`,
    find: (checked) =>
      muscles(checked, ({ hardSets }, [, high]) => hardSets > high).map((figures) => {
        const [, high] = CHECK_LIMITS.weeklySets[checked.program.aim];
        return {
          ...placed(checked, figures.muscle),
          severity: figures.hardSets > high * CHECK_LIMITS.farTooMany ? 'error' : 'advice',
          facts: volumeFacts(checked, figures),
          fix: takeSets(checked, figures),
        };
      }),
  },
  {
    key: 'rare-muscle',
    standing: 'printed',
    source: 'at least two days: Schoenfeld 2016; ACSM 2026',
    sentence: ({ muscle, days }) =>
      `Work for the ${keyWords(String(muscle))} comes on ${howMany(days, 'day')} a week; on two days the same work does more.`,
    find: (checked) =>
      muscles(checked, ({ days, directDays }) => directDays > 0 && days < CHECK_LIMITS.fewDays).map(
        (figures) => ({
          ...placed(checked, figures.muscle),
          severity: 'advice',
          facts: { muscle: figures.muscle, days: figures.days },
          fix: `Give some of the work for the ${keyWords(figures.muscle)} to another day.`,
        }),
      ),
  },
  {
    key: 'frequent-muscle',
    standing: 'ours',
    source: 'ours: three days at most, so that a day of rest lies between',
    sentence: ({ muscle, days }) =>
      `Direct work for the ${keyWords(String(muscle))} comes on ${days} days a week; up to three leave a day of rest between.`,
    find: (checked) =>
      muscles(checked, ({ directDays }) => directDays > CHECK_LIMITS.muscleDays[1]).map(
        (figures) => ({
          ...placed(checked, figures.muscle),
          severity: 'advice',
          facts: { muscle: figures.muscle, days: figures.directDays },
          fix: `Put the work for the ${keyWords(figures.muscle)} together on two or three days.`,
        }),
      ),
  },
  {
    key: 'no-work',
    standing: 'common practice',
    source: 'common practice: a week trains every large muscle',
    sentence: ({ muscles }) => `Nothing trains the ${muscles}.`,
    find: ({ figures }) => {
      const idle = figures.muscles.filter(
        ({ muscle, hardSets }) => hardSets === 0 && LARGE.some((one) => one === muscle),
      );
      const [first] = idle;
      if (!first) return [];
      const muscles = andText(idle.map(({ muscle }) => keyWords(muscle)));
      const example = EXAMPLES[first.muscle];
      return [
        {
          severity: 'advice',
          place: null,
          facts: { muscles },
          fix: example ? `Add lifts for them, such as ${example}.` : 'Add lifts for them.',
        },
      ];
    },
  },
  {
    key: 'no-direct-work',
    standing: 'common practice',
    source: 'common practice: compounds hardly reach the side delts and the abs',
    sentence: ({ muscles }) =>
      `Nothing trains the ${muscles} directly, and compounds hardly reach them.`,
    find: ({ figures }) => {
      const missing = ISOLATED.filter(
        (muscle) => !figures.muscles.some((each) => each.muscle === muscle && each.directDays > 0),
      );
      if (missing.length === 0) return [];
      const muscles = andText(missing.map((muscle) => keyWords(muscle)));
      const lifts = andText(missing.map((muscle) => EXAMPLES[muscle] ?? muscle));
      const fix = `Add clusters of ${lifts} on two days: one takes two minutes.`;
      return [{ severity: 'advice', place: null, facts: { muscles }, fix }];
    },
  },
  {
    key: 'daily-cluster',
    standing: 'ours',
    source: 'ours: a cluster of five counts about 3.5 hard sets, so three a week pass 10',
    sentence: ({ muscle, days }) =>
      `Clusters for the ${keyWords(String(muscle))} come on ${days} days a week; two days are enough for clusters of more than three sets.`,
    find: (checked) => {
      const { clusterDays, smallCluster } = CHECK_LIMITS;
      return checked.figures.muscles.flatMap(({ muscle }): Found[] => {
        const large = checked.exercises.filter(
          ({ exercise }) =>
            exercise.style === 'cluster' &&
            exercise.mostSets > smallCluster &&
            exercise.lift.trains[muscle] === 1,
        );
        const dayNames = new Set(large.map(({ day }) => day));
        const days = Math.round(dayNames.size * checked.perWeek * 10) / 10;
        const last = large[large.length - 1]?.exercise;
        if (days <= clusterDays || !last) return [];
        return [
          {
            severity: 'advice',
            place: last.place,
            exercise: last,
            facts: { muscle, days },
            fix: `Write most_sets: ${smallCluster} for them, or keep two of the days.`,
          },
        ];
      });
    },
  },
] as const satisfies readonly CheckRule[];

const hardSets = (count: unknown): string => howMany(count, 'hard set');

const EXAMPLES: Readonly<Partial<Record<Muscle, string>>> = {
  'side-delts': 'dumbbell-side-raise',
  abs: 'crunch',
  chest: 'bench-press or push-up',
  'front-delts': 'overhead-press',
  lats: 'barbell-row or pull-up',
  'upper-back': 'barbell-row',
  glutes: 'romanian-deadlift',
  quads: 'back-squat or split-squat',
  hamstrings: 'romanian-deadlift',
};

/** Calves may be left out on purpose, and arms work in every press and pull. */
const LARGE: readonly Muscle[] = [
  'chest',
  'front-delts',
  'lats',
  'upper-back',
  'glutes',
  'quads',
  'hamstrings',
];

const ISOLATED = ['side-delts', 'abs'] as const satisfies readonly Muscle[];

function muscles(
  { figures, program }: Checked,
  isOff: (figures: MuscleFigures, band: readonly [number, number]) => boolean,
): readonly MuscleFigures[] {
  const band = CHECK_LIMITS.weeklySets[program.aim];
  return figures.muscles.filter((each) => isOff(each, band));
}

function volumeFacts({ program }: Checked, { muscle, hardSets }: MuscleFigures) {
  const [low, high] = CHECK_LIMITS.weeklySets[program.aim];
  return { muscle, sets: hardSets, low, high };
}

/** The first exercise that trains the muscle directly, else the first that trains it at all. */
function placed({ exercises }: Checked, muscle: Muscle): Pick<Found, 'place' | 'exercise'> {
  const found =
    exercises.find(({ exercise }) => exercise.lift.trains[muscle] === 1) ??
    exercises.find(({ exercise }) => exercise.lift.trains[muscle] !== undefined);
  return found ? { place: found.exercise.place, exercise: found.exercise } : { place: null };
}

function addSets(checked: Checked, { muscle, hardSets }: MuscleFigures): string {
  const [low] = CHECK_LIMITS.weeklySets[checked.program.aim];
  const missing = Math.ceil((low - hardSets) / checked.perWeek);
  const straight = checked.exercises.find(
    ({ exercise }) => exercise.style === 'straight' && exercise.lift.trains[muscle] === 1,
  );
  return straight
    ? `Add ${howMany(missing, 'set')}, to ${straight.exercise.lift.name} on day ${straight.day} or of another lift for the ${keyWords(muscle)}.`
    : `Add ${howMany(missing, 'set')} of a lift that trains the ${keyWords(muscle)} directly.`;
}

function takeSets(checked: Checked, { muscle, hardSets }: MuscleFigures): string {
  const [, high] = CHECK_LIMITS.weeklySets[checked.program.aim];
  const spare = Math.ceil((hardSets - high) / checked.perWeek);
  const names = checked.exercises
    .filter(({ exercise }) => exercise.lift.trains[muscle] === 1)
    .map(({ exercise }) => exercise.lift.name);
  const from = [...new Set(names)].slice(0, 3).join(', ');
  return `Take ${howMany(spare, 'set')} off${from ? `, from ${from}` : ''}.`;
}
