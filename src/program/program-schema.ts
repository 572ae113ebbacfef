import * as z from 'zod';
import { once } from '../text/once.ts';
import { LOADINGS, MUSCLES, type Muscle, PATTERNS } from '../training/lift.ts';
import { day, oneOf, text, truth } from './written.ts';
import { massOfLoad, rest } from './written-measures.ts';
import { band, decimal, oneOfNumbers, range, whole } from './written-numbers.ts';

const reps = { low: 1, high: 50, example: '5-8' };

const accept = (what: string) =>
  z.record(z.string(), text('Why it is fine as it is.', 200)).meta({
    description: `Findings of the check about ${what} that you have thought about: the rule's key, and your reason.`,
  });

const clusterSchema = once(() =>
  z
    .strictObject({
      lead: range('Reps of the first set.', { ...reps, example: '12-15' }),
      rest: rest('Rest before each mini-set; 10-15 s when left out.', '10-15 s').optional(),
      most_sets: whole('The lead set and its mini-sets together; 5 when left out.', {
        low: 2,
        high: 8,
      }).optional(),
    })
    .meta({
      description:
        'A cluster: one lead set, then mini-sets of the same load after short rests (rest-pause, in gyms; common practice).',
    }),
);

export const exerciseSchema = once(() =>
  z
    .strictObject({
      lift: text('Key of a lift, from the catalogue or from `lifts` below.', 60),
      sets: whole('How many straight sets.', { low: 1, high: 10 }).optional(),
      reps: range('Reps of each set, lowest and highest.', reps).optional(),
      seconds: range('In place of reps, for a hold.', {
        low: 5,
        high: 600,
        example: '30-60',
      }).optional(),
      cluster: clusterSchema().optional(),
      rest: rest(
        'Rest between sets; when left out 3-5 min for compounds, 1.5-2 min for isolation.',
        '3-5 min',
      ).optional(),
      reserve: range(
        'Reps in reserve to stop at; when left out 1-2 for straight compounds, 0-1 for isolation and clusters.',
        { low: 0, high: 5, example: '1-2' },
      ).optional(),
      start: massOfLoad(
        'Load of the first session: total on the bar, one dumbbell, the stack, or what is added to the body (below 0 for assistance).',
        [80, '45 lb'],
      ).optional(),
      bar: text('Name of the bar in your gear; the first one when left out.', 40).optional(),
      step: massOfLoad('Loads go by this step in place of the gear you own.', [
        2.5,
        '5 lb',
      ]).optional(),
      sides: oneOf('each: one side at a time, reps are for one side. both: both at once.', [
        'each',
        'both',
      ]).optional(),
      track: text('Exercises of one lift with the same track progress as one.', 40).optional(),
      pair: text(
        'Two or three exercises of a day with the same word here alternate their sets: one lift rests while the other works.',
        20,
      ).optional(),
      warm_up: truth('false: no warm-up sets are shown.').optional(),
      note: text('Shown with the exercise.', 200).optional(),
      accept: accept('this exercise').optional(),
    })
    .meta({
      description: 'A lift as it is done on this day: straight sets, or a cluster.',
      anyOf: [
        { required: ['cluster'] },
        { required: ['sets', 'reps'] },
        { required: ['sets', 'seconds'] },
      ],
    }),
);

const trains = () => {
  const share = oneOfNumbers('1 where the lift trains it directly, 0.5 where it helps.', [1, 0.5]);
  return z
    .strictObject(
      Object.fromEntries(MUSCLES.map((muscle) => [muscle, share.optional()])) as Record<
        Muscle,
        z.ZodOptional<typeof share>
      >,
    )
    .meta({ description: 'The muscles that it trains.' });
};

export const liftSchema = once(() =>
  z
    .strictObject({
      name: text('What screens call it.', 60).optional(),
      loading: oneOf('What it is loaded with.', LOADINGS).optional(),
      kind: oneOf('Over several joints, or one.', ['compound', 'isolation']).optional(),
      pattern: oneOf('The movement.', PATTERNS).optional(),
      trains: trains().optional(),
      per_side: truth('One side at a time.').optional(),
      counts: oneOf('What is counted in a set.', ['reps', 'seconds']).optional(),
      hands: oneOfNumbers('Dumbbells held at once.', [1, 2]).optional(),
      body_share: decimal('Share of body weight that is lifted.', { low: 0, high: 1 }).optional(),
      form: text('One sentence on how to do it.', 200).optional(),
      caution: text('One sentence where it can hurt.', 200).optional(),
    })
    .meta({
      description:
        'A lift of your own needs name, loading, kind and trains. One of the catalogue needs only what you change.',
    }),
);

/** A program with each exercise and each lift of its own read by the schemas given. */
function programOf<E extends z.ZodType, L extends z.ZodType>(exercise: E, lift: L) {
  const daySchema = z.strictObject({
    name: text('What the day is called, such as A.', 30),
    exercises: z
      .array(exercise)
      .min(1)
      .max(15)
      .meta({ description: 'In the order they are done.' }),
  });
  return z.strictObject({
    format: oneOfNumbers('Version of this format.', [1]).optional(),
    name: text('What the program is called.', 60),
    unit: oneOf('Unit of every bare number that is a load.', ['kg', 'lb']),
    aim: oneOf('What the program is for; cut when left out.', [
      'cut',
      'maintain',
      'build',
    ]).optional(),
    days_per_week: whole('How many days you train in a week; 3 when left out.', {
      low: 1,
      high: 7,
    }).optional(),
    rest: rest(
      'Rest between the last set of an exercise and the first of the next; 2-3 min when left out.',
      '2-3 min',
    ).optional(),
    rate: band('Wanted loss in percent of body weight a week; 0.5-1.0 when left out.', {
      low: 0,
      high: 2,
      example: '0.5-1.0',
    }).optional(),
    cut_from: day(
      'First day of the cut; the first session with `aim: cut` when left out.',
    ).optional(),
    goal_weight: massOfLoad('Body weight that the cut leads to.', [75, '165 lb']).optional(),
    goal_date: day('Day that the cut leads to.').optional(),
    monthly_cycle: truth(
      'true: body weight follows a monthly cycle; weeks are compared with those four weeks before.',
    ).optional(),
    days: z.array(daySchema).min(1).max(14).meta({
      description: 'The training days, done one after the other, then from the first again.',
    }),
    lifts: z
      .record(z.string(), lift)
      .meta({ description: 'Lifts of your own, by key, and changes to lifts of the catalogue.' })
      .optional(),
    accept: accept('the whole program').optional(),
  });
}

/** A whole program file, for editors. */
export const programSchema = once(() => programOf(exerciseSchema(), liftSchema()));

/** A program file but for its exercises and lifts, which are read one by one. */
export const headSchema = once(() => programOf(z.unknown(), z.unknown()));

export type WrittenExercise = z.output<ReturnType<typeof exerciseSchema>>;
export type WrittenLift = z.output<ReturnType<typeof liftSchema>>;
