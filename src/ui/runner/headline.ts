import type { SetPlace } from '../../session/events.ts';
import { openSets } from '../../session/next-set.ts';
import type { SessionState } from '../../session/state.ts';
import { summaryOf } from '../../session/summary.ts';
import { rangeText } from '../../text/durations.ts';
import { howMany } from '../../text/words.ts';
import { blockDigits } from '../digits.ts';
import type { Model } from '../model.ts';
import type { Phase } from '../phase.ts';
import { isTestSet, type PlannedSet, plannedSet } from '../set-plan.ts';
import {
  countdownText,
  countText,
  loadDigits,
  loadText,
  minutesText,
  placeText,
} from '../words.ts';
import { gearLackText, lacksGear } from './conditions.ts';

/** What the runner says largest. */
export interface Headline {
  /** The state, one or two words. */
  readonly word: string;
  /** Name of the lift. */
  readonly title: string;
  /** Which set of how many. */
  readonly place: string;
  /** For block digits; empty where there is nothing to show so. */
  readonly digits: string;
  /** What the digits mean, most important first. */
  readonly caption: readonly string[];
}

export function headline(model: Model, phase: Phase): Headline {
  const { session } = model;
  if (!session || phase.kind === 'closed') return nothing('DONE');
  if (phase.kind === 'all-done') return allDone(session, model);
  const place = phase.kind === 'lifting' ? phase.set : phase.next;
  const head = restOrLift(model, session, phase, place);
  return session.pausedSince ? { ...head, word: 'PAUSED', caption: ['space goes on'] } : head;
}

const nothing = (word: string): Headline => ({
  word,
  title: '',
  place: '',
  digits: '',
  caption: [],
});

function allDone(session: SessionState, { now, size }: Model): Headline {
  const { setsDone: done, setsAsked, minutes } = summaryOf(session, now);
  const left = setsAsked - done;
  if (left > 0) {
    return {
      ...nothing('DONE'),
      title: `${done} of ${done + left} sets done, ${left} left out`,
      caption: [minutesText(minutes)],
    };
  }
  return {
    ...nothing('DONE'),
    title: 'Every set is done',
    // The sets that are confirmed by the next key have to be in sight.
    digits: size.rows < 24 && openSets(session).length > 0 ? '' : String(done),
    caption: [`${howMany(done, 'set')} in ${minutesText(minutes)}`],
  };
}

function restOrLift(
  model: Model,
  session: SessionState,
  phase: Exclude<Phase, { kind: 'all-done' | 'closed' }>,
  place: SetPlace,
): Headline {
  const plan = plannedSet(session, place);
  const state = session.exercises[place.exercise];
  const exercise = state?.prescribed;
  if (!plan || !exercise) return nothing('READY');
  const name = {
    title: exercise.perSide ? `${exercise.name}, each side` : exercise.name,
    place: placeText(place, plan.of),
  };
  if (phase.kind === 'resting') {
    const cluster = place.role === 'mini';
    const until = phase.end === 'early' ? 'to the next set' : 'left, lift when you are ready';
    const { from, to } = phase.running.rest;
    // Said as what may be added, which stays the same while the digits run down.
    const more = countdownText((to - from) * 1000);
    const latest = phase.end === 'early' && to > from ? ` · +${more} at most` : '';
    return {
      ...name,
      word: phase.end === 'early' ? 'REST' : 'READY',
      digits: cluster ? String(Math.ceil(phase.leftMs / 1000)) : countdownText(phase.leftMs),
      caption: cluster ? miniCaption(plan, place, phase.lastOne) : [`${until}${latest}`],
    };
  }
  const word = { ready: 'READY', over: 'GO', lifting: 'LIFT' }[phase.kind];
  const lastOne = phase.kind === 'lifting' && phase.lastOne;
  if (plan.load === null) {
    return {
      ...name,
      word: 'READY',
      digits: '',
      caption: [
        lacksGear(state)
          ? gearLackText(exercise.name)
          : 'No load is known yet: type it, or space asks.',
      ],
    };
  }
  const caption = [setCaption(session, exercise, plan, place, lastOne)];
  if (phase.kind === 'over') caption.push(`the rest ended ${agoText(phase.overMs)} ago`);
  if (phase.kind === 'lifting' && exercise.counts === 'seconds') {
    const seconds = Math.floor(phase.elapsedMs / 1000);
    return { ...name, word, digits: String(seconds), caption: [holdCaption(phase, plan)] };
  }
  const warm = place.role === 'warm-up' && phase.kind !== 'lifting';
  return {
    ...name,
    word: warm ? 'WARM UP' : word,
    digits: loadAndAim(model, session, exercise, plan, phase.kind === 'lifting'),
    caption,
  };
}

/** By the second within the hour, in which it matters. */
const agoText = (ms: number): string =>
  ms < 3_600_000 ? countdownText(ms) : minutesText(ms / 60_000);

/** Where each side is held by itself, the clock runs on over both. */
function holdCaption(
  { sideLeftMs }: Extract<Phase, { kind: 'lifting' }>,
  { count }: PlannedSet,
): string {
  if (sideLeftMs === null) return `of ${count} seconds`;
  const side = sideLeftMs > 0 ? 'one side' : 'the other side';
  return `of 2 × ${count} seconds, ${side}`;
}

const miniCaption = (plan: PlannedSet, { index }: SetPlace, last: boolean): string[] => [
  last ? 'LAST ONE, it starts by itself' : 'seconds, it starts by itself',
  index > 0
    ? `${plan.count} reps, as the first mini-set`
    : `about ${plan.count} reps, ${plan.reserve ? rangeText(plan.reserve) : '1'} in reserve`,
];

/** `80 × 6`; where that is too wide, the load before the set and the reps in it. */
function loadAndAim(
  { size }: Model,
  session: SessionState,
  exercise: SessionState['exercises'][number]['prescribed'],
  plan: PlannedSet,
  lifting: boolean,
): string {
  const load = plan.load === null ? '' : loadDigits(plan.load, exercise, session.prescription.unit);
  const both = load === '' ? String(plan.count) : `${load} × ${plan.count}`;
  const rows = size.rows >= 24 ? 7 : 5;
  if (blockDigits(both, size.columns - 2, rows)) return both;
  return lifting || load === '' ? String(plan.count) : load;
}

function setCaption(
  session: SessionState,
  exercise: SessionState['exercises'][number]['prescribed'],
  plan: PlannedSet,
  place: SetPlace,
  lastOne: boolean,
): string {
  const { unit } = session.prescription;
  const load = plan.load === null ? '' : `${loadText(plan.load, exercise, unit)} × `;
  const count = `${load}${countText(plan.count, exercise)}`;
  if (place.role === 'mini')
    return `${count}${lastOne ? ', the last one' : place.index === 0 ? '' : ', as the first'}`;
  if (plan.reserve === null) return count;
  const state = session.exercises[place.exercise];
  if (state && isTestSet(state, place)) return `${count}, or until a rep fails`;
  return `${count}, ${rangeText(plan.reserve)} in reserve`;
}
