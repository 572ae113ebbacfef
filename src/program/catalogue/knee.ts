import { type LiftRows, SEGMENTS } from './lift-rows.ts';

export const KNEE_EXTENSIONS = {
  'leg-extension': {
    name: 'Leg extension',
    loading: 'stack',
    kind: 'isolation',
    trains: { quads: 1 },
    form: 'Knee in line with the pivot, straighten the legs, lower slowly.',
    caution: 'Take a shorter way or leave it out when the kneecap hurts.',
  },
  'single-leg-extension': {
    name: 'Single-leg extension',
    loading: 'stack',
    kind: 'isolation',
    perSide: true,
    trains: { quads: 1 },
    form: 'One leg at a time, straighten it and lower slowly.',
    caution: 'Take a shorter way or leave it out when the kneecap hurts.',
  },
  'knees-forward-squat': {
    name: 'Knees-forward squat',
    loading: 'bodyweight',
    kind: 'isolation',
    bodyShare: [0.88, SEGMENTS],
    trains: { quads: 1 },
    form: 'Holding on, lean back in one line from knee to shoulder as the knees go forward, come up.',
    caution: 'Hard on the knee: a short way first, and never through pain.',
  },
} as const satisfies LiftRows;

export const KNEE_FLEXIONS = {
  'leg-curl': {
    name: 'Lying leg curl',
    loading: 'stack',
    kind: 'isolation',
    trains: { hamstrings: 1 },
    form: 'Hips on the pad, pull the heels to the seat, lower slowly.',
  },
  'seated-leg-curl': {
    name: 'Seated leg curl',
    loading: 'stack',
    kind: 'isolation',
    trains: { hamstrings: 1 },
    form: 'Thighs held down, pull the heels under the seat, let them up slowly.',
  },
  'single-leg-curl': {
    name: 'Single-leg curl',
    loading: 'stack',
    kind: 'isolation',
    perSide: true,
    trains: { hamstrings: 1 },
    form: 'One leg at a time, pull the heel to the seat, lower slowly.',
  },
  'sliding-leg-curl': {
    name: 'Sliding leg curl',
    loading: 'bodyweight',
    kind: 'isolation',
    bodyShare: [0.6, 'ours'],
    trains: { hamstrings: 1 },
    form: 'On the back, heels on a towel or sliders, hips up, pull the heels in and let them out.',
    caution: 'Lower the hips and rest when a cramp begins.',
  },
  'nordic-curl': {
    name: 'Nordic curl',
    loading: 'bodyweight',
    kind: 'isolation',
    bodyShare: [0.88, SEGMENTS],
    trains: { hamstrings: 1 },
    form: 'Kneeling with the heels held down, lower the straight body forward, catch it with the hands.',
    caution: 'Very hard: begin with few reps and a short way.',
  },
  'dumbbell-leg-curl': {
    name: 'Dumbbell leg curl',
    loading: 'dumbbell',
    kind: 'isolation',
    hands: 1,
    trains: { hamstrings: 1 },
    form: 'Face down on a bench, one dumbbell held between the feet, curl it up and lower slowly.',
    caution: 'Have someone hand you the dumbbell, or begin light.',
  },
} as const satisfies LiftRows;
