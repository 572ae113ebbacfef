import { expect, test } from 'vitest';
import { clockSetByMs, elapsedMs, type Reading } from '../../src/training/reading.ts';

const HOUR = 3_600_000;
const at = (wall: number, up: number | null, boot: string | null = 'one'): Reading => ({
  wall,
  up,
  boot,
});
const start = at(10 * HOUR, 2 * HOUR);

test.each([
  ['nothing odd', at(10 * HOUR + 90_000, 2 * HOUR + 90_000), 90_000, 0],
  ['the clock set back an hour', at(9 * HOUR + 90_000, 2 * HOUR + 90_000), 90_000, -HOUR],
  ['the clock set forward an hour', at(11 * HOUR + 90_000, 2 * HOUR + 90_000), 90_000, HOUR],
  ['eight hours of sleep', at(18 * HOUR, 10 * HOUR), 8 * HOUR, 0],
  ['a machine started again', at(10 * HOUR + 300_000, 60_000, 'two'), 300_000, 0],
  ['started again, and the clock set back', at(9 * HOUR, 60_000, 'two'), 0, 0],
  ['no steady clock', at(10 * HOUR + 90_000, null, null), 90_000, 0],
] as const)('time passed across %s', (_, end, passed, setBy) => {
  expect(elapsedMs(start, end)).toBe(passed);
  expect(clockSetByMs(start, end)).toBe(setBy);
});

test('another time zone is not another instant', () => {
  // A reading holds epoch milliseconds: a zone change moves neither of its clocks.
  expect(elapsedMs(start, { ...start })).toBe(0);
});
