import { cutRules } from '../../src/cut/cut-rules.ts';
import { evidenceOf } from '../../src/cut/evidence.ts';
import { review } from '../../src/cut/review.ts';
import { bodyMassOn } from '../../src/journal/history.ts';
import type { Result } from '../../src/progression/past.ts';
import { progressionRules } from '../../src/progression/rules/progression-rules.ts';
import { lengthOf } from '../../src/training/length.ts';
import { kilograms } from '../../src/training/mass.ts';
import type { ReasonWords } from '../../src/training/rule.ts';
import { day, every, LIFTS, madePast, madeProgram, madeResult } from '../cut/made.ts';

const CUT = day('2026-08-31');
export const TODAY = CUT.add({ days: 48 });

const LOADS = { squat: 100, bench: 75, row: 70, pullUp: 5 } as const;

/** Seven invented weeks of a cut: three sessions each, one missed, weighed on most days. */
export function madeCut(weightAdvice = true) {
  const days = [...Array(7).keys()]
    .flatMap((week) => every(2, CUT.add({ weeks: week }).toString(), 3))
    .filter((_, at) => at !== 10);
  const results = days.flatMap((on, at): Result[] => [
    ...(['squat', 'bench', 'row', 'pullUp'] as const).map((key) =>
      madeResult({
        lift: LIFTS[key],
        on,
        load: LOADS[key] + (key === 'row' ? 2.5 * Math.floor(at / 6) : 0),
        counts: key === 'pullUp' ? [7, 6] : [6 + (at % 3 === 0 ? 1 : 0), 6, 5],
        asked: key === 'pullUp' ? 2 : 3,
        reserve: at % 4 === 0 ? 2 : 1,
        move: at === 0 ? 'start' : 'hold',
      }),
    ),
    madeResult({
      lift: LIFTS.raise,
      on,
      load: 8,
      counts: [14, 4, 4, 3],
      style: 'cluster',
      range: [12, 15],
      asked: 5,
      finished: true,
    }),
  ]);
  const weighIns = [...Array(49).keys()]
    .filter((at) => at % 5 !== 3 && (at < 20 || at > 24))
    .map((at) => ({
      id: `w:${at}`,
      at: 0,
      date: CUT.add({ days: at }),
      mass: kilograms(
        Math.round((88 - 0.09 * at - Math.min(at, 6) * 0.15 + Math.sin(at * 1.9) * 0.4) * 10) / 10,
      ),
    }));
  const trend = bodyMassOn(weighIns);
  const waists = [0, 20, 40].map((at) => ({
    id: `waist:${at}`,
    date: CUT.add({ days: at }),
    length: lengthOf(92 - at / 10, 'cm'),
  }));
  const past = { ...madePast(results), bodyMassOn: trend, weighIns, waists };
  const program = madeProgram([
    { lift: LIFTS.squat, sets: 3 },
    { lift: LIFTS.bench, sets: 3 },
    { lift: LIFTS.row, sets: 3 },
    { lift: LIFTS.pullUp, sets: 2 },
    { lift: LIFTS.raise, sets: 5, range: [12, 15], cluster: true },
  ]);
  const question = { program, past, weighIns, waists, today: TODAY, weightAdvice };
  return {
    past,
    program,
    question,
    evidence: evidenceOf(question),
    review: review(question, 6),
  };
}

export const words: ReasonWords = ({ rule, facts }) => {
  const found = [...cutRules, ...progressionRules].find(({ key }) => key === rule);
  if (!found) throw new Error(`No rule ${rule}.`);
  return { text: found.sentence(facts, 'kg'), source: found.source };
};
