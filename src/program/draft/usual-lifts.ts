import type { Pattern } from '../../training/lift.ts';

/**
 * Lifts that a draft chooses from by itself, the first that can be loaded before the others.
 * Ours: lifts that most can learn alone, that take load in small steps and last for years. Any
 * other lift of the catalogue comes in when the lifter asks for it.
 */
export const USUAL_LIFTS: Readonly<Partial<Record<Pattern, readonly string[]>>> = {
  squat: [
    'back-squat',
    'front-squat',
    'leg-press',
    'hack-squat',
    'dumbbell-squat',
    'goblet-squat',
    'bodyweight-squat',
  ],
  hinge: [
    'romanian-deadlift',
    'deadlift',
    'dumbbell-romanian-deadlift',
    'single-leg-romanian-deadlift',
    'cable-pull-through',
    'single-leg-hip-thrust',
  ],
  'horizontal-push': [
    'bench-press',
    'dumbbell-bench-press',
    'machine-chest-press',
    'incline-dumbbell-press',
    'dip',
    'push-up',
    'feet-elevated-push-up',
  ],
  'vertical-push': [
    'overhead-press',
    'dumbbell-shoulder-press',
    'machine-shoulder-press',
    'pike-push-up',
  ],
  'horizontal-pull': [
    'barbell-row',
    'chest-supported-row',
    'dumbbell-row',
    'cable-row',
    'machine-row',
    'inverted-row',
  ],
  'vertical-pull': ['pull-up', 'lat-pulldown', 'chin-up', 'neutral-grip-pull-up'],
  lunge: ['split-squat', 'reverse-lunge', 'bodyweight-split-squat'],
  'knee-extension': ['leg-extension'],
  'knee-flexion': ['leg-curl', 'seated-leg-curl', 'sliding-leg-curl', 'dumbbell-leg-curl'],
  'shoulder-raise': [
    'dumbbell-side-raise',
    'cable-side-raise',
    'machine-side-raise',
    'upright-row',
    'dumbbell-rear-raise',
    'cable-rear-fly',
    'machine-rear-fly',
  ],
  'elbow-flexion': ['dumbbell-curl', 'cable-curl', 'barbell-curl'],
  'elbow-extension': [
    'overhead-triceps-extension',
    'cable-pushdown',
    'dumbbell-triceps-extension',
    'triceps-extension',
  ],
  trunk: ['cable-crunch', 'crunch', 'reverse-crunch'],
  'calf-raise': ['dumbbell-calf-raise', 'machine-calf-raise', 'single-leg-calf-raise'],
};
