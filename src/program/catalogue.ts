import type { Lift, Pattern } from '../training/lift.ts';
import { CALF_RAISES, CARRIES, HIP_MACHINES } from './catalogue/calf-and-carry.ts';
import { ELBOW_EXTENSIONS, ELBOW_FLEXIONS } from './catalogue/elbow.ts';
import { HINGES } from './catalogue/hinge.ts';
import { HORIZONTAL_PULLS } from './catalogue/horizontal-pull.ts';
import { HORIZONTAL_PUSHES } from './catalogue/horizontal-push.ts';
import { KNEE_EXTENSIONS, KNEE_FLEXIONS } from './catalogue/knee.ts';
import type { LiftRow, LiftRows } from './catalogue/lift-rows.ts';
import { LUNGES } from './catalogue/lunge.ts';
import { SHOULDER_RAISES } from './catalogue/shoulder-raise.ts';
import { SQUATS } from './catalogue/squat.ts';
import { TRUNK_LIFTS } from './catalogue/trunk.ts';
import { VERTICAL_PULLS } from './catalogue/vertical-pull.ts';
import { VERTICAL_PUSHES } from './catalogue/vertical-push.ts';

const BY_PATTERN: readonly (readonly [Pattern, LiftRows])[] = [
  ['squat', SQUATS],
  ['lunge', LUNGES],
  ['hinge', HINGES],
  ['horizontal-push', HORIZONTAL_PUSHES],
  ['vertical-push', VERTICAL_PUSHES],
  ['horizontal-pull', HORIZONTAL_PULLS],
  ['vertical-pull', VERTICAL_PULLS],
  ['knee-extension', KNEE_EXTENSIONS],
  ['knee-flexion', KNEE_FLEXIONS],
  ['elbow-flexion', ELBOW_FLEXIONS],
  ['elbow-extension', ELBOW_EXTENSIONS],
  ['shoulder-raise', SHOULDER_RAISES],
  ['trunk', TRUNK_LIFTS],
  ['calf-raise', CALF_RAISES],
  ['lunge', HIP_MACHINES],
  ['carry', CARRIES],
];

function liftOf(key: string, pattern: Pattern, row: LiftRow): Lift {
  return {
    key,
    name: row.name,
    loading: row.loading,
    kind: row.kind,
    pattern,
    trains: row.trains,
    perSide: row.perSide ?? false,
    counts: row.counts ?? 'reps',
    hands: row.hands ?? 2,
    bodyShare: row.bodyShare?.[0] ?? null,
    joints: row.joints ?? [],
    needs: row.needs ?? [],
    form: row.form,
    caution: row.caution ?? null,
  };
}

const rows = BY_PATTERN.flatMap(([pattern, lifts]) =>
  Object.entries(lifts).map(([key, row]) => [key, pattern, row] as const),
);

/** Every lift that holdfast knows, by key. A program adds its own. */
export const CATALOGUE: ReadonlyMap<string, Lift> = new Map(
  rows.map(([key, pattern, row]) => [key, liftOf(key, pattern, row)]),
);

/** Who says how much of body weight a lift moves, by the lift's key. */
export const BODY_SHARE_SOURCES: ReadonlyMap<string, string> = new Map(
  rows.flatMap(([key, , { bodyShare }]) => (bodyShare ? [[key, bodyShare[1]] as const] : [])),
);
