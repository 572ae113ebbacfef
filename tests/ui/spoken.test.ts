import { describe, expect, it } from 'vitest';
import { Glass } from './glass.ts';
import { LAPTOP, Player } from './player.ts';
import { demoScene } from './scene.ts';

describe('for a screen reader', () => {
  it('a rest is told by its start, its half, ten seconds and its end, never by a clock', () => {
    const player = new Player().atFirstSet().keys('  ');
    const told = new Set<string>();
    for (let second = 0; second < 320; second++) {
      told.add(player.spoken().join('\n'));
      player.wait(1);
    }
    const moments = [...told].map(
      (text) => /(Rest for.*|Half.*|Ten.*|Ready:.*|GO\..*)/.exec(text)?.[1],
    );
    expect(moments).toEqual([
      'Rest for 3 min, at most 5 min.',
      'Half of the rest is over.',
      'Ten seconds.',
      'Ready: lift when you are.',
      'GO. Back squat, set 2 of 3.',
    ]);
  });

  it('what was saved comes first, then what comes next', () => {
    const player = new Player().atFirstSet().keys('  ');
    expect(player.spoken().slice(0, 4)).toEqual([
      'Back squat saved as planned: 7 reps.',
      'Rest for 3 min, at most 5 min.',
      'Next: Back squat, set 2 of 3.',
      'next 82.5 kg times 6 reps, 1 to 2 in reserve',
    ]);
  });

  it('a field says what was typed into it', () => {
    const player = new Player().atFirstSet().keys('  5');
    expect(player.spoken()[0]).toBe('5 reps');
    expect(player.keys('<tab>2').spoken()[0]).toBe('2 in reserve');
  });

  it('the keys are named in words, and no more than a few each time', () => {
    const keys = new Player().atFirstSet().keys('  ').spoken().at(-1) ?? '';
    expect(keys).toBe(
      'Keys. space: lift now. u: undo. w: why this. up arrow or down arrow: more, less. question mark: keys.',
    );
  });

  it.each([
    ['preview', '', 'Chosen: Back squat'],
    ['list', ' sx', 'Chosen: Back squat'],
    ['why', 'w', 'Every set reached 8 at 80 kg'],
    ['load', ' sc70', 'Typed: 70.'],
    ['settings', ' sg', 'Chosen: Bell on, at both ends of a rest'],
    ['help', ' s?', 'The keys of here'],
    ['pain', ' s  m', 'Pain: Back squat'],
  ])('every screen has sentences: %s', (_, keys, wanted) => {
    const text = new Player().keys(keys).spoken().join('\n');
    expect(text).toContain(wanted);
    expect(text).not.toMatch(/[█▀▄■□◧━×·↑↓→]|\[x\]| {2}/);
    expect(text).toMatch(/Keys\. |Any key goes back/);
  });
});

describe('a table', () => {
  it('is read as sentences, a row each with its headings', () => {
    const spoken = new Player(LAPTOP, { over: demoScene() }).keys('t').spoken().join('\n');
    expect(spoken).toMatch(
      /^Back squat: kept \d+ %.*, e1RM [\d.]+ kg, times body weight \d\.\d\d/m,
    );
  });
});

describe('drawn by Ink in its screen-reader mode', () => {
  it('stays on the normal screen and writes only when something happens', async () => {
    const glass = new Glass({ screenReader: true, settings: { bell: false, flash: false } });
    await glass.until('Chosen: Back squat');
    expect(glass.modes()).toMatchObject({ buffer: 'normal', mouse: 'none' });
    glass.type(' s ');
    await glass.until('LIFT. Back squat, set 1 of 3.');
    glass.type(' ');
    await glass.until('Rest for 3 min');
    const before = frames(glass.raw);
    for (let second = 0; second < 80; second++) glass.scene.clock.pass(1_000);
    await glass.screen();
    expect(frames(glass.raw)).toBe(before);
    glass.scene.clock.pass(15_000);
    await glass.until('Half of the rest is over.');
    glass.type('q');
    expect(await glass.end).toBe(0);
  });
});

/** What was written but for titles. */
const frames = (raw: string) => raw.replace(/\u001b\]2;[^\u0007]*\u0007/g, '');
