import { expect, test } from 'vitest';
import { type DrivenSession, drivenSession } from './a-session.ts';
import type { Wanted } from './terminal.ts';

/** Presses one key at a time and counts them. */
function counted({ terminal }: DrivenSession) {
  let keys = 0;
  return {
    press: (key: string, wanted: Wanted) => {
      keys += 1;
      return terminal.press(key, wanted);
    },
    count: () => keys,
  };
}

const atTheLead = async () => {
  const session = await drivenSession();
  await session.terminal.press(' ', 'set 1 of 2');
  await session.terminal.press('x', 'Space goes on with the chosen one.');
  await session.terminal.press('\u001b[B', '▸ Dumbbell side raise');
  await session.terminal.press(' ', 'lead set');
  return session;
};

test('a straight set done as planned costs two keys', async () => {
  const session = await drivenSession();
  await session.terminal.press(' ', 'set 1 of 2');
  const keys = counted(session);
  await keys.press(' ', '▐ LIFT');
  await keys.press(' ', 'saved as planned: 6 reps');
  expect(session.home.of('set-done')).toMatchObject([
    { role: 'straight', count: 6, reserve: null, entered: 'as-planned' },
  ]);
  expect(keys.count()).toBeLessThanOrEqual(2);
});

test('a cluster of five sets done as planned costs six keys', async () => {
  const session = await atTheLead();
  const keys = counted(session);
  await keys.press(' ', '▐ LIFT');
  for (const next of ['mini-set 1 of 4', 'mini-set 2 of 4', 'mini-set 3 of 4', 'mini-set 4 of 4']) {
    await keys.press(' ', next);
    await session.pass(3);
    await session.terminal.until('▐ LIFT');
  }
  await keys.press(' ', 'Cluster done: all its sets.');
  expect(session.home.of('set-done').map(({ role, entered }) => [role, entered])).toEqual([
    ['lead', 'as-planned'],
    ...Array(4).fill(['mini', 'as-planned']),
  ]);
  expect(session.home.of('cluster-ended')).toMatchObject([{ reason: 'most-sets' }]);
  expect(keys.count()).toBeLessThanOrEqual(6);
});

test('correcting the set just put down costs at most four keys', async () => {
  const session = await drivenSession();
  await session.terminal.press(' ', 'set 1 of 2');
  await session.terminal.press(' ', '▐ LIFT');
  await session.terminal.press(' ', 'saved as planned');
  const keys = counted(session);
  await keys.press('5', '‹5› reps');
  await keys.press('\t', '‹–› in reserve');
  await keys.press('0', '‹0› in reserve');
  await keys.press('\r', 'saved: 5 reps, 0 in reserve');
  const [set] = session.home.of('set-done');
  expect(session.home.of('set-amended')).toMatchObject([{ of: set?.id, count: 5, reserve: 0 }]);
  expect(keys.count()).toBeLessThanOrEqual(4);
});

test('correcting the set before it costs at most four keys', async () => {
  const session = await drivenSession();
  await session.terminal.press(' ', 'set 1 of 2');
  await session.terminal.press(' ', '▐ LIFT');
  await session.terminal.press(' ', 'set 1 of 2 · saved as planned');
  await session.terminal.press(' ', '▐ LIFT');
  await session.terminal.press(' ', 'set 2 of 2 · saved as planned');
  const keys = counted(session);
  await keys.press('b', 'set 1 of 2 · saved as planned');
  await keys.press('7', '‹7› reps');
  await keys.press('\r', 'set 2 of 2 · saved as planned');
  const [first] = session.home.of('set-done');
  expect(session.home.of('set-amended')).toMatchObject([{ of: first?.id, count: 7 }]);
  expect(keys.count()).toBeLessThanOrEqual(4);
});

test('correcting the set before while the next one is lifted costs at most four keys', async () => {
  const session = await drivenSession();
  await session.terminal.press(' ', 'set 1 of 2');
  await session.terminal.press(' ', '▐ LIFT');
  await session.terminal.press(' ', 'saved as planned');
  await session.terminal.press(' ', '▐ LIFT');
  const keys = counted(session);
  await keys.press('b', 'set 1 of 2 · saved as planned');
  await keys.press('7', '‹7› reps');
  await keys.press('\r', (screen) => !screen.includes('set 1 of 2'));
  expect(session.home.of('set-amended')).toMatchObject([{ count: 7 }]);
  expect(keys.count()).toBeLessThanOrEqual(4);
});
