import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { beforeEach, describe, expect, it } from 'vitest';
import { readProgram } from '../../src/program/read-program.ts';
import { defaultGear } from '../../src/training/default-gear.ts';
import { widthOf } from '../../src/ui/line.ts';
import { LAPTOP, PHONE, Player, WIDE } from './player.ts';
import { type Scene, scene } from './scene.ts';

let over: Scene;
/** The shipped program, and gear without safeties. */
beforeEach(() => {
  over = scene({ program: null, past: [], gear: defaultGear('kg') });
});

const atProgram = (size = LAPTOP) => new Player(size, { over }).keys('e');
const ownPath = () => join(over.lifter.folders.data, 'programs/three-day.yaml');
const own = () => readFileSync(ownPath(), 'utf8');
const shipped = readFileSync('programs/three-day.yaml', 'utf8');

describe.each([
  ['34x16', PHONE],
  ['80x24', LAPTOP],
  ['120x40', WIDE],
] as const)('at %s', (name, size) => {
  it.each([
    ['program', ''],
    ['program-add', 'a'],
    ['program-changes', '<down>-<enter>'],
    ['program-unsaved', '<down>-<esc>'],
    ['program-findings', 'w'],
  ])('%s', async (scene, keys) => {
    const screen = atProgram(size).keys(keys).screen();
    await expect(`${screen}
`).toMatchFileSnapshot(`frames/${name}/${scene}.txt`);
  });
});

describe('changes', () => {
  it('show in the figures at once', () => {
    const player = atProgram();
    expect(player.screen()).toMatch(/quads +7$/m);
    expect(player.keys('<down>+').screen()).toMatch(/quads +8$/m);
    expect(player.screen()).toContain('not saved');
  });

  it('are written to a copy of the lifter, with all comments, after they were looked at', () => {
    const player = atProgram().keys('<down>-<enter>');
    expect(player.screen()).toContain('-         sets: 4');
    expect(player.screen()).toContain('+         sets: 3');
    player.keys('<enter>');
    expect(player.screen()).toContain('Written to');
    const wanted = shipped.replace('sets: 4', 'sets: 3');
    expect(own()).toBe(wanted);
    expect(readFileSync('programs/three-day.yaml', 'utf8')).toBe(shipped);
  });

  it('show with a mark where a line is longer than the screen', () => {
    const text = shipped.replace('sets: 4', `sets: 4 # ${'heavy and slow, '.repeat(5)}`);
    over = scene({ program: text, past: [], gear: defaultGear('kg') });
    const lines = atProgram().keys('<down>-<enter>').screen().split('\n');
    expect(lines.filter((line) => /^ *[-+] +sets: . # heavy/.test(line))).toHaveLength(2);
    for (const line of lines.filter((each) => each.includes('# heavy'))) expect(line).toMatch(/…$/);
  });

  it('are asked about when the lifter leaves without saving', () => {
    const player = atProgram().keys('<down>-<esc>');
    expect(player.screen()).toContain('Save the changes?');
    player.keys('<down><enter>');
    expect(player.store.model().ui.screen.kind).toBe('preview');
    expect(own).toThrow();
  });

  it('are not written over what another program wrote meanwhile', async () => {
    const player = atProgram().keys('<down>-<enter><enter>').keys('e<down>-<enter>');
    const { writeFileSync } = await import('node:fs');
    writeFileSync(ownPath(), `${own()}# mine\n`);
    expect(player.keys('<enter>').screen()).toContain('nothing was written');
    expect(own()).toContain('# mine');
  });
});

describe('a lift', () => {
  const namesOf = (player: Player) => {
    const { screen } = player.store.model().ui;
    if (screen.kind !== 'program') throw new Error(`on ${screen.kind}`);
    return screen.sheet.program.days.map(({ exercises }) => exercises.map(({ lift }) => lift.key));
  };

  it('is found by typing, and comes after the chosen one', () => {
    const player = atProgram().keys('<down>ahammer');
    expect(player.screen()).toContain('> hammer_');
    player.keys('<enter>');
    expect(namesOf(player)[0]?.slice(0, 2)).toEqual(['back-squat', 'hammer-curl']);
  });

  it('moves inside its day and on into the next', () => {
    const player = atProgram().keys('<down>]');
    expect(namesOf(player)[0]?.slice(0, 2)).toEqual(['bench-press', 'back-squat']);
    player.keys(']]]]');
    expect(namesOf(player)[1]?.[0]).toBe('back-squat');
    player.keys('[');
    expect(namesOf(player)[0]?.at(-1)).toBe('back-squat');
  });

  it('goes out, but for the last of its day', () => {
    const player = atProgram().keys('<down>ddddd');
    expect(namesOf(player)[0]).toHaveLength(1);
    expect(player.screen()).toContain('A day keeps at least one lift.');
  });

  it('keeps one set at least', () => {
    const player = atProgram().keys('<down>---');
    expect(player.screen()).not.toContain('One set is the least');
    expect(player.keys('-').screen()).toContain('One set is the least');
  });
});

it('whatever is pressed, the program can be read, and the screen fits', () => {
  const keys = ['<up>', '<down>', '+', '-', '[', ']', 'a', 'c', 'd', 'w', '<enter>', '<esc>', 'x'];
  const size = fc.record({
    columns: fc.integer({ min: 34, max: 130 }),
    rows: fc.integer({ min: 16, max: 40 }),
  });
  fc.assert(
    fc.property(size, fc.array(fc.constantFrom(...keys), { maxLength: 25 }), (window, pressed) => {
      const player = new Player(window, { over }).keys('e');
      for (const key of pressed) {
        player.keys(key);
        const { lines } = player.frame();
        expect(lines).toHaveLength(window.rows);
        expect(Math.max(...lines.map(widthOf))).toBeLessThanOrEqual(window.columns);
        expect(player.spoken().length).toBeGreaterThan(0);
        const { screen } = player.store.model().ui;
        if (screen.kind === 'program') expect(readProgram(screen.sheet.text, 'p').ok).toBe(true);
        if (screen.kind === 'runner') break;
      }
    }),
    { numRuns: 40 },
  );
});

it('the preview counts what the check found, and the program screen shows it', () => {
  const player = new Player(LAPTOP, { over });
  expect(player.screen()).toContain(
    'The check has 2 findings on the program: e, then w, shows them.',
  );
  expect(player.keys('ew').screen()).toContain('Back squat can pin you under the bar');
  expect(player.keys('<esc><esc>').store.model().ui.screen.kind).toBe('preview');
});

it('takes sets away down to one, and says what takes the lift out', () => {
  const player = new Player().keys('e<down><down>');
  expect(player.keys('-').screen()).toMatch(/Pull-up +1 ×/);
  const at = player.keys('-').screen();
  expect(at).toMatch(/Pull-up +1 ×/);
  expect(at).toContain('One set is the least; d takes the lift out.');
});
