import { uptime } from 'node:os';
import { dirname } from 'node:path';
import { expect, test } from 'vitest';
import { hasProgram, systemPorts } from '../../src/lifter/system-ports.ts';

const { clock } = systemPorts('programs');

test('the clock tells milliseconds since 1970, and of how long the machine runs where it tells one run from the next', () => {
  const { wall, up, boot } = clock.read();
  expect(Math.abs(Date.now() - wall)).toBeLessThan(5000);
  expect(up === null).toBe(boot === null);
  if (process.platform !== 'linux') expect(boot).toBeNull();
  if (up !== null) expect(Math.abs(uptime() * 1000 - up)).toBeLessThan(5000);
});

test('local time is told by the minutes that it is ahead of UTC', () => {
  const at = Date.UTC(2026, 10, 25, 12);
  const date = new Date(at);
  const ahead = (date.getHours() - 12) * 60 + date.getMinutes() + (date.getDate() - 25) * 24 * 60;
  expect(clock.zone(at)).toBeCloseTo(ahead, 9);
});

test('a program is there where a folder of the search path holds one that may be run', () => {
  const [name] = [process.execPath.slice(dirname(process.execPath).length + 1)];
  const there = (PATH: string | undefined) => hasProgram(name, { PATH });
  expect(there(dirname(process.execPath))).toBe(true);
  expect(there(`/nowhere:${dirname(process.execPath)}`)).toBe(process.platform !== 'win32');
  expect([there('/nowhere'), there(''), there(undefined)]).toEqual([false, false, false]);
  expect(hasProgram('no-such-program', { PATH: dirname(process.execPath) })).toBe(false);
});
