import type { Lift, Muscle, Pattern } from '../../training/lift.ts';

/**
 * Lifts of a movement that a draft takes by itself, the first that can be done before the others.
 * Ours: lifts that most can learn alone, that take load in small steps and last for years; those
 * further behind spare a joint or need less. Any other lift comes in when the lifter asks for it.
 */
export const MOVEMENTS = {
  squat: [
    'back-squat',
    'front-squat',
    'leg-press',
    'hack-squat',
    'dumbbell-squat',
    'goblet-squat',
    'box-squat',
  ],
  lunge: [
    'split-squat',
    'reverse-lunge',
    'barbell-split-squat',
    'single-leg-press',
    'step-up',
    'bodyweight-split-squat',
    'bodyweight-squat',
  ],
  hinge: [
    'romanian-deadlift',
    'deadlift',
    'dumbbell-romanian-deadlift',
    'cable-pull-through',
    'hip-thrust',
    'single-leg-romanian-deadlift',
    'single-leg-hip-thrust',
  ],
  'light hinge': [
    'leg-curl',
    'seated-leg-curl',
    'sliding-leg-curl',
    'single-leg-romanian-deadlift',
    'dumbbell-leg-curl',
    'hip-thrust',
    'single-leg-hip-thrust',
  ],
  'horizontal push': [
    'bench-press',
    'dumbbell-bench-press',
    'machine-chest-press',
    'incline-dumbbell-press',
    'dip',
    'dumbbell-floor-press',
    'push-up',
    'feet-elevated-push-up',
  ],
  'vertical push': [
    'overhead-press',
    'dumbbell-shoulder-press',
    'machine-shoulder-press',
    'pike-push-up',
  ],
  'horizontal pull': [
    'barbell-row',
    'chest-supported-row',
    'dumbbell-row',
    'cable-row',
    'machine-row',
    'inverted-row',
    'band-row',
  ],
  'vertical pull': ['pull-up', 'lat-pulldown', 'neutral-grip-pull-up', 'chin-up', 'band-pulldown'],
} as const satisfies Readonly<Record<string, readonly string[]>>;

export type Movement = keyof typeof MOVEMENTS;

/** What stands in for a compound lift of a pattern, the first rather than the next. */
export const MOVEMENTS_LIKE: Readonly<Partial<Record<Pattern, readonly Movement[]>>> = {
  squat: ['squat', 'lunge'],
  lunge: ['lunge', 'squat'],
  hinge: ['hinge'],
  'horizontal-push': ['horizontal push'],
  'vertical-push': ['vertical push'],
  'horizontal-pull': ['horizontal pull'],
  'vertical-pull': ['vertical pull'],
};

/** A place in a week: the movements that may fill it, the first rather than the next. */
export interface Slot {
  readonly day: number;
  readonly movements: readonly Movement[];
}

interface Skeleton {
  /** Each movement once, on the day it belongs to. */
  readonly once: readonly Slot[];
  /** What comes a second time, the most pressing first. */
  readonly again: readonly Slot[];
}

const slot = (day: number, ...movements: readonly Movement[]): Slot => ({ day, movements });

/**
 * What stands on which day. Two and three days are the whole body each, four are upper and lower
 * body in turn. The week has one hinge that is hard on the back, and it opens its day. Common
 * practice; which day takes what: ours.
 */
export const SKELETONS: Readonly<Record<2 | 3 | 4, Skeleton>> = {
  2: {
    once: [
      slot(0, 'squat', 'lunge'),
      slot(1, 'hinge'),
      slot(0, 'horizontal push'),
      slot(1, 'vertical pull'),
      slot(0, 'horizontal pull'),
      slot(1, 'vertical push'),
    ],
    again: [
      slot(1, 'lunge', 'squat'),
      slot(0, 'light hinge'),
      slot(1, 'horizontal push'),
      slot(1, 'horizontal pull'),
      slot(0, 'vertical pull'),
    ],
  },
  3: {
    once: [
      slot(0, 'squat', 'lunge'),
      slot(1, 'hinge'),
      slot(0, 'horizontal push'),
      slot(1, 'vertical pull'),
      slot(0, 'horizontal pull'),
      slot(1, 'vertical push'),
    ],
    again: [
      slot(2, 'lunge', 'squat'),
      slot(2, 'horizontal push'),
      slot(0, 'light hinge'),
      slot(2, 'horizontal pull'),
      slot(2, 'vertical push'),
    ],
  },
  4: {
    once: [
      slot(1, 'squat', 'lunge'),
      slot(3, 'hinge'),
      slot(0, 'horizontal push'),
      slot(2, 'vertical pull'),
      slot(0, 'horizontal pull'),
      slot(2, 'vertical push'),
    ],
    again: [
      slot(3, 'lunge', 'squat'),
      slot(1, 'light hinge'),
      slot(2, 'horizontal push'),
      slot(2, 'horizontal pull'),
      slot(0, 'vertical push'),
      slot(0, 'vertical pull'),
    ],
  },
};

/** Lifts for one muscle alone, in the order in which muscles without direct work are seen to. */
export const DIRECT: Readonly<Partial<Record<Muscle, readonly string[]>>> = {
  'side-delts': [
    'dumbbell-side-raise',
    'cable-side-raise',
    'machine-side-raise',
    'band-side-raise',
    'upright-row',
  ],
  abs: ['cable-crunch', 'reverse-crunch', 'crunch', 'plank'],
  quads: ['leg-extension', 'step-up'],
  hamstrings: [
    'leg-curl',
    'seated-leg-curl',
    'sliding-leg-curl',
    'single-leg-romanian-deadlift',
    'dumbbell-leg-curl',
  ],
  glutes: ['hip-thrust', 'single-leg-hip-thrust', 'hip-abduction'],
  chest: ['cable-fly', 'dumbbell-fly', 'machine-fly'],
  lats: ['straight-arm-pulldown', 'dumbbell-pullover'],
  'upper-back': ['dumbbell-shrug', 'barbell-shrug'],
  'front-delts': ['dumbbell-front-raise'],
  triceps: [
    'cable-pushdown',
    'overhead-triceps-extension',
    'dumbbell-triceps-extension',
    'dumbbell-kickback',
    'triceps-extension',
    'band-pushdown',
    'close-push-up',
  ],
  biceps: ['dumbbell-curl', 'cable-curl', 'hammer-curl', 'barbell-curl', 'band-curl', 'chin-up'],
  calves: ['machine-calf-raise', 'dumbbell-calf-raise', 'single-leg-calf-raise'],
};

/** Movements whose compounds train a muscle directly. */
export const BY_COMPOUNDS: Readonly<Partial<Record<Muscle, readonly Movement[]>>> = {
  chest: ['horizontal push'],
  'front-delts': ['vertical push'],
  lats: ['horizontal pull', 'vertical pull'],
  'upper-back': ['horizontal pull'],
  quads: ['squat', 'lunge'],
  glutes: ['squat', 'lunge', 'hinge'],
  hamstrings: ['hinge'],
};

/** Of four days these belong to the lower body's, beside the legs. */
export const LOWER_BODY: readonly Muscle[] = [
  'glutes',
  'quads',
  'hamstrings',
  'adductors',
  'calves',
  'lower-back',
  'abs',
];

/** Those whose sets are filled up before the others'. */
export const LARGE: readonly Muscle[] = [
  'quads',
  'hamstrings',
  'glutes',
  'chest',
  'lats',
  'upper-back',
];

/** Those that compounds hardly reach come before the second round of compounds. */
export const FIRST_DIRECT: readonly Muscle[] = ['side-delts', 'abs'];

/** Only where the lifter wants to bring them up. */
export const FOCUS_ONLY: Readonly<Partial<Record<Muscle, readonly string[]>>> = {
  'rear-delts': [
    'cable-rear-fly',
    'dumbbell-rear-raise',
    'machine-rear-fly',
    'face-pull',
    'band-pull-apart',
  ],
  forearms: ['wrist-curl', 'hammer-curl', 'reverse-curl'],
  'lower-back': ['back-extension'],
  adductors: ['hip-adduction', 'side-lunge'],
};

/**
 * Place in a day, the lowest first: what is hardest for the back and the whole body, then presses
 * and pulls, one joint last. Common practice.
 */
export function placeInDay(lift: Lift): number {
  const at = DAY_ORDER.indexOf(lift.pattern);
  if (lift.kind === 'isolation') return DAY_ORDER.length + at;
  return lift.pattern === 'hinge' && lift.perSide ? LIGHT_HINGE : at;
}

const LIGHT_HINGE = 4.5;

const DAY_ORDER: readonly Lift['pattern'][] = [
  'squat',
  'hinge',
  'lunge',
  'horizontal-push',
  'vertical-push',
  'vertical-pull',
  'horizontal-pull',
  'knee-extension',
  'knee-flexion',
  'shoulder-raise',
  'elbow-extension',
  'elbow-flexion',
  'calf-raise',
  'trunk',
  'carry',
];
