import { Temporal } from 'temporal-polyfill';
import { expect, it } from 'vitest';
import type { History } from '../../src/journal/history.ts';
import { paceOf } from '../../src/lifter/prepare.ts';
import { ANY_RESERVE } from '../../src/progression/own-table.ts';
import type { SessionDone } from '../../src/progression/past.ts';
import { plannedSeconds } from '../../src/progression/planned-seconds.ts';
import { prescription, straight } from '../session/a-session.ts';

const ofProgram = prescription(straight());

/** Five sessions of one plan that took `times` as long. */
const five = (how: SessionDone['how'], times: number, planned = ofProgram): History['latest'] =>
  Array.from({ length: 5 }, (_, at) => ({
    planned,
    done: {
      session: `session-${at}`,
      start: 0,
      end: plannedSeconds(planned, 1) * 1000 * times,
      date: Temporal.PlainDate.from('2026-11-20').add({ days: at }),
      program: planned.program,
      day: planned.day,
      setsPlanned: 3,
      setsDone: 3,
      how,
      unit: 'kg',
      foreign: false,
    },
  }));

it('is that of sessions that were finished: one that was broken off took no time to be a plan', () => {
  expect(paceOf({ latest: five('closed', 1.2) })).toBeCloseTo(1.2);
  expect(paceOf({ latest: five('abandoned', 0.5) })).toBe(1);
  expect(paceOf({ latest: [...five('abandoned', 0.5), ...five('closed', 1.2)] })).toBeCloseTo(1.2);
});

it('is not that of a table of the lifter’s own: nothing was planned in it', () => {
  const ofTable = prescription(straight({ move: 'start', reserve: ANY_RESERVE }));
  expect(paceOf({ latest: five('closed', 2, ofTable) })).toBe(1);
});
