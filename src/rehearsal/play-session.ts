import { offerAfterSet } from '../progression/offer-after-set.ts';
import type { PrescribedExercise, Prescription } from '../progression/prescription.ts';
import { rackFor } from '../progression/rack.ts';
import { aimOf } from '../session/aim.ts';
import { apply } from '../session/apply.ts';
import type { SessionCommand } from '../session/command.ts';
import { decide } from '../session/decide.ts';
import type { SessionEvent, SessionFact, SetPlace } from '../session/events.ts';
import { LEAST_MS, laterBy } from '../session/stage-now.ts';
import type { SessionState } from '../session/state.ts';
import type { Gear } from '../training/gear.ts';
import { nearest } from '../training/loads.ts';
import type { Mass } from '../training/mass.ts';
import type { Reading } from '../training/reading.ts';
import type { Reason } from '../training/rule.ts';
import { setSeconds } from '../training/set-clock.ts';
import { loadForReps } from '../training/strength.ts';
import {
  type Able,
  ableReps,
  ableSeconds,
  afterReps,
  afterRest,
  liftMini,
  liftSet,
  RESTED,
  type Tiredness,
} from './lift-set.ts';
import type { SeededRandom } from './seeded-random.ts';
import { type SimulatedLifter, trueStrength } from './simulated-lifter.ts';

/** What a session is played with. */
export interface Scene {
  readonly session: string;
  readonly device: string;
  readonly prescription: Prescription;
  readonly lifter: SimulatedLifter;
  readonly gear: Gear;
  /** As the tool knows it: the trend. */
  readonly bodyMass: Mass | null;
  /** As it is. */
  readonly trueBodyMass: Mass;
  readonly startsAt: Reading;
  /** Minutes that local time is ahead of UTC. */
  readonly zone: number;
  readonly random: SeededRandom;
}

export interface PlayedSession {
  readonly events: readonly SessionEvent[];
  readonly state: SessionState;
}

/**
 * Plays a session from its opening to its closing, set by set, through the same decisions and the
 * same fold as a real one: the lifter rests the middle of the range, does the reps that are there,
 * tells the reserve as it felt, and takes the better load that is offered after a miss.
 * @throws Error when the session refuses what the lifter does, which is a fault of the program.
 */
export function playSession(scene: Scene): PlayedSession {
  const events: SessionEvent[] = [];
  let state: SessionState | null = null;
  const write = (facts: readonly SessionFact[], at: Reading): SessionState => {
    for (const fact of facts) {
      const id = `${scene.session}:${events.length + 1}`;
      const event: SessionEvent = { ...fact, id, at, zone: scene.zone };
      events.push(event);
      state = apply(state, event);
    }
    if (!state) throw new Error('Nothing was written.');
    return state;
  };
  const { session, device, prescription } = scene;
  const opened = write([{ type: 'session-opened', session, device, prescription }], scene.startsAt);
  const send = (command: SessionCommand, at: Reading): SessionState => {
    const decided = decide(state ?? opened, command, at);
    if (!decided.ok) throw new Error(`${command.do}: ${decided.problem.what}`);
    return write(decided.facts, at);
  };
  const closed = playSets(opened, scene, send);
  return { events, state: closed };
}

/** The lifter looks the numbers over before closing. */
const TO_LOOK_MS = 10_000;

type Send = (command: SessionCommand, at: Reading) => SessionState;

function playSets(opened: SessionState, scene: Scene, send: Send): SessionState {
  let state = opened;
  let body = atExercise(0, state, scene);
  for (;;) {
    const { stage } = state;
    const wait = restSeconds(stage);
    if (wait === null) {
      return send({ do: 'close', how: 'finished' }, laterBy(state.lastAt, TO_LOOK_MS));
    }
    const { next } = stage as Extract<typeof stage, { next: SetPlace }>;
    if (isUnloadable(next.exercise, state)) {
      state = send({ do: 'skip-exercise', exercise: next.exercise }, laterBy(state.lastAt, 1000));
      continue;
    }
    if (next.exercise !== body.exercise) body = atExercise(next.exercise, state, scene);
    else body = { ...body, tired: afterRest(body.tired, scene.lifter.model, wait) };
    const since = stage.kind === 'resting' ? stage.running.since : state.lastAt;
    ({ state, body } = playSet(state, next, body, laterBy(since, wait * 1000), scene, send));
  }
}

/** Does it need what the lifter does not own? Then it is left out, for no load is one of theirs. */
function isUnloadable(exercise: number, { exercises }: SessionState): boolean {
  const prescribed = exercises[exercise]?.prescribed;
  return prescribed !== undefined && gearMissingFor(prescribed).length > 0;
}

/** What a prescription says of exercises that the lifter's gear cannot load. */
export const gearMissingIn = ({ exercises }: Prescription): readonly Reason[] =>
  exercises.flatMap(gearMissingFor);

const gearMissingFor = ({ why }: Pick<PrescribedExercise, 'why'>): readonly Reason[] =>
  why.filter(({ rule }) => rule === 'gear-missing');

/** Seconds until the next set: a mini-set begins at the early end; null when no set is left. */
function restSeconds(stage: SessionState['stage']): number | null {
  if (stage.kind === 'ready') return 0;
  if (stage.kind !== 'resting') return null;
  const { from, to } = stage.running.rest;
  return stage.next.role === 'mini' ? from : (from + to) / 2;
}

/** The lifter at one exercise. */
interface AtExercise {
  readonly exercise: number;
  /** Today's strength in it, the luck of the day included: micrograms lifted once, or seconds held. */
  readonly strength: number;
  readonly tired: Tiredness;
}

function atExercise(exercise: number, state: SessionState, scene: Scene): AtExercise {
  const prescribed = state.exercises[exercise]?.prescribed;
  const { lifter, random } = scene;
  const luck = 1 + lifter.model.dayNoise * random.normal();
  const strength = prescribed ? trueStrength(lifter, prescribed) * luck : 0;
  return { exercise, strength, tired: RESTED };
}

interface Played {
  readonly state: SessionState;
  readonly body: AtExercise;
}

function playSet(
  state: SessionState,
  place: SetPlace,
  body: AtExercise,
  startsAt: Reading,
  scene: Scene,
  send: Send,
): Played {
  const { model } = scene.lifter;
  const found = state.exercises[place.exercise];
  const aim = aimOf(state, place);
  if (!found || !aim) throw new Error('The session names a set that it does not have.');
  const { prescribed } = found;
  const byHand = place.role !== 'mini';
  const seconds = (count: number): number =>
    setSeconds(count, place.role === 'warm-up' ? { ...prescribed, counts: 'reps' } : prescribed);
  const begun = byHand ? send({ do: 'start' }, startsAt) : state;
  if (place.role === 'warm-up') {
    const at = laterBy(startsAt, seconds(aim.count) * 1000);
    return { state: send({ do: 'put-down' }, at), body };
  }
  const load = aim.load ?? chosenLoad(prescribed, body.strength, scene);
  const { able, lifted } = doneOf(begun, place, load, body, scene);
  if (lifted.count === 0 && byHand) {
    const at = laterBy(startsAt, 10_000);
    send({ do: 'withdraw-start' }, at);
    return { state: send({ do: 'skip-set' }, at), body };
  }
  const at = laterBy(startsAt, Math.max(LEAST_MS, seconds(lifted.count) * 1000));
  const after = send({ do: 'put-down', numbers: { load, ...lifted } }, at);
  const tired =
    prescribed.counts === 'seconds' ? body.tired : afterReps(body.tired, model, able, lifted.count);
  return { state: takeOffer(after, place, scene, at, send), body: { ...body, tired } };
}

function doneOf(
  state: SessionState,
  place: SetPlace,
  load: Mass,
  { strength, tired }: AtExercise,
  { lifter, trueBodyMass, random }: Scene,
): {
  readonly able: Able;
  readonly lifted: { readonly count: number; readonly reserve: number | null };
} {
  const { model } = lifter;
  const { prescribed, done } = state.exercises[place.exercise] as SessionState['exercises'][number];
  const aim = aimOf(state, place);
  const felt = model.ratingError * random.normal();
  if (prescribed.counts === 'seconds') {
    const able = Math.floor(ableSeconds(strength, load, trueBodyMass));
    const count = Math.max(1, Math.min(aim?.count ?? able, able));
    return { able: { fresh: able, left: able }, lifted: { count, reserve: null } };
  }
  const able = ableReps(reallyLifted(prescribed, load, trueBodyMass), strength, tired, model);
  if (place.role === 'mini') {
    const { reps, reserve } = liftMini(able.left, felt, done[1]?.count ?? null);
    return { able, lifted: { count: reps, reserve } };
  }
  const { reps, reserve } = liftSet(able.left, felt, {
    aim: aim?.count ?? prescribed.range[0],
    range: aim?.range ?? prescribed.range,
    reserve: prescribed.reserve,
  });
  return { able, lifted: { count: reps, reserve } };
}

export function reallyLifted(
  { bodyShare }: Pick<PrescribedExercise, 'bodyShare'>,
  load: Mass,
  bodyMass: Mass,
): number {
  return bodyShare === null ? load : load + bodyShare * bodyMass;
}

/** Asked for a first load, the lifter takes one that could be done two reps past the range, near enough. */
function chosenLoad(exercise: PrescribedExercise, strength: number, scene: Scene): Mass {
  const rack = rackFor(exercise, scene.gear, scene.bodyMass);
  if (exercise.counts === 'seconds') return rack.loads.lightest;
  const guess = 1 + GUESS_ERROR * scene.random.normal();
  const lifted = loadForReps(strength * guess, exercise.range[1] + 2, 0);
  return nearest(rack.loads, rack.setting(lifted));
}

/** How far off a lifter is who names a first load. Ours. */
const GUESS_ERROR = 0.05;

function takeOffer(
  state: SessionState,
  { exercise }: SetPlace,
  { gear, bodyMass }: Scene,
  at: Reading,
  send: Send,
): SessionState {
  const found = state.exercises[exercise];
  if (!found || state.stage.kind !== 'resting' || state.stage.next.exercise !== exercise) {
    return state;
  }
  const { prescribed, done } = found;
  const offer = offerAfterSet(prescribed, done, gear, bodyMass);
  if (!offer) return state;
  const { system } = rackFor(prescribed, gear, bodyMass);
  const by = { ...prescribed, load: offer.load, system: system(offer.load) };
  return send({ do: 'replace', exercise, by, because: 'after-a-miss' }, at);
}
