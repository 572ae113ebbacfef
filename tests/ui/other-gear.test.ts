import { describe, expect, it, vi } from 'vitest';
import { defaultGear } from '../../src/training/default-gear.ts';
import { LAPTOP, PHONE, Player, WIDE } from './player.ts';
import { type Scene, scene } from './scene.ts';

vi.setConfig({ testTimeout: 60_000 });

const player = (over: Scene, size = WIDE) => new Player(size, { over });
const kitOf = (over: Scene) => over.coach.today().kit;
const loadOf = (over: Scene) => over.coach.today().prescription.exercises[0]?.load ?? null;

/** The list with the kit of this name chosen. */
function atKit(over: Scene, name: string): Player {
  const at = player(over).keys('j');
  for (let tries = 0; tries < 12 && !at.screen().includes(`▸ ${name}`); tries += 1)
    at.keys('<down>');
  return at;
}

describe('other gear for a day', () => {
  it('is chosen on the preview, said there, taken back, and over the next day', () => {
    const over = scene();
    const own = loadOf(over);
    const at = atKit(over, 'dumbbells').keys(' ');
    expect(at.screen()).toContain('Today with dumbbells. u takes it back.');
    expect(at.screen()).toContain('Today with dumbbells; j changes it.');
    expect(kitOf(over.again())).toBe('dumbbells');
    // Without a bar nothing is said that cannot be made.
    expect(loadOf(over.again())).toBeNull();
    at.keys('u');
    expect(kitOf(over.again())).toBeNull();
    expect(loadOf(over.again())).toBe(own);
    atKit(over.again(), 'dumbbells').keys(' ');
    over.clock.set(over.clock.read().wall + 24 * 3600 * 1000);
    expect(kitOf(over.again())).toBeNull();
  });

  it('stays with a session that is open, also on the next day, and goes with it', () => {
    const over = scene();
    atKit(over, 'dumbbells and a bench').keys(' ');
    const begun = over.again();
    player(begun).keys('  ');
    begun.clock.set(begun.clock.read().wall + 10 * 3600 * 1000);
    const later = begun.again();
    expect(kitOf(later)).toBe('dumbbells and a bench');
    later.coach.begin();
    const [squat] = later.session().exercises;
    const loadings = later.coach.alternatives(squat!.prescribed).map(({ loading }) => loading);
    expect(loadings).toContain('dumbbell');
    expect(loadings).not.toContain('barbell');
    later.coach.live()?.send({ do: 'discard' });
    expect(kitOf(later.again())).toBeNull();
  });

  it('goes back to what is owned by the first row', () => {
    const over = scene();
    atKit(over, 'dumbbells').keys(' ');
    const later = over.again();
    atKit(later, 'what I own').keys(' ');
    expect(kitOf(later.again())).toBeNull();
  });

  it('offers lifts for what it cannot load before the first set, with loads of that gear', () => {
    const over = scene();
    atKit(over, 'dumbbells and a bench').keys(' ');
    const later = over.again();
    const at = player(later).keys('  ');
    expect(at.screen()).toContain('Another lift');
    const [squat] = later.session().exercises;
    const others = later.coach.alternatives(squat!.prescribed);
    expect(others.length).toBeGreaterThan(0);
    expect(others.map(({ loading }) => loading)).not.toContain('barbell');
    at.keys(' ');
    expect(later.session().exercises[0]?.prescribed.lift).toBe(others[0]?.lift);
  });

  it('never begins a lift that it cannot load with a load that is made up', () => {
    const over = scene();
    atKit(over, 'dumbbells and a bench').keys(' ');
    const later = over.again();
    const at = player(later).keys(' ');
    const said = 'Your gear makes no load for Back squat: space asks for another lift.';
    expect(at.screen()).toContain(said);
    for (const key of ['8', 'c']) {
      at.keys(key);
      expect(at.screen()).toContain('READY');
      expect(at.screen()).not.toContain('choose a load');
    }
    // Left without an answer, or the answer taken back: it is asked again.
    expect(at.keys(' <esc> ').screen()).toContain('Another lift');
    expect(at.keys(' u').screen()).toContain(said);
    expect(at.keys(' ').screen()).toContain('Another lift');
    at.keys('<up>');
    expect(at.screen()).toContain('▸ Leave it out today');
    at.keys(' ');
    expect(later.session().exercises[0]).toMatchObject({ leftOut: true, done: [] });
  });

  it('may be kept under a name, on every device that reads the journal', () => {
    const over = scene({
      before: ({ journal, gear }) => {
        const { bars: _, ...rest } = gear();
        journal().record({
          type: 'kit-kept',
          name: 'hotel',
          gear: { ...rest, bars: [], plates: [], handles: [] },
        });
      },
    });
    for (const size of [PHONE, LAPTOP]) {
      expect(player(over, size).keys('j<down>').screen()).toContain('▸ hotel');
    }
    atKit(over, 'hotel').keys(' ');
    expect(kitOf(over.again())).toBe('hotel');
  });
});

it('a fixed dumbbell among those that take plates is named: there is nothing to load', () => {
  const program = `
name: One dumbbell
unit: kg
aim: maintain
days_per_week: 2
days:
  - name: A
    exercises:
      - { lift: goblet-squat, sets: 2, reps: 8-12, start: 19.5 }
`;
  for (const size of [LAPTOP, PHONE]) {
    const at = new Player(size, { program, past: [], gear: defaultGear('kg') });
    expect(at.screen()).toMatch(/warm-up 7 × 8, 10 × 5, 14\.5 ×\s+2/);
    expect(at.keys(' ').screen()).toContain('7 kg × 8 reps\n');
    expect(at.screen()).toContain('a fixed dumbbell');
    // Lifted: then the handle, which takes plates.
    expect(at.keys('s').screen()).toContain('put on 5 + 2.5 + 1.25 a side');
    expect(at.screen()).not.toContain('fixed');
    // Where every set is done with fixed ones nothing is said.
    const gear = { ...defaultGear('kg'), handles: [] };
    const other = new Player(size, { program, past: [], gear });
    expect(other.keys(' ').screen()).toContain('WARM UP');
    expect(other.screen()).not.toContain('fixed');
  }
});
