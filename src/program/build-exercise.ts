import { nearestKey } from '../text/nearest.ts';
import type { Lift } from '../training/lift.ts';
import { type Mass, mass, type Unit } from '../training/mass.ts';
import { DEFAULTS, defaultReserve, defaultRest } from './defaults.ts';
import type { Exercise, Place } from './program.ts';
import type { WrittenExercise } from './program-schema.ts';
import type { WrittenMass } from './written-measures.ts';
import { shown, Wrong } from './wrong.ts';

/** What is wrong with an exercise, by the key that it concerns. */
export type Complaint = { readonly key: keyof WrittenExercise; readonly wrong: Wrong };

/** The exercise that was written, or all that does not fit together in it. */
export function buildExercise(
  written: WrittenExercise,
  lifts: ReadonlyMap<string, Lift>,
  unit: Unit,
  place: Place,
): Exercise | readonly Complaint[] {
  const named = lifts.get(written.lift);
  if (!named) return [{ key: 'lift', wrong: unknownLift(written.lift, lifts) }, ...style(written)];
  const { sides } = written;
  const lift: Lift = sides ? { ...named, perSide: sides === 'each' } : named;
  const complaints = [...style(written), ...counting(written, lift), ...loads(written, lift)];
  if (complaints.length > 0) return complaints;
  const { cluster } = written;
  const toMass = (found: WrittenMass | undefined): Mass | null =>
    found ? mass(found.amount, found.unit ?? unit) : null;
  const base = {
    lift,
    reserve: written.reserve ?? defaultReserve(lift, cluster ? 'cluster' : 'straight'),
    start: toMass(written.start),
    bar: written.bar ?? null,
    step: toMass(written.step),
    track: written.track ?? null,
    ...(written.pair !== undefined && { pair: written.pair }),
    warmUp: written.warm_up ?? true,
    note: written.note ?? null,
    accept: written.accept ?? {},
    place,
  };
  if (cluster) {
    return {
      ...base,
      style: 'cluster',
      range: cluster.lead,
      rest: cluster.rest ?? DEFAULTS.clusterRest,
      mostSets: cluster.most_sets ?? DEFAULTS.mostSets,
    };
  }
  return {
    ...base,
    style: 'straight',
    sets: written.sets ?? 1,
    range: written.reps ?? written.seconds ?? [1, 1],
    rest: written.rest ?? defaultRest(lift),
  };
}

function unknownLift(found: string, lifts: ReadonlyMap<string, Lift>): Wrong {
  const near = nearestKey(found, lifts.keys()) ?? namedLike(found, lifts);
  return new Wrong(
    `there is no lift ${shown(found)}, neither in the catalogue nor under "lifts".`,
    near ? `Did you mean "${near}"?` : 'Describe it under "lifts" at the end of the file.',
  );
}

/** A lift whose key has all the words that were written. */
function namedLike(found: string, lifts: ReadonlyMap<string, Lift>): string | null {
  const words = found
    .toLowerCase()
    .split(/[^a-z0-9]+/)
    .filter(Boolean);
  const keys = [...lifts.keys()].filter((key) => words.every((word) => key.includes(word)));
  return words.length === 0 ? null : (keys.sort((a, b) => a.length - b.length)[0] ?? null);
}

/** Straight sets or a cluster, and not a little of both. */
function style({ cluster, sets, reps, seconds, rest }: WrittenExercise): Complaint[] {
  if (cluster) {
    const straight = Object.entries({ sets, reps, seconds, rest }) as [
      'sets' | 'reps' | 'seconds' | 'rest',
      unknown,
    ][];
    return straight
      .filter(([, value]) => value !== undefined)
      .map(([key]) => ({
        key,
        wrong: new Wrong(
          'it does not go with a cluster.',
          key === 'rest'
            ? 'Write the rest inside cluster.'
            : 'A cluster has lead, rest and most_sets: take this out, or take out cluster.',
        ),
      }));
  }
  const complaints: Complaint[] = [];
  if (!reps && !seconds) {
    complaints.push({
      key: 'lift',
      wrong: new Wrong(
        'the exercise says neither reps nor seconds nor cluster.',
        'Write reps: 5-8, for example.',
      ),
    });
  }
  if (reps && seconds) {
    complaints.push({
      key: 'seconds',
      wrong: new Wrong('a set has reps or seconds, not both.', 'Take one of the two out.'),
    });
  }
  if (sets === undefined && (reps || seconds)) {
    complaints.push({
      key: 'lift',
      wrong: new Wrong('the exercise does not say how many sets.', 'Write sets: 3, for example.'),
    });
  }
  return complaints;
}

function counting({ cluster, reps, seconds }: WrittenExercise, lift: Lift): Complaint[] {
  if (lift.counts === 'reps' && seconds) {
    const wrong = new Wrong(`${lift.name} is counted in reps.`, 'Write reps in place of seconds.');
    return [{ key: 'seconds', wrong }];
  }
  if (lift.counts === 'seconds' && (reps || cluster)) {
    const wrong = new Wrong(
      `${lift.name} is held for seconds.`,
      'Write sets and seconds, such as seconds: 30-60.',
    );
    return [{ key: reps ? 'reps' : 'cluster', wrong }];
  }
  return [];
}

function loads({ start, step, bar }: WrittenExercise, lift: Lift): Complaint[] {
  const complaints: Complaint[] = [];
  if (start && start.amount <= 0 && lift.loading !== 'bodyweight') {
    complaints.push({
      key: 'start',
      wrong: new Wrong(
        `${start.amount} is no load for ${lift.name}.`,
        'Write what is lifted in all; only body weight lifts take 0 or less, for assistance.',
      ),
    });
  }
  if (step && step.amount <= 0) {
    complaints.push({
      key: 'step',
      wrong: new Wrong(`${step.amount} is no step.`, 'Write a number above 0.'),
    });
  }
  if (bar !== undefined && lift.loading !== 'barbell') {
    complaints.push({
      key: 'bar',
      wrong: new Wrong(
        `${lift.name} is not loaded on a bar.`,
        'Take the bar out, or choose a barbell lift.',
      ),
    });
  }
  return complaints;
}
