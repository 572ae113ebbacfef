import { INTERRUPT, type KeyRow, type ScreenModule } from './screen.ts';
import { ADD_LIFT_SCREEN } from './screens/add-lift.ts';
import { BEST_SCREEN } from './screens/best.ts';
import { CAUTIONS_SCREEN, HEALTH_SCREEN } from './screens/cautions.ts';
import { DRAFTED_SCREEN } from './screens/drafted.ts';
import { DISCARD_SCREEN, FINISH_SCREEN, STALE_SCREEN } from './screens/ending.ts';
import { ACTS_SCREEN, EXERCISES_SCREEN, PAIN_SCREEN, SWAP_SCREEN } from './screens/exercises.ts';
import { CHANGES_SCREEN, FINDINGS_SCREEN, UNSAVED_SCREEN } from './screens/findings.ts';
import { GEAR_SCREEN } from './screens/gear.ts';
import { GOAL_SCREEN } from './screens/goal.ts';
import { LIFTS_SCREEN, RESULTS_SCREEN, SEARCH_SCREEN } from './screens/history.ts';
import { HURTS_SCREEN } from './screens/hurts.ts';
import { KITS_SCREEN } from './screens/kits.ts';
import { LESS_TIME_SCREEN } from './screens/less-time.ts';
import { LOAD_SCREEN } from './screens/load.ts';
import { NOTE_SCREEN } from './screens/note.ts';
import {
  CORRECT_SCREEN,
  DELETE_SCREEN,
  PAST_SESSION_SCREEN,
  WHOLE_SESSION_SCREEN,
} from './screens/past-session.ts';
import { PLAN_SCREEN } from './screens/plan.ts';
import { PREVIEW_SCREEN } from './screens/preview.ts';
import { PROGRAM_SCREEN } from './screens/program.ts';
import { QUESTION_SCREEN } from './screens/question.ts';
import { ADVICE_SCREEN, REVIEW_SCREEN, WEIGHT_QUESTION_SCREEN } from './screens/review.ts';
import { RUNNER_SCREEN } from './screens/runner.ts';
import { SETTINGS_SCREEN } from './screens/settings.ts';
import { SUMMARY_SCREEN } from './screens/summary.ts';
import { WEEK_SCREEN } from './screens/week.ts';
import { READINGS_SCREEN, WEIGH_SCREEN } from './screens/weigh.ts';
import { WHY_SCREEN } from './screens/why.ts';
import type { Screen, ScreenKind } from './ui-state.ts';

/** Every screen there is. Frames, keys, help, boxes for taps and the screen reader come from here. */
export const SCREENS: {
  readonly [Kind in ScreenKind]: ScreenModule<Extract<Screen, { kind: Kind }>>;
} = {
  cautions: CAUTIONS_SCREEN,
  health: HEALTH_SCREEN,
  question: QUESTION_SCREEN,
  best: BEST_SCREEN,
  drafted: DRAFTED_SCREEN,
  gear: GEAR_SCREEN,
  preview: PREVIEW_SCREEN,
  stale: STALE_SCREEN,
  runner: RUNNER_SCREEN,
  load: LOAD_SCREEN,
  exercises: EXERCISES_SCREEN,
  acts: ACTS_SCREEN,
  swap: SWAP_SCREEN,
  pain: PAIN_SCREEN,
  note: NOTE_SCREEN,
  why: WHY_SCREEN,
  finish: FINISH_SCREEN,
  'less-time': LESS_TIME_SCREEN,
  discard: DISCARD_SCREEN,
  settings: SETTINGS_SCREEN,
  summary: SUMMARY_SCREEN,
  'weight-question': WEIGHT_QUESTION_SCREEN,
  review: REVIEW_SCREEN,
  plan: PLAN_SCREEN,
  advice: ADVICE_SCREEN,
  hurts: HURTS_SCREEN,
  kits: KITS_SCREEN,
  week: WEEK_SCREEN,
  goal: GOAL_SCREEN,
  weigh: WEIGH_SCREEN,
  readings: READINGS_SCREEN,
  lifts: LIFTS_SCREEN,
  results: RESULTS_SCREEN,
  'past-session': PAST_SESSION_SCREEN,
  'whole-session': WHOLE_SESSION_SCREEN,
  correct: CORRECT_SCREEN,
  delete: DELETE_SCREEN,
  search: SEARCH_SCREEN,
  program: PROGRAM_SCREEN,
  'add-lift': ADD_LIFT_SCREEN,
  changes: CHANGES_SCREEN,
  unsaved: UNSAVED_SCREEN,
  findings: FINDINGS_SCREEN,
};

/** The module of a screen; the compiler cannot follow that it fits. */
export const moduleOf = ({ kind }: Pick<Screen, 'kind'>): ScreenModule =>
  SCREENS[kind] as ScreenModule;

/** Keys of a screen; the first row that fits wins. */
export const keysOf = (screen: Pick<Screen, 'kind'>): readonly KeyRow[] => [
  INTERRUPT,
  ...moduleOf(screen).keys,
];
