import {
  directMuscles,
  type Lift,
  type Muscle,
  type Pattern,
  type Shares,
} from '../training/lift.ts';
import { DEFAULTS } from './defaults.ts';
import type { WrittenLift } from './program-schema.ts';
import { Wrong } from './wrong.ts';

/**
 * A lift out of the program's own list. One that has name, loading, kind and trains stands for
 * itself; with fewer it is that of the catalogue with changes.
 */
export function buildLift(key: string, written: WrittenLift, listed: Lift | null): Lift | Wrong {
  const isWhole = written.name && written.loading && written.kind && written.trains;
  const known = isWhole ? null : listed;
  if (!/^[a-z0-9]+(?:-[a-z0-9]+)*$/.test(key)) {
    return new Wrong(
      `"${key}" cannot name a lift.`,
      'Write small letters, digits and single hyphens, such as landmine-press.',
    );
  }
  const name = written.name ?? known?.name;
  const loading = written.loading ?? known?.loading;
  const kind = written.kind ?? known?.kind;
  const trains = written.trains ? sharesOf(written.trains) : known?.trains;
  if (!name || !loading || !kind || !trains) {
    const missing = Object.entries({ name, loading, kind, trains })
      .filter(([, value]) => !value)
      .map(([missed]) => missed);
    return new Wrong(
      `the lift "${key}" is not in the catalogue and has no ${missing.join(', ')}.`,
      'Write name, loading, kind and trains for a lift of your own.',
    );
  }
  if (Object.keys(trains).length === 0) {
    return new Wrong(`the lift "${key}" trains nothing.`, 'Write at least one muscle.');
  }
  if (written.body_share !== undefined && loading !== 'bodyweight') {
    return new Wrong(
      `the lift "${key}" has a body_share, but its loading is ${loading}.`,
      'Take body_share out, or write loading: bodyweight.',
    );
  }
  const counts = written.counts ?? known?.counts ?? 'reps';
  const bodyShare = written.body_share ?? known?.bodyShare ?? DEFAULTS.bodyShare;
  return {
    key,
    name,
    loading,
    kind,
    pattern: written.pattern ?? known?.pattern ?? patternOf(trains, kind),
    trains,
    perSide: written.per_side ?? known?.perSide ?? false,
    counts,
    hands: written.hands ?? known?.hands ?? 2,
    bodyShare: loading === 'bodyweight' && counts === 'reps' ? bodyShare : null,
    // Of the movement by that name, whatever the lifter calls it and counts it for.
    joints: listed?.joints ?? [],
    needs: listed?.needs ?? [],
    form: written.form ?? known?.form ?? null,
    caution: written.caution ?? known?.caution ?? null,
  };
}

const sharesOf = (trains: NonNullable<WrittenLift['trains']>): Shares =>
  Object.fromEntries(Object.entries(trains).filter(([, share]) => share !== undefined));

/** The movement that such muscles most often mean, for a lift of the lifter's own that names none. */
function patternOf(trains: Shares, kind: Lift['kind']): Pattern {
  const [first] = directMuscles(trains);
  const muscle = first ?? (Object.keys(trains)[0] as Muscle);
  return USUAL[muscle][kind];
}

const USUAL: Readonly<Record<Muscle, Readonly<Record<Lift['kind'], Pattern>>>> = {
  chest: { compound: 'horizontal-push', isolation: 'horizontal-push' },
  'front-delts': { compound: 'vertical-push', isolation: 'shoulder-raise' },
  'side-delts': { compound: 'vertical-push', isolation: 'shoulder-raise' },
  'rear-delts': { compound: 'horizontal-pull', isolation: 'shoulder-raise' },
  triceps: { compound: 'horizontal-push', isolation: 'elbow-extension' },
  biceps: { compound: 'vertical-pull', isolation: 'elbow-flexion' },
  forearms: { compound: 'carry', isolation: 'elbow-flexion' },
  lats: { compound: 'vertical-pull', isolation: 'vertical-pull' },
  'upper-back': { compound: 'horizontal-pull', isolation: 'horizontal-pull' },
  'lower-back': { compound: 'hinge', isolation: 'hinge' },
  abs: { compound: 'trunk', isolation: 'trunk' },
  glutes: { compound: 'hinge', isolation: 'hinge' },
  quads: { compound: 'squat', isolation: 'knee-extension' },
  hamstrings: { compound: 'hinge', isolation: 'knee-flexion' },
  adductors: { compound: 'squat', isolation: 'squat' },
  calves: { compound: 'calf-raise', isolation: 'calf-raise' },
};
