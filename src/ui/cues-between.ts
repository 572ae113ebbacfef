import type { Coach } from '../lifter/coach.ts';
import type { Cue } from '../terminal/cue.ts';
import { inUnit } from '../training/mass.ts';
import type { Model } from './model.ts';
import { type Phase, phaseOf, placeOf } from './phase.ts';
import { plannedSet } from './set-plan.ts';
import { countText } from './words.ts';

/** Shorter rests need no word on the way. */
const LONG_REST_S = 120;

/** What is rung and said because the world went from `before` to `after`. */
export function cuesBetween(before: Model, after: Model, madeUp: Coach['madeUp']): readonly Cue[] {
  if (!after.session) return [];
  if (before.session?.session !== after.session.session) return nextCue(before, after, madeUp);
  const from = phaseOf(before.session, before.now);
  const to = phaseOf(after.session, after.now);
  return before.session === after.session
    ? timeCues(from, to, after)
    : actCues(from, to, before, after, madeUp);
}

/** Nothing was done; time went by. */
function timeCues(from: Phase, to: Phase, { session }: Model): readonly Cue[] {
  if (session?.pausedSince) return [];
  if (from.kind === 'resting' && to.kind === 'resting' && from.end === to.end) {
    return countdown(from, to);
  }
  if (from.kind === 'resting' && to.kind === 'lifting') return [{ cue: 'go' }];
  if (from.kind === 'resting' && to.kind === 'resting') return [{ cue: 'rest-early' }];
  if (from.kind === 'resting' && to.kind === 'over') return [{ cue: 'rest-late' }];
  if (from.kind === 'lifting' && to.kind === 'lifting') {
    if (from.holdLeftMs && to.holdLeftMs === 0) return [{ cue: 'hold-reached' }];
    if (from.sideLeftMs && to.sideLeftMs === 0) return [{ cue: 'other-side' }];
  }
  return [];
}

/** Three ticks before a cluster's rest ends; a second that was slept through is not made up for. */
function countdown(
  from: Extract<Phase, { kind: 'resting' }>,
  to: Extract<Phase, { kind: 'resting' }>,
): readonly Cue[] {
  if (to.end !== 'early') return [];
  if (to.next.role !== 'mini') return soon(from.leftMs, to.leftMs, to.running.rest.from);
  const left = Math.ceil(to.leftMs / 1000);
  if (left > 3 || left < 1 || left === Math.ceil(from.leftMs / 1000)) return [];
  return [{ cue: 'tick', left: left as 1 | 2 | 3 }];
}

/** A minute and ten seconds before a long rest ends. */
function soon(was: number, is: number, rest: number): readonly Cue[] {
  if (rest < LONG_REST_S) return [];
  const passed = ([60, 10] as const).find((left) => was > left * 1000 && is <= left * 1000);
  return passed ? [{ cue: 'rest-soon', seconds: passed }] : [];
}

function actCues(
  from: Phase,
  to: Phase,
  before: Model,
  after: Model,
  madeUp: Coach['madeUp'],
): readonly Cue[] {
  const { session } = after;
  if (!session) return [];
  if (to.kind === 'all-done') return from.kind === 'all-done' ? [] : [{ cue: 'session-done' }];
  const last = session.events.at(-1);
  const ended = session.events
    .slice(before.session?.events.length ?? 0)
    .some(({ type }) => type === 'cluster-ended');
  if (ended) return [{ cue: 'cluster-done' }, ...nextCue(before, after, madeUp)];
  if (last?.type !== 'set-done') return [];
  if (to.kind === 'resting' && to.lastOne) return [{ cue: 'last-one' }];
  return nextCue(before, after, madeUp);
}

/** What comes next, where the lift or the load is another than before. */
function nextCue(before: Model, after: Model, madeUp: Coach['madeUp']): readonly Cue[] {
  const [was, is] = [nextOf(before), nextOf(after)];
  if (!is || !after.session) return [];
  const sameLift = was?.position === is.position && was.exercise.track === is.exercise.track;
  if (sameLift && was?.load === is.load) return [];
  const { unit } = after.session.prescription;
  const { exercise, load, count } = is;
  const isBody = exercise.basis === 'added' && load === 0;
  return [
    {
      cue: 'next',
      lift: sameLift ? null : exercise.name,
      load: isBody ? null : inUnit(load, unit),
      unit,
      aim: countText(count, exercise),
      plates: madeUp(exercise, load)?.change ?? null,
    },
  ];
}

function nextOf({ session, now }: Model) {
  const place = session && placeOf(phaseOf(session, now));
  const plan = place && plannedSet(session, place);
  const exercise = place && session.exercises[place.exercise]?.prescribed;
  return plan && exercise && plan.load !== null
    ? { position: place.exercise, exercise, load: plan.load, count: plan.count }
    : null;
}
