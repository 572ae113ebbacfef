import type { Cue } from '../terminal/cue.ts';
import { inUnit } from '../training/mass.ts';
import { type Phase, phaseOf, placeOf } from './phase.ts';
import { plannedSet } from './set-plan.ts';
import type { Model } from './ui-state.ts';

/** What is rung and said because the world went from `before` to `after`. */
export function cuesBetween(before: Model, after: Model): readonly Cue[] {
  if (!after.session) return [];
  if (before.session?.session !== after.session.session) return nextLoad(before, after);
  const from = phaseOf(before.session, before.now);
  const to = phaseOf(after.session, after.now);
  return before.session === after.session
    ? timeCues(from, to, after)
    : actCues(from, to, before, after);
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
  if (from.kind === 'lifting' && to.kind === 'lifting' && from.holdLeftMs && to.holdLeftMs === 0) {
    return [{ cue: 'hold-reached' }];
  }
  return [];
}

/** Three ticks before a cluster's rest ends; a second that was slept through is not made up for. */
function countdown(
  from: Extract<Phase, { kind: 'resting' }>,
  to: Extract<Phase, { kind: 'resting' }>,
): readonly Cue[] {
  if (to.next.role !== 'mini' || to.end !== 'early') return [];
  const left = Math.ceil(to.leftMs / 1000);
  if (left > 3 || left < 1 || left === Math.ceil(from.leftMs / 1000)) return [];
  return [{ cue: 'tick', left: left as 1 | 2 | 3 }];
}

function actCues(from: Phase, to: Phase, before: Model, after: Model): readonly Cue[] {
  const { session } = after;
  if (!session) return [];
  if (to.kind === 'all-done') return from.kind === 'all-done' ? [] : [{ cue: 'session-done' }];
  const last = session.events.at(-1);
  const ended = session.events
    .slice(before.session?.events.length ?? 0)
    .some(({ type }) => type === 'cluster-ended');
  if (ended) return [{ cue: 'cluster-done' }, ...nextLoad(before, after)];
  if (last?.type !== 'set-done') return [];
  if (to.kind === 'resting' && to.lastOne) return [{ cue: 'last-one' }];
  return nextLoad(before, after);
}

/** The next load, where it is another than that of the set before. */
function nextLoad(before: Model, after: Model): readonly Cue[] {
  const [was, is] = [loadOf(before), loadOf(after)];
  if (is === null || was === is || !after.session) return [];
  return [{ cue: 'load', amount: inUnit(is, after.session.prescription.unit) }];
}

function loadOf({ session, now }: Model) {
  const place = session && placeOf(phaseOf(session, now));
  return (place && plannedSet(session, place)?.load) ?? null;
}
