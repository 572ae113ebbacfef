import { entryTarget } from '../entry.ts';
import { type Act, ask, draftOf, RUNNER, type Seen, send, tell } from '../outcome.ts';
import { placeOf } from '../phase.ts';
import type { KeyRow } from '../screen.ts';
import { accepts, BETWEEN, during } from './conditions.ts';

const takeOffer: Act = (acting) => {
  const { offer } = acting.model;
  if (!offer) return tell(acting, 'There is no offer.');
  const { exercise, by, addsSet } = offer;
  const replace = { do: 'replace', exercise, by, because: 'after-a-miss' } as const;
  return send(acting, addsSet ? [{ do: 'add-set' }, replace] : [replace], RUNNER);
};

const targetOf = ({ model, phase }: Seen) =>
  model.session && phase && entryTarget(model.session, phase, draftOf(model));

/** The rep after the last was tried and did not come up: what was in reserve is known to be nothing. */
const failed: Act = (acting) => {
  const target = targetOf(acting);
  if (!target?.of) return ask(acting);
  const numbers = { reserve: 0, failed: true };
  return send(acting, [{ do: 'amend', of: target.of.id, numbers }], RUNNER);
};

/** The offer, and the rep that failed. */
export const AFTER_SET: readonly KeyRow[] = [
  {
    keys: ['o'],
    label: 'take the offer',
    when: ({ model }) => (model.offer ? true : 'There is nothing on offer now.'),
    footer: 3,
    press: takeOffer,
  },
  {
    keys: ['z'],
    label: 'next rep failed',
    when: (seen) => {
      const target = targetOf(seen);
      if (!target?.of) return 'Put the set down first; then z says that the next rep failed.';
      return target.exercise.counts === 'seconds' ? 'A hold has no reps.' : true;
    },
    footer: 6,
    press: failed,
  },
];

/** Seconds by which one key changes a rest: of straight sets, of a cluster. */
const REST_STEP = { straight: 30, cluster: 5 } as const;

const changeRest = (keys: readonly string[], label: string, sign: 1 | -1): KeyRow => ({
  keys,
  label,
  // By a second there is always room: how short a rest may get is told when the key is pressed.
  when: ({ model }) => (model.session?.stage.kind === 'resting' ? true : 'No rest is running.'),
  footer: 7,
  pair: 'longer, shorter rest',
  press: (acting) => {
    const place = acting.phase && placeOf(acting.phase);
    const by = REST_STEP[place?.role === 'mini' ? 'cluster' : 'straight'] * sign;
    return send(acting, [{ do: 'change-rest', by }]);
  },
});

/** The start, the rest and the cluster that run. */
export const RUNNING: readonly KeyRow[] = [
  {
    keys: ['r'],
    label: 'not started yet',
    when: (seen) => accepts(seen, { do: 'withdraw-start' }),
    footer: 4,
    press: (acting) => send(acting, [{ do: 'withdraw-start' }], RUNNER),
  },
  changeRest(['+', '='], 'longer rest', 1),
  changeRest(['-', '_'], 'shorter rest', -1),
  {
    keys: ['p'],
    label: 'pause or go on',
    when: during('There is nothing to pause.', [...BETWEEN, 'lifting']),
    footer: 8,
    press: (acting) =>
      send(acting, [{ do: acting.model.session?.pausedSince ? 'resume' : 'pause' }]),
  },
  {
    keys: ['e'],
    label: 'end the cluster',
    when: (seen) => accepts(seen, { do: 'end-cluster' }),
    footer: 3,
    press: (acting) => send(acting, [{ do: 'end-cluster' }], RUNNER),
  },
];

export const SETS: readonly KeyRow[] = [
  {
    keys: ['a'],
    label: 'add a set',
    when: (seen) =>
      seen.phase?.kind === 'lifting'
        ? 'A set can be added between sets.'
        : accepts(seen, { do: 'add-set' }),
    footer: 11,
    press: (acting) => send(acting, [{ do: 'add-set' }]),
  },
  {
    keys: ['s'],
    label: 'skip this set',
    when: during('A set can be skipped before it starts.'),
    footer: 11,
    press: (acting) => {
      const place = acting.phase && placeOf(acting.phase);
      const command = place?.role === 'warm-up' ? 'skip-warm-ups' : 'skip-set';
      return send(acting, [{ do: command }], RUNNER);
    },
  },
];
