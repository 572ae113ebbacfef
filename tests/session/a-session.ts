import type { PrescribedExercise, Prescription } from '../../src/progression/prescription.ts';
import { apply } from '../../src/session/apply.ts';
import type { SessionCommand } from '../../src/session/command.ts';
import { decide } from '../../src/session/decide.ts';
import type { SessionEvent, SessionFact } from '../../src/session/events.ts';
import { LEAST_MS, stageNow } from '../../src/session/stage-now.ts';
import type { SessionState } from '../../src/session/state.ts';
import { problemText } from '../../src/text/problem.ts';
import { kilograms } from '../../src/training/mass.ts';
import type { Reading } from '../../src/training/reading.ts';

/** A barbell lift of three sets of 5–8 at 80 kg, with 3 to 5 minutes between them. */
export function straight(changes: Partial<PrescribedExercise> = {}): PrescribedExercise {
  return {
    lift: 'row',
    name: 'Row',
    loading: 'barbell',
    kind: 'compound',
    pattern: 'horizontal-pull',
    trains: { lats: 1, biceps: 0.5 },
    perSide: false,
    counts: 'reps',
    hands: 2,
    bodyShare: null,
    track: 'row straight 5-8',
    style: 'straight',
    basis: 'total',
    load: kilograms(80),
    system: kilograms(80),
    bar: null,
    step: null,
    range: [5, 8],
    reserve: [1, 2],
    sets: [6, 6, 5].map((aim) => ({ aim, range: [5, 8] as const })),
    setsPlanned: 3,
    minis: null,
    rest: { from: 180, to: 300 },
    warmUp: [],
    move: 'hold',
    why: [],
    last: null,
    askPain: false,
    note: null,
    form: null,
    caution: null,
    ...changes,
  };
}

/** A dumbbell lift as a cluster of at most five: a lead of 12–15 at 8 kg, then mini-sets after 10 to 15 s. */
export function cluster(changes: Partial<PrescribedExercise> = {}): PrescribedExercise {
  return straight({
    lift: 'side-raise',
    name: 'Side raise',
    loading: 'dumbbell',
    kind: 'isolation',
    pattern: 'shoulder-raise',
    trains: { 'side-delts': 1 },
    track: 'side-raise cluster 12-15',
    style: 'cluster',
    basis: 'hand',
    load: kilograms(8),
    system: kilograms(8),
    range: [12, 15],
    reserve: [0, 1],
    sets: [{ aim: 14, range: [12, 15] }],
    setsPlanned: 1,
    minis: { mostSets: 5, aim: 4 },
    rest: { from: 10, to: 15 },
    ...changes,
  });
}

export function prescription(...exercises: readonly PrescribedExercise[]): Prescription {
  return {
    program: 'Made for tests',
    day: 'A',
    date: '2026-11-25',
    unit: 'kg',
    aim: 'cut',
    lighter: false,
    restBetween: { from: 120, to: 180 },
    exercises,
    warnings: [],
  };
}

/** 25 November 2026, 17:40:00 in a zone an hour ahead of UTC. */
export const START = Date.UTC(2026, 10, 25, 16, 40);
const ZONE = 60;

export const readingAt = (seconds: number): Reading => ({
  wall: START + seconds * 1000,
  up: 5_000_000 + seconds * 1000,
  boot: 'boot-1',
});

/** A session played by commands, with a clock that goes where the test puts it. */
export interface Play {
  readonly state: () => SessionState;
  readonly events: () => readonly SessionEvent[];
  /** Seconds since the opening. */
  readonly wait: (seconds: number) => Play;
  readonly now: () => Reading;
  readonly setClock: (reading: Reading) => Play;
  readonly stage: () => ReturnType<typeof stageNow>;
  /** Carries a command out; what is refused fails the test. */
  readonly send: (command: SessionCommand | SessionCommand['do']) => Play;
  /** Carries a command out where it is not refused. */
  readonly tried: (command: SessionCommand['do']) => Play;
  /** The sentence that refuses a command; fails when it is accepted. */
  readonly refusal: (command: SessionCommand | SessionCommand['do']) => string;
  readonly facts: () => readonly SessionFact['type'][];
}

export function play(given: Prescription): Play {
  let reading = readingAt(0);
  const stamp = (index: number) => ({ id: `file:${index}`, at: reading, zone: ZONE });
  let state = apply(null, {
    type: 'session-opened',
    session: 'file',
    device: 'laptop',
    prescription: given,
    ...stamp(0),
  });
  const decided = (command: SessionCommand | SessionCommand['do']) =>
    decide(
      state,
      typeof command === 'string' ? ({ do: command } as SessionCommand) : command,
      reading,
    );
  const played: Play = {
    state: () => state,
    events: () => state.events,
    wait: (seconds) => {
      const { wall, up, boot } = reading;
      reading = { wall: wall + seconds * 1000, up: up === null ? null : up + seconds * 1000, boot };
      return played;
    },
    now: () => reading,
    setClock: (next) => {
      reading = next;
      return played;
    },
    stage: () => stageNow(state, reading),
    send: (command) => {
      let answer = decided(command);
      // As a person would, who takes longer than a key that bounces.
      if (!answer.ok && / (so soon|just now)\./.test(answer.problem.what)) {
        played.wait(LEAST_MS / 1000);
        answer = decided(command);
      }
      if (!answer.ok) throw new Error(problemText(answer.problem));
      state = answer.facts.reduce<SessionState>(
        (each, fact) => apply(each, { ...fact, ...stamp(each.events.length) }),
        state,
      );
      return played;
    },
    tried: (command) => (decided(command).ok ? played.send(command) : played),
    refusal: (command) => {
      const answer = decided(command);
      if (answer.ok) throw new Error(`Accepted: ${JSON.stringify(answer.facts)}`);
      return problemText(answer.problem);
    },
    facts: () => state.events.map(({ type }) => type),
  };
  return played;
}

/** A set as planned: started, and put down after some seconds. */
export const lift = (session: Play, seconds = 20): Play =>
  session.send('start').wait(seconds).send('put-down');

/** The id of work set `index` of an exercise. */
export const setId = (session: Play, exercise: number, index: number): string =>
  session.state().exercises[exercise]?.done[index]?.id ?? 'none';

export const counts = (session: Play, exercise: number): readonly number[] =>
  (session.state().exercises[exercise]?.done ?? []).map(({ count }) => count);

/** What a state says, apart from how it was come to. */
export function meaning(state: SessionState | null): object {
  const { events: _, lastAt: __, ...rest } = state ?? ({} as SessionState);
  return rest;
}
