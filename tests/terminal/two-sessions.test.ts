import { expect, test } from 'vitest';
import { realSession } from './a-session.ts';
import type { Home } from './home.ts';
import type { Terminal } from './terminal.ts';

const KG = 1_000_000_000;

interface Opened {
  readonly exercises: readonly {
    readonly lift: string;
    readonly move: string;
    readonly load: number;
    readonly sets: readonly { readonly aim: number }[];
    readonly minis: { readonly aim: number } | null;
  }[];
}

const prescriptions = (home: Home): Opened[] =>
  home.of('session-opened').map((event) => event.prescription as Opened);

/** The squat at the top of its range, the cluster two mini-sets long. */
async function playDayA(terminal: Terminal): Promise<void> {
  await terminal.press(' ', 'set 1 of 2');
  await terminal.press(' ', '▐ LIFT');
  await terminal.press('8\t2', '‹2› in reserve');
  await terminal.press(' ', 'saved: 8 reps, 2 in reserve');
  await terminal.press(' ', '▐ LIFT');
  await terminal.press('8\t2', '‹2› in reserve');
  await terminal.press(' ', 'lead set');
  await terminal.press(' ', '▐ LIFT');
  await terminal.press('14', '‹14› reps');
  await terminal.press(' ', 'mini-set 1 of 4');
  // The mini-sets start by themselves at the end of their rests.
  await terminal.until('▐ LIFT');
  await terminal.press('5', '‹5› reps');
  await terminal.press(' ', 'mini-set 2 of 4');
  await terminal.until('▐ LIFT');
  await terminal.press('4', '‹4› reps');
  await terminal.press(' ', 'Cluster done: fewer reps.');
  await terminal.press(' ', 'Next time');
}

test('the second session asks for what the first one earned', async () => {
  const first = realSession();
  const { home } = first;
  const due = await first.terminal.until('Back squat');
  expect(due).toContain('40 kg · 2 sets of 6 reps');
  expect(due).toContain('first time');
  await playDayA(first.terminal);
  expect(first.terminal.screen()).toMatch(/Back squat · 42\.5 kg · \d, \d reps/);
  first.terminal.send('q');
  expect(await first.terminal.end()).toMatchObject({ exitCode: 0 });

  const second = realSession({ home });
  const preview = await second.terminal.until('up 2.5 kg');
  expect(preview).toMatch(/42\.5 kg · 2 sets/);
  expect(preview).toContain('40 kg · 8 (2), 8 (2) reps (in reserve)');
  expect(preview).toContain('Every set reached 8 at 40 kg');
  const lifting = await second.terminal.press(' ', 'set 1 of 2');
  expect(lifting).toMatch(/42\.5 kg × \d reps/);
  await second.terminal.press(' ', '▐ LIFT');
  await second.terminal.press(' ', 'saved as planned');
  second.terminal.send('q');
  expect(await second.terminal.end()).toMatchObject({ exitCode: 0 });

  const [was, is] = prescriptions(home);
  expect(was?.exercises.map(({ move, load }) => [move, load])).toEqual([
    ['start', 40 * KG],
    ['start', 6 * KG],
  ]);
  // The squat reached the top of 5–8 in both sets; the lead set of 12–15 did not.
  expect(is?.exercises.map(({ move, load }) => [move, load])).toEqual([
    ['up', 42.5 * KG],
    ['hold', 6 * KG],
  ]);
  expect(is?.exercises[1]?.sets.map(({ aim }) => aim)).toEqual([15]);
  const [done] = home.of('set-done').slice(-1);
  expect(done).toMatchObject({ load: 42.5 * KG, count: is?.exercises[0]?.sets[0]?.aim });
});
