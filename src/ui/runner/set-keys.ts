import { entryTarget } from '../entry.ts';
import { type Act, ask, draftOf, RUNNER, type Seen, send, tell } from '../outcome.ts';
import { placeOf } from '../phase.ts';
import type { KeyRow } from '../screen.ts';
import { accepts } from './conditions.ts';

const NO_OFFER = 'There is nothing on offer now.';

const takeOffer: Act = (acting) => {
  const { offer } = acting.model;
  if (!offer) return tell(acting, NO_OFFER);
  const { exercise, by, addsSet } = offer;
  const replace = { do: 'replace', exercise, by, because: 'after-a-miss' } as const;
  return send(acting, addsSet ? [{ do: 'add-set' }, replace] : [replace], RUNNER);
};

const targetOf = ({ model, phase }: Seen) =>
  model.session && phase && entryTarget(model.session, phase, draftOf(model));

/** The rep after the last was tried and did not come up: what was in reserve is known to be nothing. */
const FAILED = { reserve: 0, failed: true } as const;

const failed: Act = (acting) => {
  const target = targetOf(acting);
  if (!target?.of) return ask(acting);
  return send(acting, [{ do: 'amend', of: target.of.id, numbers: FAILED }], RUNNER);
};

/** The offer, and the rep that failed. */
export const AFTER_SET: readonly KeyRow[] = [
  {
    keys: ['y'],
    label: 'yes to the offer',
    when: ({ model }) => (model.offer ? true : NO_OFFER),
    footer: 3,
    press: takeOffer,
  },
  {
    keys: ['z'],
    label: 'next rep failed',
    when: (seen) => {
      const target = targetOf(seen);
      if (!target?.of) return 'Put the set down first; then z says that the next rep failed.';
      return accepts(seen, { do: 'amend', of: target.of.id, numbers: FAILED });
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
  // Longer can always be: how short a rest may get is told when the key is pressed.
  when: (seen) => accepts(seen, { do: 'change-rest', by: 1 }),
  footer: 7,
  pair: 'longer, shorter rest',
  press: (acting) => {
    const place = acting.phase && placeOf(acting.phase);
    const by = REST_STEP[place?.role === 'mini' ? 'cluster' : 'straight'] * sign;
    return send(acting, [{ do: 'change-rest', by }]);
  },
});

const pauseOrGoOn = ({ model }: Seen) =>
  ({ do: model.session?.pausedSince ? 'resume' : 'pause' }) as const;

/** The start and the rest that run. */
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
    when: (seen) => accepts(seen, pauseOrGoOn(seen)),
    footer: 8,
    press: (acting) => send(acting, [pauseOrGoOn(acting)]),
  },
];

const isInCluster = ({ phase }: Seen): boolean =>
  (phase && placeOf(phase)?.role === 'mini') ?? false;

/** A cluster can be ended in the middle of a mini-set, too. */
const skipping = (seen: Seen) => ({ do: isInCluster(seen) ? 'end-cluster' : 'skip-set' }) as const;

export const SETS: readonly KeyRow[] = [
  {
    keys: ['a'],
    label: 'add a set',
    when: (seen) => accepts(seen, { do: 'add-set' }),
    footer: 11,
    press: (acting) => send(acting, [{ do: 'add-set' }]),
  },
  {
    keys: ['s'],
    label: (seen) => (isInCluster(seen) ? 'skip the mini-sets left' : 'skip this set'),
    when: (seen) => accepts(seen, skipping(seen)),
    footer: (seen) => (isInCluster(seen) ? 3 : 11),
    press: (acting) => send(acting, [skipping(acting)], RUNNER),
  },
];
