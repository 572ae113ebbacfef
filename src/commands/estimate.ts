import { openLifter } from '../lifter/open-lifter.ts';
import { textTable } from '../report/table.ts';
import { jsonText } from '../text/json-text.ts';
import { WrongUse } from '../text/problem.ts';
import { type Loads, loadsFor } from '../training/loads.ts';
import { inUnit, type Mass, massOf, type Unit } from '../training/mass.ts';
import { CURVE, loadForReps, oneRepMax, shareOfMax, shownOneRepMax } from '../training/strength.ts';
import type { Call, Run } from './call.ts';
import type { EstimateJson } from './estimate-schema.ts';
import { massOperand, wholeNumber } from './operands.ts';

const MOST_REPS = 12;

const LIMITS =
  'An estimate, most accurate up to 10 reps to failure (bench press, 220 men: Mayhew 1995) and shown up to 15. Reps in reserve are judged to about one rep near failure and poorly far from it (Hackett 2017).';

/** Estimates the one-repetition maximum from one set, and the loads for other reps. */
export const run: Run = (call) => {
  const lifter = openLifter(call.ports, call.global);
  const load = required(call, 'load');
  const { amount, unit } = massOperand(load, lifter.unit());
  if (amount <= 0) {
    throw new WrongUse({
      what: `--load is "${load}".`,
      why: 'It is all that was lifted, so more than 0; where the body is part of it, that counts too.',
    });
  }
  const reps = wholeNumber(required(call, 'reps'), '--reps', 1, 30);
  const reserve = wholeNumber(String(call.options.reserve ?? '0'), '--reserve', 0, 10);
  const gear = lifter.gear();
  // Without a bar loads go by a plain step, which is nobody's bar.
  const bar =
    gear.bars.length > 0
      ? loadsFor(gear, { loading: 'barbell', hands: 1, bar: null, step: null })
      : null;
  const max = oneRepMax(amount, reps + reserve);
  const json: EstimateJson = {
    schema: 1,
    unit,
    load: amount,
    reps,
    reserve,
    reps_to_failure: reps + reserve,
    e1rm: rounded(shownOneRepMax(amount, reps + reserve)),
    formula: reps + reserve > CURVE.joinedAt ? 'Epley (1985)' : 'Brzycki (1993)',
    limits: LIMITS,
    loads: Array.from({ length: MOST_REPS }, (_, at) => {
      const estimate = loadForReps(max, at + 1, reserve);
      const loadable = bar?.atOrBelow(massOf({ amount: estimate, unit })) ?? null;
      return {
        reps: at + 1,
        estimate: rounded(estimate) ?? 0,
        share: rounded(shareOfMax(at + 1 + reserve), 3) ?? 0,
        loadable: loadable && rounded(inUnit(loadable, unit), 3),
      };
    }),
  };
  call.print(call.global.json ? jsonText(json) : estimateText(json, unit, bar));
  return 0;
};

function required({ options }: Call, name: 'load' | 'reps'): string {
  const given = options[name];
  if (typeof given === 'string') return given;
  throw new WrongUse({
    what: `--${name} is missing.`,
    fix: 'Write for example: holdfast estimate --load 100 --reps 5 --reserve 2.',
  });
}

const rounded = <T extends number | null>(value: T, digits = 2): T =>
  (value === null ? null : Number(value.toFixed(digits))) as T;

function estimateText(json: EstimateJson, unit: Unit, bar: Loads | null): string {
  const { load, reps, reserve, e1rm, loads } = json;
  const set = `${load} ${unit} × ${reps} with ${reserve} in reserve`;
  if (e1rm === null) {
    // Loads for fewer reps would be the same guess.
    const head = `${set}: too many reps to failure (${json.reps_to_failure}) for an estimate that can be shown.`;
    return [head, '', json.limits].join('\n');
  }
  const head = `${set}: about ${e1rm.toFixed(1)} ${unit} for one rep, by ${json.formula}.`;
  const rows = loads.map((row) => [
    String(row.reps),
    `${row.estimate.toFixed(1)} ${unit}`,
    `${Math.round(row.share * 100)} %`,
    ...(bar ? [onBar(row, unit, bar.heaviest)] : []),
  ]);
  const columns = [
    { heading: 'reps', align: 'right' },
    { heading: 'estimate', align: 'right' },
    { heading: 'of e1RM', align: 'right' },
    ...(bar ? [{ heading: 'on your bar', align: 'right' } as const] : []),
  ] as const;
  const left = `Loads for other reps with ${reserve} in reserve:`;
  return [head, '', left, ...textTable(columns, rows, 80), '', json.limits].join('\n');
}

function onBar(
  { estimate, loadable }: EstimateJson['loads'][number],
  unit: Unit,
  heaviest: Mass | null,
): string {
  if (loadable === null) return 'under the empty bar';
  const isOver = heaviest !== null && estimate > inUnit(heaviest, unit);
  return `${rounded(loadable)} ${unit}${isOver ? ' at most' : ''}`;
}
