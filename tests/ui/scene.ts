import type { PrescribedExercise, Prescription } from '../../src/progression/prescription.ts';
import { apply } from '../../src/session/apply.ts';
import type { SessionCommand } from '../../src/session/command.ts';
import { decide } from '../../src/session/decide.ts';
import type { SessionFact } from '../../src/session/events.ts';
import type { SessionState } from '../../src/session/state.ts';
import { kilograms, type Mass, massNumber } from '../../src/training/mass.ts';
import type { Reading } from '../../src/training/reading.ts';
import type { Bench, Choices, Offer } from '../../src/workbench/bench.ts';
import type { Clock } from '../../src/workbench/clock.ts';
import type { LiveSession } from '../../src/workbench/live-session.ts';
import type { ProgramDesk } from '../../src/workbench/program-desk.ts';
import type { Watch } from '../../src/workbench/watch.ts';
import { emptyDesk } from './a-desk.ts';
import { emptyWatch } from './a-watch.ts';

const kg = kilograms;

const squat: PrescribedExercise = {
  lift: 'back-squat',
  name: 'Back squat',
  loading: 'barbell',
  kind: 'compound',
  pattern: 'squat',
  trains: { quads: 1, glutes: 1 },
  perSide: false,
  counts: 'reps',
  hands: 2,
  bodyShare: null,
  track: 'back-squat straight 5-8',
  style: 'straight',
  basis: 'total',
  load: kg(82.5),
  system: null,
  bar: null,
  step: null,
  range: [5, 8],
  reserve: [1, 2],
  sets: [6, 6, 5].map((aim) => ({ aim, range: [5, 8] as const })),
  setsPlanned: 3,
  minis: null,
  rest: { from: 180, to: 300 },
  warmUp: [
    { load: kg(32.5), reps: 8 },
    { load: kg(47.5), reps: 5 },
    { load: kg(65), reps: 2 },
  ],
  move: 'up',
  why: [{ rule: 'up-every-set', facts: {} }],
  last: {
    date: '2026-11-20',
    load: kg(80),
    counts: [8, 8, 8],
    reserves: [2, 1, 1],
  },
  askPain: false,
  note: null,
  form: 'Brace, sit between the hips, drive the floor away.',
  caution: 'Only inside safeties set to catch the bar.',
};

const pullUp: PrescribedExercise = {
  ...squat,
  lift: 'pull-up',
  name: 'Pull-up',
  loading: 'bodyweight',
  pattern: 'vertical-pull',
  trains: { lats: 1, biceps: 0.5 },
  bodyShare: 1,
  track: 'pull-up straight 6-10',
  basis: 'added',
  load: kg(5),
  range: [6, 10],
  sets: [8, 8].map((aim) => ({ aim, range: [6, 10] as const })),
  setsPlanned: 2,
  warmUp: [],
  move: 'hold',
  why: [{ rule: 'hold-in-range', facts: {} }],
  last: { date: '2026-11-20', load: kg(5), counts: [8, 7], reserves: [1, 1] },
  form: null,
  caution: null,
};

const sideRaise: PrescribedExercise = {
  ...squat,
  lift: 'dumbbell-side-raise',
  name: 'Dumbbell side raise',
  loading: 'dumbbell',
  kind: 'isolation',
  pattern: 'shoulder-raise',
  trains: { 'side-delts': 1 },
  track: 'dumbbell-side-raise cluster 12-15',
  style: 'cluster',
  basis: 'hand',
  load: kg(8),
  range: [12, 15],
  reserve: [0, 1],
  sets: [{ aim: 14, range: [12, 15] }],
  setsPlanned: 1,
  minis: { mostSets: 5, aim: 4 },
  rest: { from: 10, to: 15 },
  warmUp: [],
  move: 'hold',
  why: [{ rule: 'hold-in-range', facts: {} }],
  last: { date: '2026-11-20', load: kg(8), counts: [13, 4, 4, 4], reserves: [0, null, null, null] },
  form: null,
  caution: null,
};

const plank: PrescribedExercise = {
  ...pullUp,
  lift: 'plank',
  name: 'Plank',
  kind: 'isolation',
  pattern: 'trunk',
  trains: { abs: 1 },
  counts: 'seconds',
  track: 'plank straight 30-60',
  load: kg(0),
  range: [30, 60],
  sets: [{ aim: 45, range: [30, 60] }],
  setsPlanned: 1,
  rest: { from: 60, to: 90 },
  move: 'start',
  why: [{ rule: 'start', facts: {} }],
  last: null,
};

/** The lifts of an invented day. */
export const LIFTS = { squat, pullUp, sideRaise, plank } as const;

/** An invented day: a barbell lift, a bodyweight lift, a cluster and a hold. */
export const DAY_A: Prescription = {
  program: 'Lean spring',
  day: 'A',
  date: '2026-11-25',
  unit: 'kg',
  aim: 'cut',
  lighter: false,
  restBetween: { from: 120, to: 180 },
  exercises: [squat, pullUp, sideRaise, plank],
  warnings: [],
};

/** 17:40 UTC on the day of the scene. */
const START = Date.UTC(2026, 10, 25, 17, 40);

/** A clock that moves only when told to, and fires what has come due on the way. */
export class HeldClock implements Clock {
  #wall = START;
  #waiting: { at: number; act: () => void }[] = [];

  read(): Reading {
    return { wall: this.#wall, up: this.#wall - START, boot: 'scene' };
  }

  zone(): number {
    return 0;
  }

  after(ms: number, act: () => void): () => void {
    const one = { at: this.#wall + ms, act };
    this.#waiting.push(one);
    return () => {
      this.#waiting = this.#waiting.filter((other) => other !== one);
    };
  }

  /** Lets time go by. */
  pass(ms: number): void {
    const end = this.#wall + ms;
    for (;;) {
      const next = this.#waiting.filter(({ at }) => at <= end).toSorted((a, b) => a.at - b.at)[0];
      if (!next) break;
      this.#waiting = this.#waiting.filter((one) => one !== next);
      this.#wall = Math.max(this.#wall, next.at);
      next.act();
    }
    this.#wall = end;
  }

  /** Time goes by while nothing can run, as in a stopped process. */
  jump(ms: number): void {
    this.#wall += ms;
  }
}

export interface Scene {
  readonly bench: Bench;
  readonly clock: HeldClock;
  readonly session: () => SessionState;
  /** Facts written so far. */
  readonly facts: () => readonly SessionFact[];
}

export interface SceneOptions {
  readonly prescription?: Prescription;
  readonly choices?: Partial<Choices>;
  readonly watch?: Watch;
  readonly desk?: ProgramDesk;
  readonly banner?: string;
  readonly offer?: (index: number, session: SessionState) => Offer | null;
}

const PLATES = [25, 20, 15, 10, 5, 2.5, 1.25];

function platesOf(load: Mass): number[] {
  let left = (Number(massNumber(load, 'kg')) - 20) / 2;
  return PLATES.flatMap((plate) => {
    const count = Math.max(0, Math.floor(left / plate));
    left -= count * plate;
    return Array<number>(count).fill(plate);
  });
}

const without = (plates: readonly number[], others: readonly number[]): number[] => {
  const left = [...others];
  return plates.filter((plate) => {
    const at = left.indexOf(plate);
    if (at < 0) return true;
    left.splice(at, 1);
    return false;
  });
};

/** A workbench in memory: the real session room over the invented day, and a gear of round plates. */
export function scene(options: SceneOptions = {}): Scene {
  const { prescription = DAY_A, offer } = options;
  const clock = new HeldClock();
  const facts: SessionFact[] = [];
  let state: SessionState | null = null;
  let choices: Choices = {
    bell: true,
    flash: true,
    speech: true,
    notification: false,
    taps: false,
    theme: 'colour',
    cautions: 'read',
    ...options.choices,
  };
  const write = (fact: SessionFact) => {
    facts.push(fact);
    state = apply(state, { ...fact, id: `scene:${facts.length}`, at: clock.read(), zone: 0 });
  };
  const live: LiveSession = {
    state: () => {
      if (!state) throw new Error('No session was begun in this scene.');
      return state;
    },
    send: (command: SessionCommand) => {
      const decided = decide(live.state(), command, clock.read());
      if (!decided.ok) return decided.problem;
      for (const fact of decided.facts) write(fact);
      return null;
    },
    now: () => clock.read(),
  };
  const bench: Bench = {
    today: (day = prescription.day) => ({
      state: state ? 'open' : 'due',
      session: state ? 's1' : null,
      elsewhere: null,
      prescription: { ...prescription, day },
      minutes: 52,
      days: ['A', 'B'],
    }),
    begin: (day) => {
      if (!state) {
        const opened = { ...prescription, day: day ?? prescription.day };
        write({ type: 'session-opened', session: 's1', device: 'd1', prescription: opened });
      }
      return live;
    },
    live: () => (state ? live : null),
    madeUp: (exercise, load) => {
      if (exercise.loading !== 'barbell') return null;
      const plates = platesOf(load);
      const words = plates.length === 0 ? 'empty bar' : `${plates.join(' + ')} a side`;
      const side = plates.map((plate) => (plate >= 15 ? '█' : '▌')).join('');
      const mirrored = [...side].reverse().join('');
      return {
        words,
        picture: (width) => [
          `──${mirrored}┤${'─'.repeat(Math.max(4, Math.min(width, 46) - 6 - 2 * side.length))}├${side}──`,
        ],
      };
    },
    plateChange: (exercise, from, to) => {
      if (exercise.loading !== 'barbell' || from === to) return null;
      const [was, is] = [from === null ? [] : platesOf(from), platesOf(to)];
      const off = without(was, is);
      const on = without(is, was);
      const words = [
        off.length > 0 ? `take off ${off.join(' + ')}` : null,
        on.length > 0 ? `put on ${on.join(' + ')}` : null,
      ].filter((one) => one !== null);
      return words.length > 0 ? `${words.join(', ')} a side` : null;
    },
    alternatives: (exercise) =>
      exercise.lift === 'back-squat'
        ? [{ ...squat, lift: 'front-squat', name: 'Front squat', load: kg(60), track: 'front' }]
        : [],
    withLoad: (exercise, load) => ({ ...exercise, load }),
    lighter: (exercise) =>
      exercise.load && exercise.load > 0 ? { ...exercise, load: kg(65) } : null,
    offer: (index) => (state && offer ? offer(index, state) : null),
    nearestLoads: (_, wish) => {
      const step = kg(2.5);
      const below = (Math.ceil(wish / step) - 1) * step;
      const above = (Math.floor(wish / step) + 1) * step;
      return {
        below: below >= kg(20) ? (below as Mass) : null,
        exact: wish % step === 0 ? wish : null,
        above: above as Mass,
      };
    },
    reasonWords: ({ rule }) =>
      ({
        'up-every-set': {
          text: 'Every set reached 8 reps, so the load goes up and the reps start again at 6.',
          source: 'size: ACSM 2009; trigger: common practice',
          facts: [{ name: 'last time', value: '8, 8, 8 reps at 80 kg' }],
        },
        'hold-in-range': {
          text: 'Inside the range: match every set and add one rep where it is missing.',
          source: 'common practice',
          facts: [],
        },
        'third-day': {
          text: 'You trained yesterday and the day before; Friday is the next good day.',
          source: 'common practice',
          facts: [],
        },
      })[rule] ?? { text: 'First time: find a load.', source: 'ours', facts: [] },
    review: () => ({
      effectiveReps: 22,
      clusters: { spent: 118, asStraight: 640 },
      bests: ['Back squat: best estimate so far, 101 kg (was 99.3).'],
      next: [
        {
          name: 'Back squat',
          plan: '82.5 kg · 3 sets of 7, 6, 5',
          why: 'Inside the range: one rep more on the first set.',
        },
      ],
    }),
    choices: () => choices,
    keep: (next) => {
      choices = next;
      return null;
    },
    watch: options.watch ?? emptyWatch(),
    desk: options.desk ?? emptyDesk(),
    banner: options.banner ?? null,
  };
  return { bench, clock, session: () => live.state(), facts: () => facts };
}
