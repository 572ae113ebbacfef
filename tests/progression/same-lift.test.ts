import { describe, expect, it } from 'vitest';
import type { Exercise } from '../../src/program/program.ts';
import { readProgram } from '../../src/program/read-program.ts';
import type { Result } from '../../src/progression/past.ts';
import { prescribe } from '../../src/progression/prescribe.ts';
import { inUnit } from '../../src/training/mass.ts';
import { aGear } from './a-gear.ts';
import { aPast, aResult, TODAY } from './a-past.ts';
import { tellOf } from './next-time.ts';

/** Blocks of one lift and range in one day, by where the program starts them and what each did last. */
function today(...blocks: readonly (readonly [start: string, kg: number, reps: number[]])[]) {
  const listed = blocks.map(
    ([start]) => `{ lift: barbell-row, sets: 2, reps: 5-8, reserve: 1-2${start} }`,
  );
  const text = `name: P\nunit: kg\naim: maintain\ndays: [{ name: A, exercises: [${listed.join(', ')}] }]\n`;
  const read = readProgram(text, 'p.yaml');
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const [day] = read.program.days;
  const results = blocks.flatMap(([, kg, reps], at) => {
    const exercise = day?.exercises[at] as Exercise;
    return [{ ...aResult(exercise, { kg, reps, rir: 2, daysAgo: 3 }) }];
  });
  const { exercises } = prescribe(read.program, day!, aPast(results), {
    today: TODAY,
    gear: aGear(),
  });
  return exercises.map(tellOf);
}

describe('a lift that a day holds more than once in one range', () => {
  const like = ', start: 60';

  it('has one load where the program starts all of them alike, the lightest', () => {
    const told = today([like, 65, [6, 6]], [like, 62.5, [7, 6]], [like, 62.5, [8, 8]]);
    expect(told.map(({ kg }) => kg)).toEqual([62.5, 62.5, 62.5]);
    expect(told[2]?.words[0]).toBe(
      'The day holds this lift and range more than once: 62.5 kg here, too, so that no load rises within the day.',
    );
    expect(told.map(({ move }) => move)).toEqual(['ease', 'hold', 'hold']);
  });

  it('goes up once all of them are there', () => {
    const told = today([like, 60, [8, 8]], [like, 60, [8, 8]]);
    expect(told.map(({ move, kg }) => `${move} ${kg}`)).toEqual(['up 62.5', 'up 62.5']);
  });

  it('falls, but does not rise, where the program says nothing of its loads', () => {
    const told = today(['', 65, [6, 6]], ['', 60, [7, 6]], ['', 65, [6, 6]]);
    expect(told.map(({ kg }) => kg)).toEqual([65, 60, 60]);
  });

  it('rises where the program starts it so, and keeps lighter sets lighter', () => {
    const rising = today([', start: 60', 60, [6, 6]], [', start: 70', 70, [6, 6]]);
    expect(rising.map(({ kg }) => kg)).toEqual([60, 70]);
    const falling = today([', start: 70', 70, [6, 6]], [', start: 60', 60, [6, 6]]);
    expect(falling.map(({ kg }) => kg)).toEqual([70, 60]);
  });
});

/** Plays two days in turn that hold one lift and range three times, each set as it is asked for. */
function played(sessions: number, keptWhy = true) {
  const block = (sets: number) =>
    `{ lift: barbell-row, sets: ${sets}, reps: 5-8, reserve: 1-2, start: 60 }`;
  const read = readProgram(
    `name: P\nunit: kg\naim: build\ndays:\n  - { name: A, exercises: [${block(2)}, ${block(3)}] }\n  - { name: B, exercises: [${block(4)}] }\n`,
    'p.yaml',
  );
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const { program } = read;
  const results: Result[] = [];
  return Array.from({ length: sessions }, (_, at) => {
    const daysAgo = 3 * (sessions - at);
    const day = program.days[at % 2]!;
    const today = TODAY.subtract({ days: daysAgo });
    const { exercises } = prescribe(program, day, aPast(results), { today, gear: aGear() });
    exercises.forEach((prescribed, place) => {
      const reps = prescribed.sets.map(({ aim }) => aim);
      const kg = inUnit(prescribed.load!, 'kg');
      const done = { kg, reps, rir: 2, daysAgo };
      const kept = keptWhy ? prescribed : { ...prescribed, why: [] };
      results.push(aResult(day.exercises[place]!, done, kept));
    });
    return exercises.map(tellOf);
  });
}

describe('a load that was lighter only for others of its day', () => {
  it.each([
    ['as it was done', true],
    ['out of a table that keeps no reasons', false],
  ])('is neither called too heavy nor a stall, and goes on up with them, %s', (_, keptWhy) => {
    const told = played(16, keptWhy);
    const all = told.flat();
    expect(all.some(({ rules }) => rules.includes('one-load-a-day'))).toBe(true);
    expect(all.flatMap(({ rules }) => rules)).not.toContain('hold-after-try');
    expect(all.flatMap(({ rules }) => rules)).not.toContain('holding-builds');
    expect(Math.max(...all.flatMap(({ aims }) => aims))).toBe(8);
    expect(told.slice(-2).map((day) => day.map(({ kg }) => kg))).toEqual([[62.5, 62.5], [62.5]]);
  });
});
