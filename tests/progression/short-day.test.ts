import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { weekLack } from '../../src/cut/week-lack.ts';
import { plannedSeconds } from '../../src/progression/planned-seconds.ts';
import { prescribe } from '../../src/progression/prescribe.ts';
import type { Prescription } from '../../src/progression/prescription.ts';
import { progressionRules } from '../../src/progression/rules/progression-rules.ts';
import { shortDay } from '../../src/progression/short-day.ts';
import { kilograms } from '../../src/training/mass.ts';
import { clashesOf } from '../../src/training/pairing.ts';
import { aGear, dumbbells } from './a-gear.ts';
import { aPast, aResult, TODAY } from './a-past.ts';
import { aLift, aProgram, cluster, sideRaise, straight } from './a-program.ts';
import { nextTime } from './next-time.ts';

const gear = aGear({ dumbbells: dumbbells(4, 8) });
const squat = straight({
  lift: aLift({ key: 'squat', name: 'Squat', trains: { quads: 1, glutes: 1 } }),
  start: kilograms(60),
  sets: 4,
});
const press = straight({
  lift: aLift({ key: 'press', name: 'Press', trains: { chest: 1, triceps: 0.5 } }),
  start: kilograms(40),
  sets: 4,
});
const row = straight({ start: kilograms(40), sets: 4 });
const raise = cluster({ start: kilograms(6) });
const curl = straight({
  lift: { ...sideRaise, key: 'curl', name: 'Curl', trains: { biceps: 1 } },
  start: kilograms(8),
  rest: { from: 90, to: 120 },
});
const day = [squat, press, row, curl, raise];

function cutTo(minutes: number, past = aPast([]), exercises = day, owned = gear): Prescription {
  const program = aProgram(exercises);
  const [first] = program.days;
  if (!first) throw new Error('A day is missing.');
  return shortDay(prescribe(program, first, past, { today: TODAY, gear: owned }), {
    minutes,
    pace: 1,
    gear: owned,
    lacks: weekLack(program, past, TODAY),
  });
}

const plan = ({ exercises }: Prescription): readonly string[] =>
  exercises.map(({ name, sets }) => `${name} ${sets.length}`);

const words = ({ short }: Prescription): readonly string[] =>
  (short?.cut ?? []).map(({ rule, facts }) => {
    const found = progressionRules.find(({ key }) => key === rule);
    return found?.sentence(facts, 'kg') ?? rule;
  });

describe('a short day', () => {
  it('is the whole day where that fits', () => {
    const whole = cutTo(180);
    expect(plan(whole)).toEqual(['Squat 4', 'Press 4', 'Row 4', 'Curl 3', 'Side raise 1']);
    expect(whole.short).toBeUndefined();
  });

  it('first ends rests early, and cuts no set where that is enough', () => {
    const minutes = Math.ceil(plannedSeconds(cutTo(180), 1) / 60) - 3;
    const short = cutTo(minutes);
    expect(plan(short)).toEqual(plan(cutTo(180)));
    expect(short.short?.cut.map(({ rule }) => rule)).toEqual(['short-rests']);
    expect(short.exercises.some(({ rest }) => rest.from === rest.to)).toBe(true);
    expect(short.exercises.at(-1)?.rest).toEqual({ from: 10, to: 15 });
  });

  it('names only rests that can end earlier', () => {
    const fixed = { ...squat, rest: { from: 180, to: 180 } };
    const exercises = [fixed, press, row];
    const whole = plannedSeconds(cutTo(180, aPast([]), exercises), 1);
    const all = Array.from({ length: 15 }, (_, less) =>
      words(cutTo(Math.ceil(whole / 60) - less, aPast([]), exercises)),
    );
    const rests = all.flatMap((said) => said.filter((each) => each.startsWith('Rests end')));
    expect(rests.join()).toContain('Press');
    expect(rests.join()).not.toContain('Squat');
  });

  it('takes sets before exercises, then other isolation, clusters, and compounds last', () => {
    const barCurl = { ...curl, lift: { ...curl.lift, loading: 'barbell' as const } } as typeof curl;
    const onOneBar = [squat, press, row, barCurl];
    const cut = (minutes: number) => plan(cutTo(minutes, aPast([]), [...onOneBar, raise]));
    expect(cut(47)).toEqual(['Squat 3', 'Press 3', 'Row 3', 'Curl 3', 'Side raise 1']);
    expect(cut(39)).toEqual(['Squat 2', 'Press 2', 'Row 3', 'Curl 2', 'Side raise 1']);
    expect(cut(32)).toEqual(['Squat 2', 'Press 2', 'Row 2', 'Side raise 1']);
    expect(cut(29)).toEqual(['Squat 2', 'Press 2', 'Row 2']);
  });

  it('alternates sets that leave each other their rest before it cuts any, and says which', () => {
    const early = Math.ceil(plannedSeconds(cutTo(60), 1) / 60);
    const short = cutTo(early - 5);
    expect(plan(short)).toEqual(plan(cutTo(180)));
    expect(short.exercises.map(({ name, pair }) => `${name} ${pair ?? '-'}`)).toEqual([
      'Squat a',
      'Press -',
      'Row -',
      'Curl a',
      'Side raise -',
    ]);
    expect(words(short)).toContain('In turn, one lift while the other rests: Squat and Curl.');
  });

  it('leaves the pairs that the program has, and alternates nothing that goes by one pair of handles', () => {
    const own = [{ ...press, pair: 'x' }, { ...curl, pair: 'x' }, squat, row];
    const short = cutTo(30, aPast([]), own);
    expect(short.exercises.map(({ pair }) => pair)).toEqual(['x', 'x', undefined, undefined]);
    expect(short.short?.cut.map(({ rule }) => rule)).not.toContain('short-pairs');
    const swing = { ...press, lift: { ...press.lift, loading: 'dumbbell' as const } };
    const byHandles = aGear({
      dumbbells: [],
      handles: [{ mass: { amount: 2, unit: 'kg' }, count: 2 }],
    });
    expect(cutTo(18, aPast([]), [swing, curl], gear).exercises[0]?.pair).toBe('a');
    expect(cutTo(18, aPast([]), [swing, curl], byHandles).exercises[0]?.pair).toBeUndefined();
  });

  it('ends what was begun before it takes another exercise', () => {
    const program = aProgram(day);
    const whole = prescribe(program, program.days[0]!, aPast([]), { today: TODAY, gear });
    const [, , rowed] = whole.exercises;
    const begun = new Map([[rowed!.track, 1]]);
    const short = shortDay(whole, { minutes: 12, pace: 1, gear, lacks: new Map(), begun });
    expect(short.exercises.some(({ track }) => track === rowed!.track)).toBe(true);
    expect(plan(shortDay(whole, { minutes: 5, pace: 1, gear, lacks: new Map(), begun }))).toEqual([
      'Row 1',
    ]);
  });

  it('keeps the compounds whose muscles are furthest under their week', () => {
    const squatted = aResult(squat, { kg: 60, reps: [8, 8, 8, 8], rir: 1, daysAgo: 2 });
    const pressed = aResult(press, { kg: 40, reps: [8, 8, 8, 8], rir: 1, daysAgo: 2 });
    const rowed = aResult(row, { kg: 40, reps: [8, 8, 8, 8], rir: 1, daysAgo: 2 });
    expect(plan(cutTo(12, aPast([squatted, pressed])))).toEqual(['Row 2', 'Side raise 1']);
    expect(plan(cutTo(12, aPast([pressed, rowed])))).toEqual(['Squat 2', 'Side raise 1']);
    const often = [squat, row].flatMap((each) =>
      [1, 2, 3].map((daysAgo) => aResult(each, { kg: 40, reps: [8, 8, 8, 8], rir: 1, daysAgo })),
    );
    expect(plan(cutTo(12, aPast(often)))).toEqual(['Press 2', 'Side raise 1']);
  });

  it('says of everything that is cut why, and what the week then lacks', () => {
    expect(words(cutTo(29))).toEqual([
      'Rests end at their early end, between exercises and in Squat, Press, Row.',
      'In turn, one lift while the other rests: Squat and Curl.',
      'Squat: 2 of 4 sets, for want of time.',
      'Press: 2 of 4 sets, for want of time.',
      'Row: 2 of 4 sets, for want of time.',
      'Curl: 2 of 3 sets, for want of time.',
      'Side raise is left out: it takes 5 min, and none is left after what the week lacks most.',
      expect.stringContaining(
        'Cut today, in hard sets the week now lacks: chest 2, side delts 3.5',
      ),
    ]);
  });

  it('gives the least that is worth a warm-up where nothing fits, and says how long it takes', () => {
    const slow = [{ ...squat, rest: { from: 900, to: 900 } }];
    const short = cutTo(10, aPast([]), slow);
    expect(plan(short)).toEqual(['Squat 2']);
    expect(words(short)[0]).toBe('No shorter session is worth its warm-up: this one takes 19 min.');
  });

  it('warms up for what is left, also where what would have warmed its muscles is left out', () => {
    const second = straight({
      lift: aLift({ key: 'pulldown', name: 'Pulldown' }),
      start: kilograms(60),
      sets: 3,
    });
    const whole = cutTo(180, aPast([]), [curl, second]);
    expect(whole.exercises[1]?.warmUp.length).toBe(3);
    const third = straight({ lift: aLift({ key: 'pull', name: 'Pull' }), start: kilograms(60) });
    const both = cutTo(180, aPast([]), [third, second]);
    expect(both.exercises[1]?.warmUp.length).toBe(1);
    const rowed = cutTo(12, aPast([]), [third, second]);
    expect(rowed.exercises[0]?.warmUp.length).toBe(3);
  });

  it('is judged as planned for that day: fewer sets, all at the top, earn the next load', () => {
    const [squatted] = cutTo(27).exercises;
    if (!squatted) throw new Error('The squat is missing.');
    const reps = squatted.sets.map(() => 8);
    const done = aResult(
      squat,
      { kg: 60, reps, rir: 2, daysAgo: 3 },
      { ...squatted, move: 'hold' },
    );
    const { rules, aims, move } = nextTime(squat, [], { past: aPast([done]), gear });
    expect(rules).not.toContain('hold-unfinished');
    expect(move).toBe('up');
    expect(aims).toHaveLength(4);
  });

  it('fits, keeps the order and the loads, and cuts only from the end', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 8, max: 70 }),
        fc.shuffledSubarray(day, { minLength: 1 }),
        (minutes, exercises) => {
          const whole = cutTo(500, aPast([]), exercises);
          const short = cutTo(minutes, aPast([]), exercises);
          const least = short.short?.cut.some(({ rule }) => rule === 'short-least');
          expect(least || plannedSeconds(short, 1) <= minutes * 60).toBe(true);
          expect(short.exercises.length).toBeGreaterThan(0);
          let from = 0;
          for (const each of short.exercises) {
            const at = whole.exercises.findIndex(({ track }) => track === each.track);
            expect(at).toBeGreaterThanOrEqual(from);
            from = at + 1;
            const before = whole.exercises[at];
            expect(each.load).toBe(before?.load);
            const partner = short.exercises.find(
              (one) => one !== each && each.pair && one.pair === each.pair,
            );
            expect(partner ? clashesOf(each, partner) : []).toEqual([]);
            expect(each.sets).toEqual(before?.sets.slice(0, each.sets.length));
            expect(each.sets.length).toBeGreaterThanOrEqual(Math.min(2, before?.sets.length ?? 0));
          }
        },
      ),
      { numRuns: 60 },
    );
  });
});
