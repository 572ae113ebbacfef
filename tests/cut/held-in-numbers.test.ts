import { describe, expect, it } from 'vitest';
import { heldInNumbers } from '../../src/cut/held-in-numbers.ts';
import { keptByLift } from '../../src/cut/kept.ts';
import { because } from '../../src/progression/rules/progression-rules.ts';
import { kilograms } from '../../src/training/mass.ts';
import { day, every, LIFTS, type MadeResult, madePast, madeProgram, madeResult } from './made.ts';

const CUT = day('2026-09-07');
const TODAY = day('2026-11-16');
const program = madeProgram([{ lift: LIFTS.squat, sets: 3 }]);

/** Squats with these first reps every three days, while body weight falls from 85 kg to 80 kg on one day. */
function heldOf(reps: readonly number[], made: Partial<MadeResult> = {}, kg = [85, 80]) {
  const dates = every(3, made.on ?? CUT.toString(), reps.length);
  const results = reps.map((count, at) =>
    madeResult({
      lift: LIFTS.squat,
      load: 100,
      counts: [count, 6, 6],
      ...made,
      on: dates[at] ?? '',
    }),
  );
  const past = madePast(results, (date) =>
    CUT.until(date, { largestUnit: 'days' }).days < 30 ? (kg[0] ?? 0) : (kg[1] ?? 0),
  );
  const exercise = results.at(-1)?.exercise;
  if (!exercise) throw new Error('It was trained.');
  const prescribed = {
    ...exercise,
    why: [because('holding-wins')],
    warmUp: [],
    last: null,
    askPain: false,
  };
  const [told] = heldInNumbers([prescribed], program, past, TODAY);
  return { facts: told?.why[0]?.facts, past };
}

const SESSIONS = Array.from({ length: 23 }, () => 6);

describe('a lift that holds in a cut', () => {
  it('is told by body weight, then and now: 120 kg over 85 kg is 1.41, over 80 kg 1.50', () => {
    // Brzycki: 100 × 36 ÷ (37 − 7) = 120 kg.
    const { facts } = heldOf(SESSIONS);
    expect(facts?.lost).toBe(kilograms(5));
    expect(Number(facts?.before)).toBeCloseTo(1.41, 1);
    expect(Number(facts?.now)).toBeCloseTo(1.5, 1);
  });

  it('is told by the figure of the review, whatever its last set says', () => {
    const { facts, past } = heldOf([...SESSIONS.slice(1), 9]);
    const [kept] = keptByLift(past, CUT, TODAY);
    if (kept?.state !== 'known') throw new Error('23 sessions tell');
    expect(facts?.now).toBe(kept.perBodyMass);
    // That set alone: 100 × 36 ÷ (37 − 10) = 133.3 kg, 1.67 × 80 kg.
    expect(Number(facts?.now)).toBeLessThan(1.6);
  });

  it('of a lift begun later, since that day', () => {
    // Begun on the day that the 85 kg had become 80 kg: nothing was lost since.
    expect(heldOf(SESSIONS.slice(0, 13), { on: '2026-10-08' }).facts).toEqual({});
    expect(heldOf(SESSIONS.slice(0, 13), { on: '2026-10-05' }).facts).toHaveProperty('now');
  });

  it.each<[string, ReturnType<typeof heldOf>]>([
    ['where little was lost', heldOf(SESSIONS, {}, [80.9, 80])],
    [
      'where strength fell faster than body weight',
      heldOf(SESSIONS.map((reps, at) => (at < 8 ? reps + 4 : reps - 2))),
    ],
    ['under four sessions', heldOf([6, 6, 6], { on: '2026-09-20' })],
    ['of a lift that the body does not measure', heldOf(SESSIONS, { lift: LIFTS.raise })],
  ])('is told without numbers %s', (_, { facts }) => {
    expect(facts).toEqual({});
  });
});
