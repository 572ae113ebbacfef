import { expect, test } from 'vitest';
import { aHome, realSession } from './a-session.ts';
import type { Terminal } from './terminal.ts';

/** 40 in the test command, 1,000 in `npm run faults`; HOLDFAST_KILLS asks for another number. */
const KILLS = Number(process.env.HOLDFAST_KILLS ?? (process.env.MODE === 'faults' ? 1_000 : 40));

/** Rests that do not end while the test looks. */
const SLOW_PROGRAM = `name: Slow
unit: kg
aim: cut
rest: 12-15 min
days:
  - name: A
    exercises:
      - { lift: back-squat, sets: 2, reps: 5-8, rest: 12-15 min, start: 60, warm_up: false }
      - { lift: crunch, cluster: { lead: 12-15, rest: 9-10 min, most_sets: 4 }, start: 0, warm_up: false }
      - { lift: bench-press, sets: 1, reps: 5-8, rest: 12-15 min, start: 40, warm_up: false }
`;

type Random = (below: number) => number;

/** Numbers that look random and are the same each time (Park and Miller's generator, 48271). */
function seeded(seed: number): Random {
  let state = seed;
  return (below) => {
    state = (state * 48_271) % 2_147_483_647;
    return state % below;
  };
}

const isSummary = (screen: string): boolean => screen.trimStart().startsWith('Done · ');

const OUTSIDE = 'outside a session';

/** Where the lifter is: the marks of the sets, and the line that says which set it is. */
function stepOf(screen: string): string {
  if (screen.includes('space begin') || isSummary(screen)) return OUTSIDE;
  const lines = screen.split('\n');
  const marks = lines[0]?.replace(/left.*/, '') ?? '';
  const state = lines.find((line) => line.includes('▐'))?.replace(/[▐▌]/g, ' ');
  return state ? `${marks} ${state}`.replace(/\s+/g, ' ').trim() : '';
}

/**
 * Presses one key that a lifter might press here. `away`: the steps that the acts of this session
 * led away from, newest last, for undo to go back over.
 */
async function pressOne(terminal: Terminal, random: Random, away: string[]): Promise<void> {
  const screen = terminal.screen();
  const step = stepOf(screen);
  if (isSummary(screen)) return;
  // A session that has ended takes its acts along.
  if (step === OUTSIDE) away.splice(0);
  const isTyped = screen.includes('enter save');
  if (screen.includes('space put down') && !isTyped && random(3) === 0) {
    await terminal.press('5', '‹5›');
  } else if (away.length > 0 && !isTyped && random(8) === 0) {
    const back = away.pop();
    await terminal.press('u', (now) => stepOf(now) === back);
  } else {
    if (step !== OUTSIDE) away.push(step);
    await terminal.press(' ', (now) => !['', step].includes(stepOf(now)));
  }
}

test(
  `killed between any two keys, it opens at the same step with every saved set (${KILLS} times)`,
  async () => {
    const random = seeded(20_261_125);
    const home = aHome();
    const away: string[] = [];
    let { terminal } = realSession({ home, program: SLOW_PROGRAM });
    await terminal.until('space begin');
    for (let kill = 0; kill < KILLS; kill += 1) {
      for (let keys = random(4); keys > 0; keys -= 1) await pressOne(terminal, random, away);
      const step = stepOf(terminal.screen());
      const saved = home.events();
      // Half of the time in the middle of what a key does.
      if (random(2) === 0 && step !== OUTSIDE) terminal.send(' ');
      terminal.kill('SIGKILL');
      await terminal.end();

      ({ terminal } = realSession({ home, program: SLOW_PROGRAM }));
      const found = stepOf(await terminal.until((screen) => stepOf(screen) !== ''));
      const events = home.events();
      expect(events.slice(0, saved.length)).toEqual(saved);
      // The last key of a session confirms, then closes: between the two the step is the same.
      const isCarriedOut = events.slice(saved.length).some(({ type }) => type !== 'sets-confirmed');
      if (isCarriedOut) {
        expect(found).not.toBe(step);
        away.push(step);
      } else expect(found).toBe(step);
    }
    expect(home.of('set-done').length).toBeGreaterThan(KILLS / 4);
  },
  60_000 + KILLS * 4_000,
);
