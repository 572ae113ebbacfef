import { describe, expect, test } from 'vitest';
import type { PrescribedExercise } from '../../src/progression/prescription.ts';
import { fold } from '../../src/session/apply.ts';
import { cluster, type Play, play, prescription, straight } from './a-session.ts';

const press = straight({
  lift: 'bench-press',
  name: 'Bench press',
  pattern: 'horizontal-push',
  trains: { chest: 1, triceps: 0.5 },
  track: 'bench-press straight 5-8',
  pair: 'a',
});
const row = straight({ name: 'Row', loading: 'dumbbell', pair: 'a' });
const curl = straight({
  lift: 'curl',
  name: 'Curl',
  kind: 'isolation',
  loading: 'dumbbell',
  pattern: 'elbow-flexion',
  trains: { biceps: 1 },
  track: 'curl straight 5-8',
});

const day = (...exercises: readonly PrescribedExercise[]) => play(prescription(...exercises));

const nextOf = (played: Play): string => {
  const { stage } = played.state();
  return stage.kind === 'ready' || stage.kind === 'resting'
    ? `${stage.next.exercise}.${stage.next.index}${stage.next.role === 'warm-up' ? 'w' : ''}`
    : stage.kind;
};

/** A set of 30 s, begun once its rest is over. */
function set(played: Play): Play {
  const { stage } = played.state();
  if (stage.kind === 'resting') played.wait(stage.running.rest.from);
  return played.send('start').wait(30).send('put-down');
}

const restOf = (played: Play) => {
  const { stage } = played.state();
  return stage.kind === 'resting' ? stage.running.rest : null;
};

describe('the sets of a pair', () => {
  test('alternate, and the longer one ends alone', () => {
    const longer = { ...press, sets: [...press.sets, { aim: 5, range: [5, 8] as const }] };
    const played = day(longer, row);
    const order = [nextOf(played)];
    for (let at = 0; at < 7; at++) order.push(nextOf(set(played)));
    expect(order).toEqual(['0.0', '1.0', '0.1', '1.1', '0.2', '1.2', '0.3', 'all-done']);
  });

  test('of three go on without the one that leaves them', () => {
    const played = day(press, row, { ...curl, pair: 'a' }).send({ do: 'part-pair', exercise: 1 });
    expect(played.state().pairs).toEqual([[0, 2]]);
    expect(played.send({ do: 'part-pair', exercise: 0 }).state().pairs).toEqual([]);
  });

  test('of three go round', () => {
    const played = day(press, row, { ...curl, pair: 'a' });
    const order = [nextOf(played)];
    for (let at = 0; at < 4; at++) order.push(nextOf(set(played)));
    expect(order).toEqual(['0.0', '1.0', '2.0', '0.1', '1.1']);
  });

  test('come after the warm-ups of all its lifts, one lift after the other', () => {
    const warm = [{ load: press.load ?? (0 as never), reps: 8 }];
    const played = day({ ...press, warmUp: warm }, { ...row, warmUp: warm });
    const order = [nextOf(played)];
    for (let at = 0; at < 3; at++) order.push(nextOf(set(played)));
    expect(order).toEqual(['0.0w', '1.0w', '0.0', '1.0']);
  });

  test('warm the one up first that was chosen, to its end', () => {
    const warm = [6, 3].map((reps) => ({ load: press.load ?? (0 as never), reps }));
    const played = day({ ...press, warmUp: warm }, { ...row, warmUp: warm });
    const order = [nextOf(played.send({ do: 'choose-exercise', exercise: 1 }))];
    for (let at = 0; at < 4; at++) order.push(nextOf(set(played)));
    expect(order).toEqual(['1.0w', '1.1w', '0.0w', '0.1w', '1.0']);
  });

  test('rest by their own lift from its own last set, and a breath after the partner’s', () => {
    const played = set(day(press, row));
    // First round: nothing of the row to rest from, so a breath of 60 to 90 s.
    expect(restOf(played)).toEqual({ from: 60, to: 90 });
    set(played);
    // The press was put down 90 s before the row (60 s and a set of 30 s): of 180 to 300 s rest
    // 90 to 210 are left.
    expect(restOf(played)).toEqual({ from: 90, to: 210 });
    played.wait(200);
    set(played);
    // Now the row was put down long ago: only the breath is left.
    expect(restOf(played)).toEqual({ from: 60, to: 90 });
  });

  test('with a cluster as one half: it is done to its end when its turn comes', () => {
    const played = day(press, cluster({ pair: 'a' }));
    set(played);
    expect(nextOf(played)).toBe('1.0');
    set(played);
    expect(nextOf(played)).toBe('1.0');
    expect(played.state().stage).toMatchObject({ next: { role: 'mini' } });
    played.send('end-cluster');
    expect(nextOf(played)).toBe('0.1');
  });

  test('cost no more keys than any other: start and put down', () => {
    const played = day(press, row);
    for (let at = 0; at < 6; at++) set(played);
    expect(played.facts().filter((type) => type.startsWith('set-'))).toHaveLength(12);
    expect(played.state().stage.kind).toBe('all-done');
  });
});

describe('on the spot', () => {
  test('a pair is taken apart, and undo makes it one again', () => {
    const played = set(day(press, row));
    const before = played.state();
    played.send({ do: 'part-pair', exercise: 1 });
    expect(nextOf(played)).toBe('0.1');
    expect(restOf(played)).toEqual({ from: 180, to: 300 });
    played.send('undo');
    expect(nextOf(played)).toBe('1.0');
    expect(played.state().pairs).toEqual(before.pairs);
  });

  test('two exercises are paired, the one that the lifter is at and another', () => {
    const alone = { ...press, pair: undefined } as unknown as PrescribedExercise;
    const played = set(day(alone, curl)).send({ do: 'pair', exercise: 1 });
    expect(nextOf(played)).toBe('1.0');
    expect(nextOf(set(played))).toBe('0.1');
  });

  test('what would not rest is refused, with the reason', () => {
    const heavy = straight({ name: 'Seal row', loading: 'dumbbell', track: 'seal' });
    const bar = straight({ ...press, name: 'Floor press', track: 'floor' });
    const { pair: _, ...alone } = row;
    expect(day(alone, heavy).refusal({ do: 'pair', exercise: 1 })).toContain(
      'both heavy for the same muscles',
    );
    const { pair: __, ...pressAlone } = press;
    expect(day(pressAlone, bar).refusal({ do: 'pair', exercise: 1 })).toContain('one bar');
  });

  test('one is not paired with itself, nor taken out of a pair that is none', () => {
    const { pair: _, ...alone } = press;
    const played = day(alone, curl);
    expect(played.refusal({ do: 'pair', exercise: 0 })).toContain('the one you are at');
    expect(played.refusal({ do: 'part-pair', exercise: 1 })).toContain('no other');
  });

  test('who is left alone by it alternates with no other any more', () => {
    const { pair: _, ...alone } = press;
    const raise = straight({ name: 'Calf raise', track: 'calf', kind: 'isolation', pair: 'b' });
    const played = day(alone, { ...curl, pair: 'b' }, raise);
    expect(played.state().pairs).toEqual([[1, 2]]);
    played.send({ do: 'pair', exercise: 1 });
    expect(played.state().pairs).toEqual([[0, 1]]);
    expect(played.refusal({ do: 'part-pair', exercise: 2 })).toContain('no other');
  });

  test('the one that was chosen goes first, then they alternate', () => {
    const played = day(press, row).send({ do: 'choose-exercise', exercise: 1 });
    const order = [nextOf(played)];
    for (let at = 0; at < 3; at++) order.push(nextOf(set(played)));
    expect(order).toEqual(['1.0', '0.0', '1.1', '0.1']);
  });

  test('what the events tell is the state', () => {
    const played = set(set(day(press, row, curl)));
    played.send({ do: 'part-pair', exercise: 0 }).send({ do: 'pair', exercise: 2 });
    set(played);
    expect(fold(played.events())).toEqual(played.state());
  });
});
