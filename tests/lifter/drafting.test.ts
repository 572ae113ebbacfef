import { describe, expect, it } from 'vitest';
import { KITS } from '../../src/training/kits.ts';
import { type SceneOptions, scene } from '../ui/scene.ts';

const EMPTY: SceneOptions = { program: null, past: [], weighIns: [], gear: null };

const gearsSet = ({ lifter }: ReturnType<typeof scene>) => lifter.journal().history().gear ?? null;

describe('the questions of a new program', () => {
  it.each([
    ['en_US.UTF-8', 'lb'],
    ['de_AT.UTF-8', 'kg'],
    ['', 'kg'],
  ])('begin with the unit that %j weighs in, where no gear is known', (LANG, unit) => {
    const { coach } = scene({
      ...EMPTY,
      ports: (ports) => ({ ...ports, env: { ...ports.env, LANG } }),
    });
    const { at, unit: asked, gear } = coach.drafting.again();
    expect([at, asked, gear.unit]).toEqual(['unit', unit, unit]);
  });

  it('begin with the aim, in the unit of the gear, where it is known', () => {
    const gear = KITS[0]!.gear('lb');
    const { coach } = scene({ ...EMPTY, gear });
    expect(coach.drafting.again()).toMatchObject({ at: 'aim', unit: 'lb', gear });
  });

  it('keep the gear they asked for, and none again that is there already', () => {
    const made = scene(EMPTY);
    const { drafting } = made.coach;
    const answers = drafting.again();
    expect(gearsSet(made)).toBeNull();
    expect(drafting.take(answers)).toBeNull();
    expect(gearsSet(made)).toEqual(answers.gear);

    const written = () => made.lifter.journal().history().events.length;
    const before = written();
    expect(drafting.take({ ...drafting.again(), days: 2 })).toBeNull();
    expect(written()).toBe(before);
    const more = KITS[0]!.gear('kg');
    expect(drafting.take({ ...drafting.again(), gear: more })).toBeNull();
    expect(gearsSet(made)).toEqual(more);
  });
});
