import { describe, expect, it } from 'vitest';
import { lengthText } from '../../src/training/length.ts';
import { massText } from '../../src/training/mass.ts';
import { Player, WIDE } from './player.ts';
import { type Scene, scene } from './scene.ts';

/** Twelve days of readings about 82 kg. */
const made = () =>
  scene({ weighIns: Array.from({ length: 12 }, (_, at) => [13 - at, 82.4 - at / 20] as const) });
const readings = ({ lifter }: Scene) =>
  lifter
    .journal()
    .history()
    .weighIns.slice(12)
    .map(({ mass }) => massText(mass, 'kg'));
const trendOf = ({ lifter }: Scene) => {
  const { bodyMassOn } = lifter.journal().history();
  return (bodyMassOn(lifter.today()) ?? 0) / 1e9;
};
const player = (over: Scene) => new Player(WIDE, { over });

describe('a reading that is far from all others', () => {
  it('is not kept by a second enter, but only where it is typed once more', () => {
    const over = made();
    const at = player(over).keys('i895<enter>');
    expect(at.screen()).toContain('Type 895 once more');
    at.keys('<enter><enter> ');
    expect(readings(over)).toEqual([]);
    at.keys('895<enter>');
    expect(readings(over)).toEqual(['895 kg']);
  });

  it('is forgotten where the right one is typed in its place', () => {
    const over = made();
    player(over).keys('i895<enter>81.9<enter>');
    expect(readings(over)).toEqual(['81.9 kg']);
  });

  it('is doubted anew after another one was', () => {
    const over = made();
    player(over).keys('i895<enter>820<enter>895<enter>');
    expect(readings(over)).toEqual([]);
  });
});

describe('a waist that is far from any', () => {
  it('is kept only where it is typed once more', () => {
    const over = made();
    const waists = () =>
      over.lifter
        .journal()
        .history()
        .waists.map(({ length }) => lengthText(length, 'cm'));
    const at = player(over).keys('i<tab>218<enter>');
    expect(at.screen()).toContain('A waist of 218 cm is an unlikely one.');
    expect(at.screen()).toContain('Type 218 once more');
    at.keys('<enter><enter>');
    expect(waists()).toEqual([]);
    at.keys('218<enter>');
    expect(waists()).toEqual(['218 cm']);
  });
});

describe('a weigh-in that was wrong', () => {
  it('goes on the spot, and comes back', () => {
    const over = made();
    const at = player(over).keys('i81.9<enter>');
    expect(at.screen()).toContain('u takes it back.');
    at.keys('u');
    expect(readings(over)).toEqual([]);
  });

  it('comes back where its undo was a slip, and can go again', () => {
    const over = made();
    const at = player(over).keys('i81.9<enter>u');
    expect(at.screen()).toContain('Taken back: the weigh-in of 81.9 kg. ctrl-u brings it back.');
    at.keys('<ctrl-u>');
    expect(at.screen()).toContain('There again: the weigh-in of 81.9 kg. u takes it back.');
    expect(readings(over)).toEqual(['81.9 kg']);
    expect(at.keys('<ctrl-u>').screen()).toContain('Nothing was taken back just now.');
    at.keys('u');
    expect(readings(over)).toEqual([]);
    at.keys('i82<enter><ctrl-u>');
    expect(readings(over)).toEqual(['82 kg']);
  });

  it('is deleted on the scales, also after a start of the program', () => {
    const over = made();
    player(over).keys('i83.9<enter>');
    const later = over.again();
    const at = player(later).keys('id');
    expect(at.screen()).toContain('Deleted: Weigh-in of');
    expect(readings(later)).toEqual([]);
    at.keys('u');
    expect(readings(later)).toEqual(['83.9 kg']);
  });

  it('does not make the right one of the same morning doubtful, and is replaced by it', () => {
    const over = made();
    const at = player(over).keys('i895<enter>895<enter>');
    const before = trendOf(over);
    at.keys('i81.9<enter>');
    expect(at.screen()).toContain('It replaces the 895 kg of the same day.');
    expect(readings(over)).toEqual(['81.9 kg']);
    expect(trendOf(over)).toBeLessThan(83);
    // Nobody weighs ten times as much within days: the trend had not believed it.
    expect(before).toBeLessThan(83);
    at.keys('u');
    expect(readings(over)).toEqual(['895 kg']);
  });

  it('stays beside one near it: morning and evening are averaged', () => {
    const over = made();
    player(over).keys('i81.9<enter>i82.6<enter>');
    expect(readings(over)).toEqual(['81.9 kg', '82.6 kg']);
  });
});

describe('the list of all weigh-ins', () => {
  it('says so where none is left', () => {
    const at = player(scene({ weighIns: [[1, 82]] })).keys('ih');
    expect(at.screen()).not.toContain('None yet.');
    expect(at.keys('d').screen()).toContain('None yet.');
  });

  it('corrects a reading of days ago in its place', () => {
    const over = made();
    const at = player(over).keys('ih');
    expect(at.screen()).toContain('Weigh-ins');
    at.keys('<down><down> ');
    expect(at.screen()).toContain('In place of 81.95 kg');
    at.keys('82.1<enter>');
    expect(at.screen()).toContain('Weigh-ins');
    const { weighIns } = over.lifter.journal().history();
    expect(weighIns).toHaveLength(12);
    expect(massText(weighIns.at(-3)!.mass, 'kg')).toBe('82.1 kg');
  });

  it('deletes one, and u brings it back', () => {
    const over = made();
    const count = () => over.lifter.journal().history().weighIns.length;
    const at = player(over).keys('ih<down>d');
    expect(at.screen()).toContain('Deleted: Weigh-in of');
    expect(count()).toBe(11);
    at.keys('u');
    expect(count()).toBe(12);
  });
});

describe('the waist', () => {
  const waists = ({ lifter }: Scene) =>
    lifter
      .journal()
      .history()
      .waists.map(({ length }) => lengthText(length, 'cm'));

  it('is measured on the same screen, with where the tape lies, and taken back', () => {
    const over = made();
    const at = player(over).keys('i<tab>');
    expect(at.screen().replace(/\s+/g, ' ')).toContain('Midway between the lowest rib');
    at.keys('86.5<enter>');
    expect(at.screen()).toContain('Saved: waist 86.5 cm.');
    expect(waists(over)).toEqual(['86.5 cm']);
    at.keys('u');
    expect(waists(over)).toEqual([]);
  });

  it('that nobody has is not kept; the last one can be deleted there', () => {
    const over = made();
    const at = player(over).keys('i<tab>8<enter>');
    expect(at.screen()).toContain('A waist lies between 40 cm and 250 cm.');
    at.keys('<backspace>90<enter>i<tab>');
    expect(at.screen()).toContain('Last: 90 cm on');
    at.keys('d');
    expect(waists(over)).toEqual([]);
  });

  it('is kept together with the weight that was typed before it, and both are taken back', () => {
    const over = made();
    const at = player(over).keys('i81.9<tab>');
    expect(at.screen()).toContain('Body weight 81.9 kg is kept with it.');
    at.keys('89<enter>');
    expect(at.screen().replace(/\s+/g, ' ')).toContain('Saved: 81.9 kg, waist 89 cm. Trend');
    expect([...readings(over), ...waists(over)]).toEqual(['81.9 kg', '89 cm']);
    at.keys('u');
    expect(at.screen().replace(/\s+/g, ' ')).toContain(
      'Taken back: the weigh-in of 81.9 kg and the waist 89 cm.',
    );
    expect([...readings(over), ...waists(over)]).toEqual([]);
  });

  it('waits for a weight in doubt, whichever was typed first', () => {
    for (const typed of ['i895<tab>89<enter>', 'i<tab>89<tab>895<enter>']) {
      const over = made();
      const at = player(over).keys(typed);
      expect(at.screen()).toContain('Type 895 once more');
      at.keys('<enter>');
      expect([...readings(over), ...waists(over)]).toEqual([]);
      at.keys('81.9<enter>');
      expect([...readings(over), ...waists(over)]).toEqual(['81.9 kg', '89 cm']);
    }
  });

  it('is kept alone where no weight was typed', () => {
    const over = made();
    player(over).keys('i<tab>89<tab><enter>');
    expect([...readings(over), ...waists(over)]).toEqual(['89 cm']);
  });

  it('far from one of the same day replaces it, and says so', () => {
    const over = made();
    const at = player(over).keys('i<tab>90<enter>i<tab>140<enter>');
    expect(at.screen().replace(/\s+/g, ' ')).toContain(
      'It replaces the waist of 90 cm of the same day.',
    );
    expect(waists(over)).toEqual(['140 cm']);
    at.keys('u');
    expect(waists(over)).toEqual(['90 cm']);
  });
});
