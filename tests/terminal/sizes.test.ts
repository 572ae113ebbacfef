import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import stringWidth from 'string-width';
import { expect, test, vi } from 'vitest';
import { aHome, type DrivenSession, drivenSession } from './a-session.ts';
import { SIZES, type Size } from './home.ts';
import type { Terminal } from './terminal.ts';
import { USUAL_PROGRAM } from './usual-program.ts';

const DOWN = '\u001b[B';

/** How long a screen may take to look as it is kept before the difference is shown. */
const FRAME_PATIENCE_MS = 5_000;

type Play = (session: DrivenSession) => Promise<void>;

const press =
  (...steps: readonly (readonly [keys: string, wanted: string | RegExp])[]): Play =>
  async ({ terminal }) => {
    for (const [keys, wanted] of steps) await terminal.press(keys, wanted);
  };

const inTurn =
  (...plays: readonly Play[]): Play =>
  async (session) => {
    for (const play of plays) await play(session);
  };

const wait =
  (seconds: number, wanted: string): Play =>
  async ({ terminal, pass }) => {
    await pass(seconds);
    await terminal.until(wanted);
  };

const ready = press([' ', 'set 1 of 3']);
const lifting = inTurn(ready, press([' ', '▐ LIFT']), wait(2, 'put down'));
const rest = inTurn(lifting, press([' ', 'saved as planned']));
const clusterRest = inTurn(
  ready,
  press(['x', '▸ Back squat'], [DOWN, '▸ Dumbbell side raise'], [' ', 'lead set'], [' ', '▐ LIFT']),
  press([' ', 'mini-set 1 of 4']),
);
const allDone = inTurn(
  rest,
  press(
    ['x', '▸ Back squat'],
    ['d', 'left out'],
    [DOWN, '▸ Dumbbell side raise'],
    ['d', /left out[\s\S]*left out/],
    [DOWN, '▸ Barbell row'],
    ['d', /left out[\s\S]*left out[\s\S]*left out/],
    ['q', '1 of 6 sets done'],
  ),
);

/** What is played, and what the screen must say at every size. */
const SCENES: Readonly<Record<string, { play: Play; says: readonly string[]; unread?: true }>> = {
  cautions: { play: async () => {}, says: ['Before the first session'], unread: true },
  preview: { play: async () => {}, says: ['Back squat', '80 kg', 'begin'] },
  ready: { play: ready, says: ['READY', 'Back squat', 'set 1 of 3', '80 kg × 6 reps'] },
  lifting: { play: lifting, says: ['LIFT', 'Back squat', 'set 1 of 3', 'put down'] },
  rest: { play: rest, says: ['REST', 'set 2 of 3', 'saved as planned', 'next 80 kg'] },
  'rest-is-over': {
    play: inTurn(rest, wait(301, 'the rest ended')),
    says: ['GO', 'set 2 of 3', 'the rest ended 0:01 ago'],
  },
  'cluster-rest': { play: clusterRest, says: ['REST', 'mini-set 1 of 4', 'it starts by itself'] },
  'cluster-lifting': {
    play: inTurn(clusterRest, wait(12, 'put down')),
    says: ['LIFT', 'mini-set 1 of 4', 'put down'],
  },
  amend: { play: inTurn(rest, press(['5', '‹5›'], ['\t', '‹–›'])), says: ['5', 'enter saves'] },
  'all-done': {
    play: inTurn(allDone, wait(2, 'finish')),
    says: ['DONE', 'Back squat', '6 reps', 'finish'],
  },
  summary: {
    play: inTurn(allDone, wait(2, 'finish'), press([' ', 'Done · A'])),
    says: ['did', '80 kg', 'plan'],
  },
  help: {
    play: inTurn(rest, wait(2, 'lift now'), press(['?', 'The keys of here'])),
    says: ['space', 'lift now'],
  },
  why: { play: inTurn(ready, press(['w', 'First time'])), says: ['80 kg, as the program says'] },
};

const open = (size: Size, unread = false): Promise<DrivenSession> =>
  drivenSession({ home: aHome({ cautionsRead: !unread }), program: USUAL_PROGRAM, size });

/** Waits until the screen looks as it is kept in `frames/`, and shows the difference otherwise. */
async function expectFrame(terminal: Terminal, name: string): Promise<void> {
  const path = fileURLToPath(new URL(`frames/${name}.txt`, import.meta.url));
  const kept = existsSync(path) ? readFileSync(path, 'utf8') : null;
  const looksSo = (screen: string) => `${screen}\n` === kept;
  await terminal.until(looksSo, FRAME_PATIENCE_MS).catch(() => {});
  await expect(`${terminal.screen()}\n`).toMatchFileSnapshot(path);
}

function expectUnclipped(screen: string, { columns, rows }: Size): void {
  const lines = screen.split('\n');
  expect(lines.length).toBeLessThanOrEqual(rows);
  for (const line of lines) {
    expect(stringWidth(line)).toBeLessThanOrEqual(columns);
    // An ellipsis would be the mark of a line that was cut.
    expect(line).not.toContain('…');
  }
}

/** Turned and resized, a screen is drawn anew, in the same step. */
test.each(Object.entries(SCENES))('%s looks so at every size', async (name, scene) => {
  const { play, says, unread = false } = scene;
  const session = await open(SIZES.usual, unread);
  const { terminal } = session;
  await terminal.until(unread ? 'Before the first session' : 'begin');
  await play(session);
  for (const size of [SIZES.upright, SIZES.wide, SIZES.usual]) {
    terminal.resize(size.columns, size.rows);
    await expectFrame(terminal, `${size.columns}x${size.rows}/${name}`);
    const screen = terminal.screen();
    expectUnclipped(screen, size);
    // A narrow screen breaks a sentence where it has to.
    const said = screen.replace(/\s+/g, ' ');
    for (const words of says) expect(said).toContain(words);
  }
});

test('30 × 10 is too small, which is said; the keys work all the same', async () => {
  const { terminal, home, pass } = await open({ columns: 30, rows: 10 });
  await terminal.until(/30 × 10[\s\S]*at least/);
  expectUnclipped(terminal.screen(), { columns: 30, rows: 10 });
  terminal.send(' ');
  await vi.waitUntil(() => home.of('session-opened').length > 0);
  await pass(2);
  terminal.send(' ');
  terminal.resize(80, 24);
  await terminal.until('▐ LIFT');
  expect(home.of('set-started')).toHaveLength(1);
});

test('the cautions are shown once, and the answer is kept', async () => {
  const home = aHome({ cautionsRead: false });
  const { terminal } = await drivenSession({ home, size: SIZES.wide });
  await terminal.until('Before the first session');
  await terminal.press(' ', 'Your health');
  await terminal.press('n', 'Before a cut');
  await terminal.press('n', 'begin');
  terminal.send('q');
  await terminal.end();
  const again = await drivenSession({ home });
  await again.terminal.until('begin');
});

test('a yes to a question of health is answered with a doctor first, each time', async () => {
  const home = aHome({ cautionsRead: false });
  const { terminal } = await drivenSession({ home, size: SIZES.wide });
  await terminal.until('Before the first session');
  await terminal.press(' ', 'Your health');
  await terminal.press('y', 'Before a cut');
  await terminal.press('n', 'see a doctor first');
  terminal.send('q');
  await terminal.end();
  const again = await drivenSession({ home });
  await again.terminal.until('see a doctor first');
});
