import { readFileSync } from 'node:fs';
import { expect, test, vi } from 'vitest';
import { type DrivenSession, drivenSession, realSession } from './a-session.ts';
import { shows } from './shows.ts';
import { TINY_PROGRAM } from './tiny-program.ts';
import { USUAL_PROGRAM } from './usual-program.ts';

const UP = '\u001b[A';
const DOWN = '\u001b[B';

/** The rest after the first straight set has just begun: 3 to 5 minutes. */
async function restBegun(): Promise<DrivenSession> {
  const session = await drivenSession({ program: USUAL_PROGRAM });
  const { terminal } = session;
  await terminal.press(' ', 'set 1 of 3');
  await terminal.press(' ', '▐ LIFT');
  await terminal.press(' ', shows('3:00'));
  return session;
}

/** The rest after the lead set has just begun: 10 to 15 seconds. */
async function clusterRestBegun(): Promise<DrivenSession> {
  const session = await drivenSession({ program: USUAL_PROGRAM });
  const { terminal } = session;
  await terminal.press(' ', 'set 1 of 3');
  await terminal.press('x', 'Space goes on with the chosen one.');
  await terminal.press(DOWN, '▸ Dumbbell side raise');
  await terminal.press(' ', 'lead set');
  await terminal.press(' ', '▐ LIFT');
  await terminal.press(' ', shows('10'));
  return session;
}

/** Lets the rest end and puts the mini-set down, as planned or with the reps typed. */
async function mini({ terminal, pass }: DrivenSession, reps = ''): Promise<void> {
  await pass(10);
  await terminal.until('▐ LIFT');
  if (reps) await terminal.press(reps, `‹${reps}›`);
  await terminal.press(' ', (screen) => !screen.includes('▐ LIFT'));
}

test('a rest counts down to its early end, then to its late end, and rings at both', async () => {
  const { terminal, pass } = await restBegun();
  expect(terminal.screen()).toMatch(/to the next set · .*2:00.* at most/);
  await pass(1);
  await terminal.until(shows('2:59'));
  await pass(178);
  await terminal.until(shows('0:01'));
  expect(terminal.title).toBe('0:01 rest');
  expect(terminal.bells).toBe(0);
  await pass(1);
  await terminal.until('▐ READY ▌');
  await terminal.until(shows('2:00'));
  expect(terminal.screen()).toContain('left, lift when you are ready');
  expect(terminal.bells).toBe(1);
  await pass(119);
  await terminal.until(shows('0:01'));
  expect(terminal.bells).toBe(1);
  await pass(1);
  await terminal.until('the rest ended');
  await pass(1);
  await terminal.until('the rest ended 0:01 ago');
  expect(terminal.bells).toBeGreaterThan(1);
});

test('the bell can be switched off', async () => {
  const session = await restBegun();
  const { terminal, pass } = session;
  await terminal.press('g', '▸ [x] Bell');
  await terminal.press(' ', '▸ [ ] Bell');
  await terminal.press('q', shows('3:00'));
  await pass(301);
  await terminal.until('the rest ended');
  expect(terminal.bells).toBe(0);
});

test('a cluster rest ticks three times, and the mini-set starts by itself', async () => {
  const session = await clusterRestBegun();
  const { terminal, pass, home } = session;
  await pass(6);
  await terminal.until(shows('4'));
  expect(terminal.bells).toBe(0);
  for (const left of [3, 2, 1]) {
    await pass(1);
    await terminal.until(shows(String(left)));
    expect(terminal.bells).toBe(4 - left);
  }
  await pass(1);
  await terminal.until('▐ LIFT');
  expect(terminal.bells).toBeGreaterThan(3);
  await terminal.press(' ', 'mini-set 2 of 4');
  expect(home.of('set-done').map(({ role }) => role)).toEqual(['lead', 'mini']);
});

test('a mini-set with fewer reps than the first ends the cluster', async () => {
  const session = await clusterRestBegun();
  const { terminal, home } = session;
  await mini(session, '5');
  await mini(session);
  expect(terminal.screen()).toContain('mini-set 3 of 4');
  await mini(session, '4');
  await terminal.until('Cluster done: fewer reps.');
  expect(home.of('cluster-ended')).toMatchObject([{ reason: 'fewer-reps' }]);
});

test('a mini-set corrected during the rest after it ends the cluster there and then', async () => {
  const session = await clusterRestBegun();
  const { terminal, home } = session;
  await mini(session, '5');
  await mini(session);
  await terminal.press('3', '‹3› reps');
  await terminal.press('\r', 'Cluster done: fewer reps.');
  // Another correction takes that back.
  await terminal.press('5', '‹5› reps');
  await terminal.press('\r', 'mini-set 3 of 4');
  expect(home.of('cluster-resumed')).toHaveLength(1);
});

test('reps typed in a cluster rest are saved when the next mini-set starts by itself', async () => {
  const session = await clusterRestBegun();
  const { terminal, pass, home } = session;
  await pass(2);
  await terminal.until(shows('8'));
  await terminal.press('14', '‹14› reps');
  await pass(8);
  await terminal.until('▐ LIFT');
  await vi.waitUntil(() => home.of('set-amended').length > 0);
  expect(home.of('set-amended')).toMatchObject([{ count: 14 }]);
});

test('the last mini-set that there may be is announced', async () => {
  const session = await clusterRestBegun();
  const { terminal } = session;
  await mini(session);
  await mini(session);
  expect(terminal.screen()).not.toContain('LAST ONE');
  await mini(session);
  await terminal.until('LAST ONE');
  await mini(session);
  await terminal.until('Cluster done: all its sets.');
});

test('eight hours asleep inside a rest count as rest', async () => {
  const { terminal, order, pass } = await restBegun();
  await order({ do: 'sleep', ms: 8 * 3_600_000 });
  // 8 h less the five minutes of the rest.
  await terminal.until('the rest ended 8 h ago');
  await terminal.press(' ', '▐ LIFT');
  await pass(20);
  await terminal.press(' ', 'set 2 of 3 · saved as planned');
  await terminal.until(shows('3:00'));
});

test('a minute asleep inside a cluster rest leaves the mini-set begun, three leave it to the lifter', async () => {
  const short = await clusterRestBegun();
  await short.order({ do: 'sleep', ms: 60_000 });
  await short.terminal.until('▐ LIFT');
  const long = await clusterRestBegun();
  await long.order({ do: 'sleep', ms: 180_000 });
  await long.terminal.until('the rest ended 2:45 ago');
});

test('a wall clock that is set back an hour changes no rest, and is mentioned', async () => {
  const { terminal, order, pass } = await restBegun();
  await pass(60);
  await terminal.until(shows('2:00'));
  await order({ do: 'set-wall', by: -3_600_000 });
  await pass(1);
  await terminal.until(shows('1:59'));
  await terminal.until('The clock was set back by 60 min');
});

test('another time zone changes no rest, and is kept with what happens in it', async () => {
  const { terminal, order, pass, home } = await restBegun();
  await order({ do: 'set-zone', minutes: 120 });
  await pass(1);
  await terminal.until(shows('2:59'));
  await terminal.press(' ', '▐ LIFT');
  await terminal.press(' ', 'set 2 of 3 · saved');
  expect(home.of('set-done').map(({ zone }) => zone)).toEqual([0, 120]);
});

test('a pause stops the rest, and going on goes on with it', async () => {
  const { terminal, pass } = await restBegun();
  await pass(30);
  await terminal.until(shows('2:30'));
  await terminal.press('p', '▐ PAUSED ▌');
  await pass(600);
  await terminal.press('p', '▐ REST ▌');
  await terminal.until(shows('2:30'));
  await pass(1);
  await terminal.until(shows('2:29'));
});

test('a rest can be made longer and shorter', async () => {
  const { terminal } = await restBegun();
  await terminal.press('+', shows('3:30'));
  await terminal.press('-', shows('3:00'));
  await terminal.press('-', shows('2:30'));
});

test('reps and effort are stepped by the arrows while the rest runs', async () => {
  const { terminal, home } = await restBegun();
  await terminal.press(UP, '‹7› reps');
  await terminal.press('\t', '‹–› in reserve');
  await terminal.press(DOWN, '‹0› in reserve');
  await terminal.press('\r', 'saved: 7 reps, 0 in reserve');
  expect(home.of('set-amended')).toMatchObject([{ count: 7, reserve: 0 }]);
});

test('stopped in a cluster rest for longer than it lasts, the mini-set is under way at once', async () => {
  const program = TINY_PROGRAM.replace('rest: 3-5 s, most', 'rest: 6-8 s, most');
  const { terminal } = realSession({ program });
  await terminal.press(' ', 'set 1 of 2');
  await terminal.press('x', 'Space goes on with the chosen one.');
  await terminal.press(DOWN, '▸ Dumbbell side raise');
  await terminal.press(' ', 'lead set');
  await terminal.press(' ', '▐ LIFT');
  await terminal.press(' ', '▐ REST ▌');
  terminal.kill('SIGSTOP');
  await vi.waitUntil(() => stateOf(terminal.pid) === 'T');
  const stopped = Date.now();
  await vi.waitUntil(() => Date.now() - stopped > 6_500, { timeout: 20_000 });
  const goesOn = Date.now();
  terminal.kill('SIGCONT');
  await terminal.until('▐ LIFT');
  // A countdown that had stood still would have had its six seconds still to go.
  expect(Date.now() - goesOn).toBeLessThan(5_000);
});

/** State of a process as the system tells it: R, S, T (stopped)… */
function stateOf(pid: number): string {
  const stat = readFileSync(`/proc/${pid}/stat`, 'utf8');
  return stat.slice(stat.lastIndexOf(')') + 2)[0] ?? '';
}
