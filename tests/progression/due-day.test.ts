import { describe, expect, it } from 'vitest';
import { dueDay } from '../../src/progression/due-day.ts';
import type { SessionDone } from '../../src/progression/past.ts';
import { aPast, aResult, TODAY } from './a-past.ts';
import { aDay, aLift, aProgram, straight } from './a-program.ts';

const row = straight();
const squat = straight({
  lift: aLift({ key: 'squat', pattern: 'squat', trains: { quads: 1, glutes: 1 } }),
});
const press = straight({
  lift: aLift({ key: 'press', pattern: 'vertical-push', trains: { 'front-delts': 1 } }),
});
const program = aProgram([], {
  days: [aDay('A', row), aDay('B', squat), aDay('C', press)],
});

function session(day: string, daysAgo: number, done = 10, planned = 10): SessionDone {
  const date = TODAY.subtract({ days: daysAgo });
  return {
    session: `${day}-${daysAgo}`,
    start: date.toZonedDateTime('UTC').epochMilliseconds,
    end: date.toZonedDateTime('UTC').epochMilliseconds,
    date,
    program: 'Invented',
    day,
    setsPlanned: planned,
    setsDone: done,
    how: 'closed',
    unit: 'kg',
    foreign: false,
  };
}

const due = (...sessions: readonly SessionDone[]) =>
  dueDay(program, aPast([], { sessions }), TODAY);

describe('the day that is due', () => {
  it('is the first before anything was done', () => {
    expect(due()).toMatchObject({ day: { name: 'A' }, why: { rule: 'due-first' }, rest: null });
  });

  it.each([
    ['A', 'B'],
    ['B', 'C'],
    ['C', 'A'],
  ])('follows %s with %s, whatever the weekday and however many days were missed', (done, next) => {
    expect(due(session(done, 2)).day.name).toBe(next);
    expect(due(session(done, 9)).day.name).toBe(next);
  });

  it('is the same again after less than half of its sets', () => {
    expect(due(session('A', 2, 4, 10))).toMatchObject({
      day: { name: 'A' },
      why: { rule: 'due-again', facts: { setsDone: 4, setsPlanned: 10 } },
    });
    expect(due(session('A', 2, 5, 10)).day.name).toBe('B');
  });

  it('is the next when two halves of it were done in two sessions', () => {
    expect(due(session('A', 3, 4, 10), session('A', 2, 4, 10)).day.name).toBe('B');
  });

  it('is the same again after a new beginning of it: what was done before half of it was done stays apart', () => {
    // Five of ten made day A done; four more are the begin of another.
    expect(due(session('A', 3, 5, 10), session('A', 2, 4, 10)).day.name).toBe('A');
    // Two days may lie between two pieces of a day, not three.
    expect(due(session('A', 4, 4, 10), session('A', 2, 4, 10)).day.name).toBe('B');
    expect(due(session('A', 5, 4, 10), session('A', 2, 4, 10)).day.name).toBe('A');
    expect(due(session('B', 3, 4, 10), session('A', 2, 4, 10)).day.name).toBe('A');
  });

  it('takes no notice of a session without a set', () => {
    expect(due(session('A', 4), session('B', 2, 0)).day.name).toBe('B');
  });

  it('begins with the first day of another program', () => {
    expect(due({ ...session('B', 2), program: 'Another' }).day.name).toBe('A');
  });

  it('names what was done of a day begun yesterday, and does a day begun last week anew', () => {
    const begun = (daysAgo: number) => {
      const result = {
        ...aResult(row, { kg: 100, reps: [6, 6, 6], daysAgo }),
        session: `A-${daysAgo}`,
      };
      const sessions = [session('A', daysAgo, 3, 10)];
      return dueDay(program, aPast([result], { sessions }), TODAY).begun;
    };
    expect(begun(1)).toMatchObject({ session: 'A-1', done: [{ track: 'row straight 5-8' }] });
    expect(begun(7)).toBeNull();
  });
});

describe('a day of rest is better', () => {
  it('on the third day running', () => {
    const today = due(session('A', 2), session('B', 1));
    expect(today.rest?.rule).toBe('rest-third-day');
    expect(today.day.name).toBe('C');
    expect(today.nextGood.toString()).toBe(TODAY.add({ days: 1 }).toString());
  });

  it('for a fifth session in seven days', () => {
    const today = due(session('A', 6), session('B', 5), session('C', 3), session('A', 2));
    expect(today.rest?.rule).toBe('rest-fifth-session');
    // Tomorrow the one six days ago is out of the seven days.
    expect(today.nextGood.toString()).toBe(TODAY.add({ days: 1 }).toString());
    expect(due(session('A', 7), session('B', 5), session('C', 3), session('A', 2)).rest).toBeNull();
  });

  it('when yesterday trained the same muscles', () => {
    const one = aProgram([row]);
    const done = aResult(row, { kg: 100, reps: [6, 6, 6], daysAgo: 1 });
    const { rest, nextGood } = dueDay(one, aPast([done]), TODAY);
    expect(rest).toMatchObject({
      rule: 'rest-same-muscles',
      facts: { muscles: 'lats, upper back' },
    });
    expect(nextGood.toString()).toBe(TODAY.add({ days: 1 }).toString());
  });

  it('after training today, of no muscle more than of another', () => {
    const { rest } = due(session('A', 0));
    expect(rest?.rule).toBe('rest-trained-today');
    expect(rest?.facts).not.toHaveProperty('muscles');
  });
});

describe('a day or a program with another name since', () => {
  /** A session with all lifts of a day of the program, under other names. */
  const trained = (lifts: readonly (typeof row)[], name: string, ago: number, of = 'Invented') => {
    const done = { ...session(name, ago), program: of };
    const results = lifts.map((lift) => {
      const result = aResult(lift, { daysAgo: ago, kg: 20, reps: [8, 8] });
      return {
        ...result,
        session: done.session,
        exercise: { ...result.exercise, lift: lift.lift.key },
      };
    });
    return { done, results };
  };
  const dueAfter = (...all: readonly ReturnType<typeof trained>[]) =>
    dueDay(
      program,
      aPast(
        all.flatMap(({ results }) => results),
        { sessions: all.map(({ done }) => done) },
      ),
      TODAY,
    );

  it('goes on after the day that holds what was trained, and says so', () => {
    const found = dueAfter(trained([squat], 'Legs', 2));
    expect(found.day.name).toBe('C');
    expect(found.renamed).toMatchObject({ rule: 'day-matched', facts: { matched: 'B' } });
  });

  it('does so after the program was renamed', () => {
    const found = dueAfter(trained([row], 'A', 5, 'Old'), trained([squat], 'B', 2, 'Old'));
    expect([found.day.name, found.renamed?.rule]).toEqual(['C', 'day-matched']);
  });

  it('but not after what was trained months ago', () => {
    const found = dueAfter(trained([squat], 'Legs', 300, 'Old'));
    expect([found.day.name, found.renamed]).toEqual(['A', null]);
  });

  it('goes on after the day before, and says so, where no day is like it', () => {
    const other = straight({ lift: aLift({ key: 'other' }) });
    const found = dueAfter(trained([row], 'A', 5), trained([other], 'X', 2));
    expect([found.day.name, found.renamed?.rule]).toEqual(['B', 'day-unknown']);
  });

  it('begins another program anew, without a word', () => {
    const other = straight({ lift: aLift({ key: 'other' }) });
    const found = dueAfter(trained([other, row], 'A', 2, 'Old'));
    expect([found.day.name, found.renamed]).toEqual(['A', null]);
  });

  it('says nothing once the new name was trained', () => {
    const found = dueAfter(trained([row], 'Pull', 5), trained([squat], 'B', 2));
    expect([found.day.name, found.renamed]).toEqual(['C', null]);
  });
});
