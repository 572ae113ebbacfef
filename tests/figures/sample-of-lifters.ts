import { Temporal } from 'temporal-polyfill';
import type { Program } from '../../src/program/program.ts';
import { firstStrengths } from '../../src/rehearsal/first-strength.ts';
import { LIFTER_MODEL, type LifterModel } from '../../src/rehearsal/lifter-model.ts';
import { rehearse } from '../../src/rehearsal/rehearse.ts';
import { seededRandom } from '../../src/rehearsal/seeded-random.ts';
import { defaultGear } from '../../src/training/default-gear.ts';
import type { Gear } from '../../src/training/gear.ts';
import { kilograms } from '../../src/training/mass.ts';
import { varyModel } from '../rehearsal/made-model.ts';
import {
  isSettled,
  isWithin,
  longestHeldBack,
  longestOscillation,
  sessionsToRecover,
  tracksOf,
} from './held-loads.ts';

const FROM = Temporal.PlainDate.from('2026-01-05');
const WEEKS = 24;

/** What was seen over many lifters. */
export interface SampleFigures {
  readonly lifters: number;
  readonly sessions: number;
  /** Settled prescriptions, and those further than 10 % (or a step) from what the lifter could do. */
  readonly judged: number;
  readonly outside: number;
  /** Settled tracks of a lifter, and how many times in a row one went to a load and back. */
  readonly tracks: number;
  readonly oscillations: ReadonlyMap<number, number>;
  /** Layoffs of a track, and sessions until it was back; null where it never was. */
  readonly layoffs: number;
  readonly recoveries: ReadonlyMap<number | null, number>;
  /** Tracks of lifters who truly gain, and the most sessions that one stayed at a load it had outgrown. */
  readonly gaining: number;
  readonly heldBack: ReadonlyMap<number, number>;
  /** The worst of each, in words, so that it can be played again. */
  readonly worst: readonly string[];
}

interface Drawn {
  readonly program: Program;
  readonly seed: number;
  readonly model: LifterModel;
  readonly gear: Gear;
  readonly loss: number;
  /** Days off, or null. */
  readonly away: readonly [number, number] | null;
  readonly strengths: ReadonlyMap<string, number>;
  readonly bodyMass: number;
}

/**
 * Draws the lifter of a seed: every constant within ± 30 %, a third of them gaining up to 1 % a week
 * by themselves, first loads that are up to 25 % too heavy or too light, a loss of 0 to 1 % a week,
 * a third with two to seven weeks off, and pairs of plates from 0.5 kg or from 1.25 kg.
 */
export function drawLifter(programs: readonly Program[], seed: number): Drawn {
  const random = seededRandom(seed);
  const program = programs[seed % programs.length];
  if (!program) throw new Error('There is no program to draw from.');
  const gains = random.uniform() < 1 / 3;
  const varied = varyModel(LIFTER_MODEL, 0.3, random);
  const model = { ...varied, growth: gains ? 0.002 + 0.008 * random.uniform() : 0 };
  const bodyMass = Math.round(60 + 40 * random.uniform());
  const usual = firstStrengths(program, kilograms(bodyMass), new Map());
  const strengths = new Map(
    [...usual].map(([lift, strength]) => [lift, strength * (0.8 + 0.45 * random.uniform())]),
  );
  const offFor = Math.round(14 + 35 * random.uniform());
  const off = Math.round(60 + 40 * random.uniform());
  const small = random.uniform() < 0.5;
  return {
    program,
    seed,
    model,
    gear: small ? withSmallPlates(defaultGear('kg')) : defaultGear('kg'),
    loss: gains ? 0 : random.uniform(),
    away: random.uniform() < 1 / 3 ? [off, off + offFor] : null,
    strengths,
    bodyMass,
  };
}

const withSmallPlates = (gear: Gear): Gear => ({
  ...gear,
  plates: [...gear.plates, { stamped: { amount: 0.5, unit: 'kg' }, count: 4 }],
});

export const playDrawn = (drawn: Drawn) =>
  rehearse(drawn.program, {
    from: FROM,
    weeks: WEEKS,
    loss: drawn.loss,
    seed: drawn.seed,
    gear: drawn.gear,
    bodyMass: kilograms(drawn.bodyMass),
    model: drawn.model,
    strengths: drawn.strengths,
    away: drawn.away ? [drawn.away] : [],
  });

/** Plays so many lifters for 24 weeks, and looks at every load that they were given. */
export function sampleOfLifters(
  programs: readonly Program[],
  lifters: number,
  firstSeed = 1,
): SampleFigures {
  let [sessions, judged, outside, tracks, layoffs, gaining] = [0, 0, 0, 0, 0, 0];
  const oscillations = new Map<number, number>();
  const recoveries = new Map<number | null, number>();
  const heldBack = new Map<number, number>();
  const worst: string[] = [];
  const count = <K>(counts: Map<K, number>, key: K) => counts.set(key, (counts.get(key) ?? 0) + 1);
  for (let seed = firstSeed; seed < firstSeed + lifters; seed += 1) {
    const drawn = drawLifter(programs, seed);
    const rehearsal = playDrawn(drawn);
    sessions += rehearsal.sessions.length;
    const back = drawn.away
      ? rehearsal.sessions.findIndex(({ date }) => FROM.until(date).days >= (drawn.away?.[1] ?? 0))
      : -1;
    for (const [track, played] of tracksOf(rehearsal, drawn.gear, drawn.model)) {
      const name = `lifter ${seed}, ${track}`;
      tracks += 1;
      const settled = played.filter((_, at) => isSettled(played, at));
      const away = settled.filter((each) => !isWithin(each));
      judged += settled.length;
      outside += away.length;
      if (away.length > 3)
        worst.push(`${name}: ${away.length} loads outside, from ${away[0]?.date}`);
      const turns = longestOscillation(played);
      count(oscillations, turns);
      if (turns > 2) worst.push(`${name}: back and forth ${turns} times`);
      if (back > 0) {
        layoffs += 1;
        const took = sessionsToRecover(played, back);
        count(recoveries, took);
        if (took === null || took > 4)
          worst.push(`${name}: ${took ?? 'never'} sessions to recover`);
      }
      if (drawn.model.growth > 0) {
        const held = longestHeldBack(played);
        gaining += 1;
        count(heldBack, held);
        if (held > 12) worst.push(`${name}: held for ${held} sessions at a load outgrown`);
      }
    }
  }
  return {
    lifters,
    sessions,
    judged,
    outside,
    tracks,
    oscillations,
    layoffs,
    recoveries,
    gaining,
    heldBack,
    worst,
  };
}
