import fc from 'fast-check';
import { expect, it, vi } from 'vitest';
import { widthOf } from '../../src/ui/line.ts';
import { LEAST } from '../../src/ui/too-small.ts';
import { Player } from './player.ts';

vi.setConfig({ testTimeout: 60_000 });

const KEYS = [
  ...' \r?uybvrpcmnwasxfgdloqe57.+-'.split(''),
  ...['<up>', '<down>', '<left>', '<right>', '<esc>', '<tab>', '<backspace>', ' ', ' ', ' '],
].filter((key) => key !== 'q');

const step = fc.oneof(
  { weight: 4, arbitrary: fc.constantFrom(...KEYS) },
  { weight: 1, arbitrary: fc.constantFrom(1, 9, 11, 16, 100, 181, 301) },
);

const size = fc.record({
  columns: fc.integer({ min: LEAST.columns, max: 140 }),
  rows: fc.integer({ min: LEAST.rows, max: 50 }),
});

it('whatever is pressed, at any size, the screen fits and says something', () => {
  fc.assert(
    fc.property(size, fc.boolean(), fc.array(step, { maxLength: 30 }), (window, taps, steps) => {
      const player = new Player(window, { settings: { taps } });
      for (const one of steps) {
        if (typeof one === 'number') player.wait(one);
        else player.keys(one);
        const { lines } = player.frame();
        expect(lines).toHaveLength(window.rows);
        const widest = Math.max(...lines.map(widthOf));
        expect(widest, player.screen()).toBeLessThanOrEqual(window.columns);
        expect(player.screen().trim()).not.toBe('');
        expect(player.spoken().length).toBeGreaterThan(0);
      }
    }),
    { numRuns: 60 },
  );
});

it('whatever is pressed, the state word and the digits stay in sight in the runner', () => {
  fc.assert(
    fc.property(size, fc.array(step, { maxLength: 25 }), (window, steps) => {
      const player = new Player(window).atFirstSet();
      for (const one of steps) {
        if (typeof one === 'number') player.wait(one);
        else player.keys(one);
        const { ui, session } = player.store.model();
        if (ui.screen.kind !== 'runner' || ui.help || !session) continue;
        const screen = player.screen();
        expect(screen).toMatch(/▐ (READY|WARM UP|GO|LIFT|REST|PAUSED|DONE)/);
        expect(screen).toMatch(/[█▀▄]{2}|No load is known/);
        expect(screen).toContain('? keys');
      }
    }),
    { numRuns: 40 },
  );
});

it('asks for the load beside body weight in lines that fit the smallest screen', () => {
  const player = new Player(LEAST).keys('  x<down><down><down><enter>c');
  expect(player.screen()).toContain('beside body weight');
  expect(Math.max(...player.frame().lines.map(widthOf))).toBeLessThanOrEqual(LEAST.columns);
});
