import { median } from 'd3-array';
import { Temporal } from 'temporal-polyfill';
import { describe, expect, it } from 'vitest';
import type { Program } from '../../src/program/program.ts';
import { type RehearsalOptions, rehearse } from '../../src/rehearsal/rehearse.ts';
import { rehearsedHistory } from '../../src/rehearsal/rehearsed-history.ts';
import { weeksOf } from '../../src/rehearsal/weeks-of.ts';
import { apply, fold } from '../../src/session/apply.ts';
import { resultsOf } from '../../src/session/results.ts';
import type { SessionState } from '../../src/session/state.ts';
import { defaultGear } from '../../src/training/default-gear.ts';
import { kilograms } from '../../src/training/mass.ts';
import { setSeconds } from '../../src/training/set-clock.ts';
import { forCuts, shippedPrograms } from '../figures/programs.ts';

const FROM = Temporal.PlainDate.from('2026-01-05');
const named = (name: string): Program => {
  const found = forCuts(shippedPrograms()).find((program) => program.file.endsWith(name));
  if (!found) throw new Error(`There is no ${name}.`);
  return found;
};
const threeDay = named('three-day.yaml');

const options = (changes: Partial<RehearsalOptions> = {}): RehearsalOptions => ({
  from: FROM,
  weeks: 6,
  loss: 0.7,
  seed: 1,
  gear: defaultGear('kg'),
  bodyMass: kilograms(80),
  ...changes,
});

describe('a rehearsal', () => {
  const played = rehearse(threeDay, options());

  it('trains on three days of the week, one day of the program after the other', () => {
    expect(played.sessions.map(({ date }) => date.dayOfWeek).slice(0, 6)).toEqual([
      1, 3, 5, 1, 3, 5,
    ]);
    const days = played.sessions.map(({ done }) => done.day);
    const names = threeDay.days.map(({ name }) => name);
    expect(days).toEqual(days.map((_, at) => names[at % names.length]));
  });

  it('is the same for the same seed, and another for another', () => {
    const loads = (seed: number) =>
      rehearse(threeDay, options({ seed })).sessions.flatMap(({ results }) =>
        results.flatMap(({ sets }) => sets.map(({ count }) => count)),
      );
    expect(loads(1)).toEqual(loads(1));
    expect(loads(1)).not.toEqual(loads(2));
  });

  it('plays sessions that are real ones: their events give the same results when folded anew', () => {
    for (const { events, results } of played.sessions) {
      const state = fold(events);
      expect(state?.stage).toEqual({ kind: 'closed', how: 'finished' });
      expect(state && resultsOf(state)).toEqual(results);
    }
  });

  it('of short days plays shorter sessions through to their end, judged as planned for the day', () => {
    const minutes = (cut?: number) => {
      const short = rehearse(threeDay, options(cut === undefined ? {} : { minutes: cut }));
      for (const { state, results } of short.sessions) {
        expect(state.stage).toEqual({ kind: 'closed', how: 'finished' });
        expect(results.every(({ finished }) => finished)).toBe(true);
      }
      const names = short.sessions.map(({ done }) => done.day);
      expect(names.slice(0, 4)).toEqual(['A', 'B', 'C', 'A']);
      const weeks = weeksOf(threeDay, short, FROM).map((week) => week.minutes ?? 0);
      return weeks.reduce((sum, each) => sum + each, 0) / weeks.length;
    };
    const [whole, half, third] = [minutes(), minutes(30), minutes(20)];
    expect(half).toBeLessThan(whole * 0.7);
    expect(third).toBeLessThan(half * 0.8);
  });

  it.each([1, 2, 3, 4, 5, 6, 7])(
    'trains on %d days of a week, not twice running while it can',
    (daysPerWeek) => {
      const program = { ...threeDay, daysPerWeek };
      const { sessions } = rehearse(program, options({ weeks: 2 }));
      const days = sessions.map(({ date }) => FROM.until(date).days);
      expect(days.filter((day) => day < 7)).toHaveLength(daysPerWeek);
      expect(days.filter((day) => day >= 7)).toHaveLength(daysPerWeek);
      const apart = days.slice(1).map((day, at) => day - days[at]!);
      expect(Math.min(...apart)).toBe(daysPerWeek <= 3 ? Math.floor(7 / daysPerWeek) : 1);
    },
  );

  it('takes as long for a set as its reps do, and rests the middle of the range', () => {
    let [sets, rests, minis] = [0, 0, 0];
    for (const { events } of played.sessions.slice(0, 6)) {
      let state: SessionState | null = null;
      for (const event of events) {
        const { stage, lastAt, exercises } = state ?? { stage: null, lastAt: null, exercises: [] };
        const at = event.at.wall;
        if (event.type === 'set-started' && stage?.kind === 'resting') {
          const { since, rest } = stage.running;
          expect(at - since.wall).toBe(((rest.from + rest.to) / 2) * 1000);
          rests += 1;
        }
        if (event.type === 'set-done') {
          const { prescribed } = exercises[event.exercise]!;
          const lifted = Math.max(2, setSeconds(event.count, prescribed)) * 1000;
          const isMini = event.role === 'mini';
          // A mini-set begins by itself, at the early end of its rest.
          const rest = isMini ? prescribed.rest.from * 1000 : 0;
          expect(at - lastAt!.wall).toBe(rest + lifted);
          sets += isMini ? 0 : 1;
          minis += isMini ? 1 : 0;
        }
        state = apply(state, event);
      }
    }
    expect(Math.min(sets, rests)).toBeGreaterThan(40);
    expect(minis).toBeGreaterThan(10);
  });

  it('rests between sets as the program says', () => {
    const [first] = played.sessions;
    const squat = first?.state.exercises[0];
    const [one, two] = squat?.done ?? [];
    if (!one || !two?.startedAt || !squat) throw new Error('The first exercise has two sets.');
    const rested = (two.startedAt.wall - one.at.wall) / 1000;
    expect(rested).toBeGreaterThanOrEqual(squat.prescribed.rest.from);
    expect(rested).toBeLessThanOrEqual(squat.prescribed.rest.to);
  });

  it('loses body weight at the rate asked for, and weighs it with the scatter of a scale', () => {
    // 80 kg × 0.993^6 = 76.7 kg.
    const last = played.weighIns.slice(-14).map(({ mass }) => mass / 1e9);
    const mean = last.reduce((a, b) => a + b, 0) / last.length;
    expect(mean).toBeGreaterThan(76.4);
    expect(mean).toBeLessThan(77.9);
    expect(new Set(last).size).toBeGreaterThan(4);
    const trend = played.past.bodyMassOn(FROM.add({ days: 41 }));
    expect((trend ?? 0) / 1e9).toBeGreaterThan(76);
  });

  it('leaves the days out on which the lifter is away, and then comes back lighter', () => {
    const away = rehearse(threeDay, options({ away: [[14, 35]] }));
    const days = away.sessions.map(({ date }) => FROM.until(date).days);
    expect(days.some((day) => day >= 14 && day < 35)).toBe(false);
    const back = away.sessions.find(({ date }) => FROM.until(date).days >= 35);
    const moves = back?.results.map(({ exercise }) => exercise.move);
    expect(moves?.filter((move) => move === 'return').length).toBeGreaterThan(2);
  });

  it('goes on from what was trained before', () => {
    const before = played.past;
    const on = rehearse(threeDay, options({ from: FROM.add({ weeks: 6 }), weeks: 2, before }));
    const moves = on.sessions[0]?.results.map(({ exercise }) => exercise.move) ?? [];
    expect(moves).not.toContain('start');
    expect(before.sessions).toHaveLength(18);
  });
});

it('begins where no load is told with about what could be done two reps past the range', () => {
  const [day] = threeDay.days;
  const exercise = { ...day!.exercises[0]!, start: null };
  const program = { ...threeDay, days: [{ ...day!, exercises: [exercise] }], daysPerWeek: 1 };
  const strengths = new Map([[exercise.lift.key, kilograms(150)]]);
  const first = Array.from({ length: 12 }, (_, seed) => {
    const [session] = rehearse(program, options({ weeks: 1, seed, strengths })).sessions;
    return session!.results[0]!.sets[0]!.load / kilograms(1);
  });
  // Ten reps can be done with 75 % (Brzycki 1993): 112.5 kg, named within a tenth.
  expect([exercise.lift.key, exercise.range]).toEqual(['back-squat', [5, 8]]);
  expect(Math.abs(median(first)! - 112.5)).toBeLessThan(4);
  expect(Math.max(...first.map((load) => Math.abs(load - 112.5)))).toBeLessThan(17);
  expect(new Set(first).size).toBeGreaterThan(3);
});

it('adds up hard sets, minutes and moves week by week', () => {
  const weeks = weeksOf(threeDay, rehearse(threeDay, options()), FROM);
  expect(weeks.map(({ week, sessions }) => [week, sessions])).toEqual(
    [1, 2, 3, 4, 5, 6].map((week) => [week, 3]),
  );
  expect(weeks[0]?.tracks.every(({ moves }) => moves[0] === 'start')).toBe(true);
  for (const { minutes, kept, hardSets } of weeks) {
    expect(minutes).toBeGreaterThan(20);
    expect(minutes).toBeLessThan(90);
    expect(kept).toBeGreaterThan(0.9);
    expect(hardSets.get('quads')).toBeGreaterThan(2);
  }
});

it('tells of a week the mean of its seven days, and of the last one that of the days there are', () => {
  const lifts = threeDay.days.flatMap(({ exercises }) => exercises.map(({ lift }) => lift.key));
  // Day by day a hundredth less is kept of every lift.
  const kept = Array.from(
    { length: 16 },
    (_, at) => new Map(lifts.map((lift) => [lift, 1 - at / 100])),
  );
  const weeks = weeksOf(
    threeDay,
    { ...rehearse(threeDay, options({ weeks: 1 })), sessions: [], kept },
    FROM,
  );
  // Means of the days 0 to 6, 7 to 13, 14 and 15.
  for (const [at, share] of [0.97, 0.9, 0.855].entries()) {
    expect(weeks[at]?.kept).toBeCloseTo(share, 9);
    expect(weeks[at]?.from.toString()).toBe(FROM.add({ weeks: at }).toString());
  }
  expect(weeks).toHaveLength(3);
});

it('tells what is kept as the median of the compound lifts, and of every lift where none is one', () => {
  const played = rehearse(threeDay, options({ weeks: 2 }));
  const middleOf = (kinds: readonly string[], weeks: ReturnType<typeof weeksOf>) =>
    weeks.map(({ tracks }) => {
      const counted = tracks.filter(({ kind }) => kinds.includes(kind));
      const byLift = new Map(counted.map(({ lift, kept }) => [lift, kept]));
      return median(byLift.values());
    });
  const weeks = weeksOf(threeDay, played, FROM);
  expect(weeks.map(({ kept }) => kept)).toEqual(middleOf(['compound'], weeks));
  const small = {
    ...threeDay,
    days: threeDay.days.map((day) => ({
      ...day,
      exercises: day.exercises.filter(({ lift }) => lift.kind === 'isolation'),
    })),
  };
  const others = weeksOf(small, rehearse(small, options({ weeks: 1 })), FROM);
  expect(others.map(({ kept }) => kept)).toEqual(middleOf(['isolation'], others));
  expect(others[0]?.tracks.length).toBeGreaterThan(2);
});

describe('a rehearsed history', () => {
  const until = Temporal.PlainDate.from('2026-11-24');
  const { from: _, ...rest } = options({ weeks: 4 });
  const history = rehearsedHistory(threeDay, { ...rest, until, zone: 60 });

  it('ends on the day asked for, every session closed', () => {
    const dates = history.sessions.map((events) => events[0]?.at.wall ?? 0);
    const end = until.add({ days: 1 }).toZonedDateTime('UTC').epochMilliseconds;
    expect(history.sessions).toHaveLength(12);
    expect(Math.max(...dates)).toBeLessThan(end);
    expect(dates).toEqual([...dates].sort((a, b) => a - b));
    for (const events of history.sessions) expect(events.at(-1)?.type).toBe('session-closed');
    for (const { date } of history.weighIns) {
      expect(Temporal.PlainDate.compare(date, until)).toBeLessThanOrEqual(0);
    }
  });

  it('is dated in local time', () => {
    const [opening] = history.sessions[0] ?? [];
    if (opening?.type !== 'session-opened') throw new Error('A session begins with its opening.');
    expect(opening.zone).toBe(60);
    const local = new Date(opening.at.wall + 60 * 60_000).toISOString();
    expect(local.slice(0, 10)).toBe(opening.prescription.date);
    expect(local.slice(11, 16)).toBe('17:30');
  });
});
