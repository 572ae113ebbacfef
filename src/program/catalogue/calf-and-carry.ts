import { type LiftRows, SEGMENTS } from './lift-rows.ts';

export const CALF_RAISES = {
  'calf-raise': {
    name: 'Standing calf raise',
    loading: 'bodyweight',
    kind: 'isolation',
    bodyShare: [0.97, SEGMENTS],
    trains: { calves: 1 },
    form: 'Balls of the feet on a step, heels all the way down, pause, all the way up.',
  },
  'single-leg-calf-raise': {
    name: 'Single-leg calf raise',
    loading: 'bodyweight',
    kind: 'isolation',
    perSide: true,
    bodyShare: [0.97, SEGMENTS],
    trains: { calves: 1 },
    form: 'One foot on a step, heel all the way down, pause, all the way up.',
  },
  'dumbbell-calf-raise': {
    name: 'Dumbbell calf raise',
    loading: 'dumbbell',
    kind: 'isolation',
    trains: { calves: 1 },
    form: 'Dumbbells at the sides, balls of the feet on a step, heels down, pause, up.',
  },
  'machine-calf-raise': {
    name: 'Machine calf raise',
    loading: 'stack',
    kind: 'isolation',
    trains: { calves: 1 },
    form: 'Shoulders under the pads, heels all the way down, pause, all the way up.',
  },
  'seated-calf-raise': {
    name: 'Seated calf raise',
    loading: 'stack',
    kind: 'isolation',
    trains: { calves: 1 },
    form: 'Pad on the thighs, heels all the way down, pause, all the way up.',
  },
  'leg-press-calf-raise': {
    name: 'Calf raise on the leg press',
    loading: 'stack',
    kind: 'isolation',
    trains: { calves: 1 },
    form: 'Balls of the feet on the edge of the plate, legs nearly straight, let the heels down, press.',
    caution: 'Leave the safety stops of the sled in.',
  },
} as const satisfies LiftRows;

export const HIP_MACHINES = {
  'hip-adduction': {
    name: 'Hip adduction',
    loading: 'stack',
    kind: 'isolation',
    trains: { adductors: 1 },
    joints: ['hip'],
    form: 'Seated, bring the knees together against the pads, open slowly.',
    caution: 'Open only as wide as the inner thigh allows.',
  },
  'hip-abduction': {
    name: 'Hip abduction',
    loading: 'stack',
    kind: 'isolation',
    trains: { glutes: 1 },
    form: 'Seated, press the knees apart against the pads, close slowly.',
  },
} as const satisfies LiftRows;

export const CARRIES = {
  'two-hand-carry': {
    name: 'Two-hand carry',
    loading: 'dumbbell',
    kind: 'compound',
    counts: 'seconds',
    trains: { forearms: 1, 'upper-back': 0.5, abs: 0.5 },
    joints: ['back'],
    form: 'A heavy dumbbell in each hand, walk tall with short steps.',
    caution: 'Keep the way clear, and set the load down before the grip goes.',
  },
  'one-hand-carry': {
    name: 'One-hand carry',
    loading: 'dumbbell',
    kind: 'compound',
    hands: 1,
    perSide: true,
    counts: 'seconds',
    trains: { forearms: 1, abs: 1 },
    form: 'A heavy dumbbell in one hand, walk tall without leaning.',
    caution: 'Keep the way clear, and set the load down before the grip goes.',
  },
} as const satisfies LiftRows;
