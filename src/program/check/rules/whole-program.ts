import { nearestKey } from '../../../text/nearest.ts';
import { andText, keyWords } from '../../../text/words.ts';
import { directMuscles, type Lift, type Pattern } from '../../../training/lift.ts';
import { CHECK_LIMITS } from '../check-limits.ts';
import { at, type Checked, type CheckRule, type Found } from '../check-rule.ts';
import { missingFor } from './gear.ts';

/** Rules about the program as a whole and its days. */
export const WHOLE_PROGRAM_RULES = [
  {
    key: 'many-days',
    standing: 'common practice',
    source: 'common practice: three days, four at most, and not on more than two days running',
    sentence: ({ days }) =>
      `${days} training days a week put more than two of them in a row; in a cut three or four leave time to recover.`,
    find: ({ program }) => {
      const { daysPerWeek: days } = program;
      if (days <= CHECK_LIMITS.mostDays) return [];
      const severity = days >= CHECK_LIMITS.daysWithoutRest ? 'error' : 'advice';
      return [{ severity, place: null, facts: { days }, fix: 'Write days_per_week: 3 or 4.' }];
    },
  },
  {
    key: 'missing-pattern',
    standing: 'printed',
    source: 'a compound for push, pull and legs: Iversen 2021, Sports Med 51(10):2079–2095',
    sentence: ({ pattern }) => `No compound lift ${PATTERN_WORDS[String(pattern)] ?? pattern}.`,
    find: ({ exercises, gear, program: { lifts } }) =>
      Object.entries(GROUPS)
        .filter(
          ([, patterns]) =>
            !exercises.some(
              ({ exercise: { lift } }) =>
                lift.kind === 'compound' && patterns.includes(lift.pattern),
            ),
        )
        .map(([pattern]) => {
          const examples = EXAMPLES[pattern] ?? [];
          const able = examples.filter((key) => {
            const lift = lifts.get(key);
            return lift && missingFor({ lift, step: null }, gear) === null;
          });
          const fix = `Add one, such as ${able.slice(0, 2).join(' or ')}.`;
          return { severity: 'advice', place: null, facts: { pattern }, fix };
        }),
  },
  {
    key: 'long-session',
    standing: 'ours',
    source: 'ours; set time: Marshall 2012, J Sci Med Sport 15(2):153–158',
    sentence: ({ day, minutes }) =>
      `Day ${day} takes about ${minutes} minutes, longer than most keep up.`,
    find: ({ figures, program }) =>
      figures.days
        .filter(({ minutes }) => minutes > CHECK_LIMITS.longSession[program.aim])
        .map(({ name, minutes, place }) => ({
          severity: 'advice',
          place,
          facts: { day: name, minutes },
          fix: 'Move an exercise to another day, or do isolation as clusters.',
        })),
  },
  {
    key: 'hard-on-the-back',
    standing: 'common practice',
    source: 'common practice',
    sentence: ({ lifts, days }) =>
      `${lifts} ${String(lifts).includes(' and ') ? 'go' : 'goes'} to failure, on ${days} days a week in all; what is hard on the back keeps its form with a rep or two in reserve.`,
    find: ({ exercises, perWeek }) => {
      const hard = exercises.filter(
        ({ exercise: { lift, reserve } }) =>
          lift.kind === 'compound' &&
          lift.joints.includes('back') &&
          ['squat', 'hinge'].includes(lift.pattern) &&
          reserve[1] === 0,
      );
      const days = Math.round(new Set(hard.map(({ day }) => day)).size * perWeek * 10) / 10;
      const [first] = hard;
      if (!first || days < CHECK_LIMITS.failureDays) return [];
      const lifts = andText([...new Set(hard.map(({ exercise }) => exercise.lift.name))]);
      return [at(first.exercise, 'advice', { lifts, days }, 'Write reserve: 1-2.')];
    },
  },
  {
    key: 'lift-order',
    standing: 'common practice',
    source: 'common practice: what is heaviest is done while fresh',
    sentence: ({ lift, before, day }) =>
      `${lift} comes before ${before} on day ${day}, which is heavier and wants to be done fresh.`,
    find: ({ program }) =>
      program.days.flatMap(({ name, exercises }) => {
        const first = exercises.findIndex(({ lift }) => lift.kind === 'isolation');
        const later = exercises.find(
          ({ lift, style }, index) =>
            first >= 0 && index > first && lift.kind === 'compound' && style === 'straight',
        );
        const early = exercises[first];
        if (!early || !later || !tires(early.lift, later.lift)) return [];
        const before = later.lift.name;
        return [at(early, 'advice', { before, day: name }, `Put it behind ${before}.`)];
      }),
  },
  {
    key: 'one-movement',
    standing: 'common practice',
    source: 'common practice',
    sentence: ({ count, movement, day }) =>
      `Day ${day} has ${count} lifts of one movement (${movement}); from the third on they add fatigue more than work.`,
    find: ({ program }) =>
      program.days.flatMap(({ name, exercises }) => {
        const compounds = exercises.filter(({ lift }) => lift.kind === 'compound');
        const patterns = [...new Set(compounds.map(({ lift }) => lift.pattern))];
        return patterns.flatMap((pattern) => {
          const alike = compounds.filter(({ lift }) => lift.pattern === pattern);
          const third = alike[CHECK_LIMITS.liftsOfOneMovement];
          if (!third) return [];
          const facts = { count: alike.length, movement: keyWords(pattern), day: name };
          return [
            at(third, 'advice', facts, 'Keep two, with more sets, or move one to another day.'),
          ];
        });
      }),
  },
  {
    key: 'unknown-accept',
    standing: 'ours',
    source: 'ours',
    sentence: ({ key }) => `"accept" names ${key}, and no rule has that name.`,
    find: (checked) =>
      acceptedKeys(checked)
        .filter(({ key }) => !checked.known.includes(key))
        .map(({ key, ...where }) => {
          const near = nearestKey(key, checked.known);
          const fix = near ? `Did you mean ${near}?` : 'Take it out; check prints the names.';
          return { ...where, severity: 'error', facts: { key }, fix };
        }),
  },
] as const satisfies readonly CheckRule[];

/** A heavy lift of the whole body suffers from anything before it, another only from its own muscles. */
const tires = (early: Lift, later: Lift): boolean =>
  later.pattern === 'squat' ||
  later.pattern === 'hinge' ||
  directMuscles(early.trains).some((muscle) => later.trains[muscle] !== undefined);

const GROUPS: Readonly<Record<string, readonly Pattern[]>> = {
  push: ['horizontal-push', 'vertical-push'],
  pull: ['horizontal-pull', 'vertical-pull'],
  legs: ['squat', 'hinge', 'lunge'],
};

const PATTERN_WORDS: Readonly<Record<string, string>> = {
  push: 'pushes',
  pull: 'pulls',
  legs: 'trains the legs',
};

/** From those that need most gear to those that need none. */
const EXAMPLES: Readonly<Record<string, readonly string[]>> = {
  push: ['bench-press', 'overhead-press', 'dumbbell-bench-press', 'push-up', 'pike-push-up'],
  pull: ['barbell-row', 'pull-up', 'dumbbell-row', 'band-row', 'inverted-row'],
  legs: ['back-squat', 'romanian-deadlift', 'goblet-squat', 'split-squat', 'bodyweight-squat'],
};

function acceptedKeys({ program, exercises }: Checked) {
  const ofProgram = Object.keys(program.accept).map(
    (key): Pick<Found, 'place'> & { key: string } => ({ key, place: null }),
  );
  const ofExercises = exercises.flatMap(({ exercise }) =>
    Object.keys(exercise.accept).map((key) => ({ key, place: exercise.place, exercise })),
  );
  return [...ofProgram, ...ofExercises];
}
