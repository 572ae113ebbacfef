import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it, test } from 'vitest';
import { firstQuestion } from '../../src/ui/first-question.ts';
import type { Size } from '../../src/ui/model.ts';
import { LAPTOP, PHONE, Player } from './player.ts';
import { type SceneOptions, scene } from './scene.ts';

/** An empty home: nothing was ever said, trained or weighed. */
const EMPTY: SceneOptions = {
  program: null,
  past: [],
  weighIns: [],
  gear: null,
  settings: { cautions: 'unread', weightAdvice: 'ask' },
};

const newcomer = (size: Size = LAPTOP, options: SceneOptions = EMPTY) =>
  new Player(size, { ...options, start: { kind: 'cautions', scroll: 0 } });

/** Reads the two pages on until the question can be answered, then says no. */
function readCautions(player: Player): Player {
  while (!player.screen().includes('Is any of it so?')) player.keys(' ');
  while (player.screen().includes('↓ more')) player.keys(' ');
  return player.keys('n');
}

const UP = '<up>';

/** What each newcomer presses after the cautions, as far as the first set of the first lift. */
const RUNS: Readonly<Record<string, readonly string[]>> = {
  // Kilograms, all of it, safeties marked, losing fat, 3 days, 60 min, nothing hurts, nothing more.
  'full rack': ['<enter>', '<enter>', `<down> <right>`, ...Array(6).fill('<enter>')],
  dumbbells: ['<enter>', `${UP.repeat(3)}<enter>`, '<right>', ...Array(6).fill('<enter>')],
  'body weight and bands': ['<enter>', '<down><enter>', ...Array(6).fill('<enter>')],
};

describe.each([
  ['34x16', PHONE],
  ['80x24', LAPTOP],
] as const)('from an empty home to the first set at %s', (size, window) => {
  it.each(Object.entries(RUNS))('%s', async (name, run) => {
    const player = readCautions(newcomer(window));
    const pages = [`${player.pressed} keys\n${player.screen()}`];
    const press = (keys: string) => {
      player.keys(keys);
      pages.push(`${keys} · ${player.pressed} keys\n${player.screen()}`);
    };
    for (const keys of run) press(keys);
    expect(player.screen()).toContain('enter take it');
    press('<enter>');
    expect(player.screen()).toMatch(/This is your program from now\s+on/);
    // A program for a cut asks who must not have one.
    expect(player.screen()).toContain('eating disorder');
    press('n');
    press(' ');
    if (player.screen().includes('No load is known yet')) {
      press('20<enter>');
    }
    press(' ');
    expect(player.screen()).toMatch(/▐ LIFT/);
    expect(player.pressed).toBeLessThanOrEqual(25);
    expect(player.pressed * A_PAGE_S).toBeLessThan(5 * 60);
    const text = `${pages.join(`\n${'─'.repeat(window.columns)}\n`)}\n`;
    const file = name.replaceAll(' ', '-');
    await expect(text).toMatchFileSnapshot(`frames/${size}/newcomer-${file}.txt`);
  });
});

/** Time to read what a key leads to and decide. Ours. */
const A_PAGE_S = 11;

const at = (player: Player) => {
  const { screen } = player.store.model().ui;
  return screen.kind === 'question' ? screen.answers.at : screen.kind;
};

test('the questions go on where they were left, at any of them', () => {
  const player = readCautions(newcomer());
  const seen: string[] = [];
  let { scene: home } = player;
  for (let page = 0; page < 10; page++) {
    home = home.again();
    const start = firstQuestion(home.coach);
    if (!start) throw new Error('Nothing is asked any more.');
    const next = new Player(LAPTOP, { over: home, start });
    seen.push(at(next));
    next.keys('<right>');
  }
  expect(seen).toEqual([
    ...['unit', 'kit', 'gear', 'aim', 'days', 'minutes', 'hurts', 'focus', 'bests', 'drafted'],
  ]);
});

test('escape goes back a question at a time, with the answer still chosen', () => {
  const player = readCautions(newcomer()).keys('<down><enter>');
  expect(at(player)).toBe('kit');
  player.keys('<esc>');
  expect(player.screen()).toContain('▸ Pounds');
  expect(player.keys('<esc>').screen()).toContain('This is the first question.');
  expect(player.keys('<right>').keys('<right>').screen()).toContain('safeties');
});

test('a joint that is marked keeps every lift that loads it hard out of the program', () => {
  const asked = readCautions(newcomer()).keys('<right>'.repeat(6));
  expect(at(asked)).toBe('hurts');
  asked.keys('<down><enter>');
  expect(asked.screen()).toContain('[x] shoulder');
  expect(asked.screen()).toContain('Spare the shoulder');
  asked.keys('e');
  const { screen } = asked.store.model().ui;
  if (screen.kind !== 'drafted') throw new Error(screen.kind);
  const { program } = asked.scene.coach.drafting.draft(screen.question.answers);
  const lifts = program.days.flatMap(({ exercises }) => exercises.map(({ lift }) => lift));
  expect(lifts.filter(({ joints }) => joints.includes('shoulder'))).toEqual([]);
});

test('a best that is told gives the first load, and its lift is known afterwards', () => {
  const player = readCautions(newcomer()).keys('<right>'.repeat(8));
  expect(at(player)).toBe('bests');
  player.keys('<down><enter>');
  expect(player.screen()).toContain('kg');
  player.keys('<enter>');
  expect(player.screen()).toContain('Type the load first');
  player.keys('20<enter>11<enter>');
  expect(player.screen()).toContain('Type the reps, 1 to 10.');
  player.keys('<backspace><backspace>8<enter>');
  expect(player.screen()).toMatch(/20 kg a hand × 8/);
  player.keys('<right>');
  expect(player.screen()).toMatch(/take it/);
  player.keys('<enter>');
  const [first] = player.scene.coach.today().prescription.exercises;
  expect(first?.load).toBeGreaterThan(0);
});

test('the program is only written once it is taken, and another one never in its place', () => {
  const player = readCautions(newcomer());
  const folder = join(player.scene.lifter.folders.data, 'programs');
  player.keys('e');
  expect(existsSync(folder)).toBe(false);
  player.keys('<enter>');
  expect(readdirSync(folder)).toContain('my-three-days.yaml');
  player.keys('nec');
  expect(at(player)).toBe('aim');
  player.keys('e<enter>');
  expect(readdirSync(folder)).toContain('my-three-days-2.yaml');
  expect(player.screen()).toContain('My three days 2');
  const next = player.scene.again();
  expect(next.coach.today().prescription.program).toBe('My three days 2');
  expect(firstQuestion(next.coach)).toBeNull();
});

test('from the preview escape leads back to it, and what is owned is opened and kept', () => {
  const player = new Player();
  expect(player.keys('ec<esc>').screen()).toContain('space begin');
  player.keys('o');
  expect(player.screen()).toContain('Your gear');
  player.keys('<down>'.repeat(40)).keys('<up><up>');
  const before = player.scene.lifter.gear().freeStep.amount;
  player.keys('<up>'.repeat(40)).keys('<right><enter>');
  expect(player.screen()).toContain('Kept: this is what you own.');
  expect(player.scene.lifter.gear().bars[0]?.mass.amount).toBe(20.5);
  expect(player.scene.lifter.gear().freeStep.amount).toBe(before);
});

test('letters that are typed into the gear are letters, not keys', () => {
  const player = new Player().keys('oashort bar=15kg<enter>');
  expect(player.screen()).toContain('short bar');
  player.keys('q');
  expect(player.screen()).toContain('Not saved yet');
  expect(player.keys('q').screen()).toContain('space begin');
});

test('the demo is a key of the first page', () => {
  const player = newcomer();
  expect(player.screen()).toContain('tab see a demo');
  player.keys('<tab>');
  expect(player.left).toEqual([0]);
});

test('whoever has trained here is asked nothing', () => {
  expect(firstQuestion(scene().coach)).toBeNull();
  expect(firstQuestion(scene({ program: null }).coach)).toBeNull();
});

test('the pages are spoken with their question, their marks and their keys', () => {
  const player = readCautions(newcomer()).keys('<right><right>');
  const said = player.spoken().join('\n');
  expect(said).toContain('3 of 9, Is this there, too?');
  expect(said).toContain('bench on');
  expect(said).toContain('safeties that catch the bar off');
});
