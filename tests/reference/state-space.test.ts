import { describe, expect, it } from 'vitest';
import { GaussianStates, type Outlook, type StateRow } from '../../src/training/gaussian-states.ts';
import { leastSquares } from '../../src/training/least-squares.ts';

/** Flow of the Nile at Aswan 1871–1970, 10⁸ m³: open data, Cobb 1978, Biometrika 65:243–251. */
const NILE = [
  1120, 1160, 963, 1210, 1160, 1160, 813, 1230, 1370, 1140, 995, 935, 1110, 994, 1020, 960, 1180,
  799, 958, 1140, 1100, 1210, 1150, 1250, 1260, 1220, 1030, 1100, 774, 840, 874, 694, 940, 833, 701,
  916, 692, 1020, 1050, 969, 831, 726, 456, 824, 702, 1120, 1100, 832, 764, 821, 768, 845, 864, 862,
  698, 845, 744, 796, 1040, 759, 781, 865, 845, 944, 984, 897, 822, 1010, 771, 676, 649, 846, 812,
  742, 801, 1040, 860, 874, 848, 890, 744, 749, 838, 1050, 918, 986, 797, 923, 975, 815, 1020, 906,
  901, 1170, 912, 746, 919, 718, 714, 740,
];
/** Durbin & Koopman 2012, §2.2.5. */
const [NOISE, WANDERING] = [15_099, 1_469.1];

/** The first quantity of the state, and the second. */
const [FIRST, SECOND]: [StateRow, StateRow] = [[[0, 1]], [[1, 1]]];

const only = ({ mean: [mean = 0], variance: [variance = 0] }: Outlook) => ({ mean, variance });

/** Local level model with a diffuse start: after the first value the level is that value, known as well as it is. */
function filtered() {
  const state = new GaussianStates(2, 1);
  state.reset(0, NILE[0] ?? 0, [NOISE]);
  state.copy(1, 0);
  let [logLikelihood, gain] = [0, 0];
  const row = FIRST;
  for (const value of NILE.slice(1)) {
    state.disturb(0, 0, [WANDERING]);
    const { variance } = only(state.along(row));
    gain = variance / (variance + NOISE);
    logLikelihood += state.learn(value, [NOISE])[0] ?? 0;
  }
  return { state, logLikelihood, gain };
}

describe('the filter, on the flow of the Nile', () => {
  it('has the mean of the data right', () => {
    expect(NILE.reduce((sum, value) => sum + value, 0) / NILE.length).toBeCloseTo(919.35, 9);
  });

  it('gives the diffuse log-likelihood −632.546', () => {
    // Printed in others' worked examples with these variances; the first value is the start.
    expect(filtered().logLikelihood).toBeCloseTo(-632.546, 2);
  });

  it('predicts 798.37 for 1971, with a variance of 5 501.26', () => {
    const { state } = filtered();
    state.disturb(0, 0, [WANDERING]);
    const { mean, variance } = only(state.along(FIRST));
    expect(mean).toBeCloseTo(798.37, 2);
    expect(variance).toBeCloseTo(5501.26, 1);
  });

  it('settles at the gain of the closed form', () => {
    const q = WANDERING / NOISE;
    const x = (q + Math.sqrt(q * q + 4 * q)) / 2;
    expect(filtered().gain).toBeCloseTo(x / (1 + x), 6);
    expect(filtered().gain).toBeCloseTo(0.26705, 5);
  });
});

describe('the copy that stands still', () => {
  it('is the smoothed first level: the same series filtered from its end to its beginning', () => {
    // Of a local level the smoothed first level is the first prediction weighed with all later
    // values, which a filter that runs backwards gives in one pass.
    const { state } = filtered();
    const back = new GaussianStates(1, 1);
    back.reset(0, NILE.at(-1) ?? 0, [NOISE]);
    for (const value of [...NILE].reverse().slice(1)) {
      back.disturb(0, 0, [WANDERING]);
      back.along(FIRST);
      back.learn(value, [NOISE]);
    }
    expect(only(state.along(SECOND)).mean).toBeCloseTo(only(back.along(FIRST)).mean, 6);
    expect(only(state.along(SECOND)).variance).toBeCloseTo(only(back.along(FIRST)).variance, 6);
  });
});

describe('several variants side by side', () => {
  it('are each what it is alone', () => {
    const of = (wandering: readonly number[]) => {
      const state = new GaussianStates(3, wandering.length);
      state.reset(
        0,
        1000,
        wandering.map(() => NOISE),
      );
      state.reset(1, 0, wandering);
      NILE.forEach((value, at) => {
        state.add(0, 1, 0.1);
        state.disturb(
          0,
          1,
          wandering.map((each) => each / 50),
        );
        state.disturb(0, 0, wandering);
        state.scale(1, 0.9);
        if (at === 40) state.copy(2, 0);
        if (at === 60) state.keep(wandering.map((_, v) => v));
        state.along([
          [0, 1],
          [1, 0.5],
        ]);
        state.learn(
          value,
          wandering.map(() => NOISE),
        );
      });
      const { mean, variance } = state.along([
        [0, 1],
        [2, -1],
      ]);
      return [...mean].map((each, v) => [each, variance[v] ?? 0] as const);
    };
    const wandering = [WANDERING, 100, 5000];
    const alone = wandering.flatMap((each) => of([each]));
    of(wandering).forEach(([mean, variance], v) => {
      expect(mean).toBeCloseTo(alone[v]?.[0] ?? Number.NaN, 9);
      expect(variance).toBeCloseTo(alone[v]?.[1] ?? Number.NaN, 6);
    });
  });
});

describe('where nothing wanders', () => {
  it('level and slope are those of least squares, with their errors', () => {
    const points = NILE.slice(0, 30).map((value, at) => [at, value] as const);
    const state = new GaussianStates(2, 1);
    state.reset(0, 0, [1e12]);
    state.reset(1, 0, [1e12]);
    points.forEach(([, value], at) => {
      if (at > 0) state.add(0, 1, 1);
      state.along(FIRST);
      state.learn(value, [NOISE]);
    });
    const line = leastSquares(points);
    expect(only(state.along(SECOND)).mean).toBeCloseTo(line.slope, 4);
    const spread = points.reduce((sum, [x]) => sum + (x - 14.5) ** 2, 0);
    expect(only(state.along(SECOND)).variance).toBeCloseTo(NOISE / spread, 4);
  });
});
