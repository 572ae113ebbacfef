import { nearestKey } from '../../../text/nearest.ts';
import type { Pattern } from '../../../training/lift.ts';
import { CHECK_LIMITS } from '../check-limits.ts';
import type { Checked, CheckRule, Found } from '../check-rule.ts';

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
    find: ({ exercises }) =>
      Object.entries(GROUPS)
        .filter(
          ([, patterns]) =>
            !exercises.some(
              ({ exercise: { lift } }) =>
                lift.kind === 'compound' && patterns.includes(lift.pattern),
            ),
        )
        .map(([pattern]) => ({
          severity: 'advice',
          place: null,
          facts: { pattern },
          fix: `Add one, such as ${EXAMPLES[pattern]}.`,
        })),
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
        .map(({ name, minutes }) => ({
          severity: 'advice',
          place: program.days.find((day) => day.name === name)?.place ?? null,
          facts: { day: name, minutes },
          fix: 'Move an exercise to another day, or do isolation as clusters.',
        })),
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

const EXAMPLES: Readonly<Record<string, string>> = {
  push: 'bench-press or overhead-press',
  pull: 'barbell-row or pull-up',
  legs: 'back-squat or romanian-deadlift',
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
