import { expect, test } from 'vitest';
import { drivenSession } from './a-session.ts';
import { shows } from './shows.ts';
import { USUAL_PROGRAM } from './usual-program.ts';

const TICKS = 64;

const clock = (seconds: number) =>
  `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, '0')}`;

test('a second of a rest costs at most 250 bytes in the mean, and never over 600', async () => {
  const { terminal, pass } = await drivenSession({ program: USUAL_PROGRAM });
  await terminal.press(' ', 'set 1 of 3');
  await terminal.press(' ', '▐ LIFT');
  await terminal.press(' ', shows('3:00'));
  // By then the key may lift again.
  await pass(2);
  await terminal.until(shows('2:58'));
  // A minute that begins writes its number too: one such tick is among these.
  const costs: number[] = [];
  for (let tick = 1; tick <= TICKS; tick += 1) {
    const before = terminal.bytesWritten;
    await pass(1);
    await terminal.until(shows(clock(178 - tick)));
    costs.push(terminal.bytesWritten - before);
  }
  const mean = costs.reduce((sum, cost) => sum + cost, 0) / TICKS;
  expect(Math.max(...costs)).toBeLessThanOrEqual(600);
  expect(mean).toBeLessThanOrEqual(250);
  // A count that cannot fail would be no measure: every second shown was written.
  expect(Math.min(...costs)).toBeGreaterThan(0);
});

test('where nothing changes nothing is written', async () => {
  const { terminal, pass } = await drivenSession({ program: USUAL_PROGRAM });
  await terminal.press(' ', 'set 1 of 3');
  await terminal.press(' ', '▐ LIFT');
  await terminal.press(' ', shows('3:00'));
  await terminal.press('p', '▐ PAUSED ▌');
  const { bytesWritten } = terminal;
  for (let second = 0; second < TICKS; second += 1) await pass(1);
  // What comes next on the screen is the next key and nothing before it.
  await terminal.press('p', '▐ REST ▌');
  const upToRest = terminal.raw.slice(-(terminal.bytesWritten - bytesWritten));
  expect(upToRest.match(/\u001b\[\?2026h/g)?.length ?? 0).toBeLessThanOrEqual(1);
});
