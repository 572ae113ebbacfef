import { describe, expect, it, vi } from 'vitest';
import { plannedSets } from '../../src/session/next-set.ts';
import { LAPTOP, PHONE, Player, WIDE } from './player.ts';
import { type Scene, scene } from './scene.ts';

vi.setConfig({ testTimeout: 60_000 });

const PROGRAM = `
name: Long one
unit: kg
aim: maintain
days_per_week: 3
days:
  - name: A
    exercises:
      - lift: back-squat
        sets: 4
        reps: 5-8
        start: 80
      - lift: bench-press
        sets: 4
        reps: 5-8
        start: 60
      - lift: barbell-row
        sets: 4
        reps: 6-10
        start: 60
      - lift: crunch
        sets: 3
        reps: 8-15
`;

const made = (): Scene => scene({ program: PROGRAM, past: [] });

/** Squats warmed up and one set of them down, fifteen sets to go. */
function begun(over: Scene): Player {
  const at = new Player(WIDE, { over }).keys(' ').wait(2);
  over.coach.live()?.send({ do: 'skip-set' });
  at.store.tick();
  at.keys(' ').wait(40).keys(' ');
  return at;
}

/** Cuts what is left, and sees that each exercise asks for what was said. */
function cutTo({ coach, session }: Scene, minutes: number) {
  const command = coach.shortenTo(minutes);
  const problem = coach.live()?.send(command);
  const said = command.do === 'shorten' ? command.exercises : [];
  const asked = said.filter(({ sets }) => sets > 0);
  expect(asked.length).toBeGreaterThan(0);
  for (const { exercise, sets } of asked) {
    expect(plannedSets(session().exercises[exercise]!)).toBe(sets);
  }
  return problem;
}

const CLUSTERS = `
name: Clusters
unit: kg
aim: maintain
days_per_week: 3
days:
  - name: A
    exercises:
      - lift: dumbbell-side-raise
        cluster: { lead: 12-15, rest: 10-15 s, most_sets: 5 }
        start: 6
      - lift: crunch
        cluster: { lead: 12-15, rest: 10-15 s, most_sets: 5 }
        start: 0
`;

describe('less time in the middle of a session', () => {
  it('cuts what is left, says what, and takes it back', () => {
    const over = made();
    const at = begun(over).keys('k');
    expect(at.screen()).toMatch(/What is left takes about \d\d min/);
    expect(at.screen()).toContain('15 minutes');
    while (!at.screen().includes('▸ 15 minutes')) at.keys('<down>');
    at.keys(' ');
    expect(at.screen().replace(/\s+/g, ' ')).toMatch(
      /Cut to 15 min: without .*Crunch.*; .*shorter rests\. w says why\. u takes it back\./,
    );
    const { exercises, prescription } = over.session();
    expect(exercises[3]).toMatchObject({ leftOut: true });
    expect(prescription.short?.minutes).toBe(15);
    expect(over.coach.minutesLeft()).toBeLessThanOrEqual(15);
    at.keys('w');
    expect(at.screen()).toContain('Cut for want of time');
    at.keys('<esc>u');
    expect(over.session().exercises.map(({ leftOut }) => leftOut)).toEqual(Array(4).fill(false));
    expect(over.session().prescription.short).toBeUndefined();
  });

  it('counts as done as planned, also after the program was started anew', () => {
    const over = made();
    const at = begun(over).keys('k');
    while (!at.screen().includes('▸ 10 minutes')) at.keys('<down>');
    at.keys(' ');
    const later = over.again();
    const again = new Player(WIDE, { over: later }).keys(' ');
    for (let tries = 0; tries < 60; tries += 1) {
      const { stage } = later.session();
      if (stage.kind === 'all-done') break;
      again.wait(stage.kind === 'lifting' ? 40 : 300).keys(' ');
      if (again.screen().includes('warm-up')) later.coach.live()?.send({ do: 'skip-set' });
      again.store.tick();
    }
    again.wait(3).keys(' ').wait(1);
    const { sessions, results } = later.lifter.journal().history();
    expect(sessions.at(-1)).toMatchObject({ how: 'closed' });
    expect(sessions.at(-1)?.setsDone).toBe(sessions.at(-1)?.setsPlanned);
    expect(results.every(({ finished }) => finished)).toBe(true);
    expect(results.length).toBeLessThan(4);
  });

  it('cuts sets that were added, too, and counts them before', () => {
    const over = made();
    begun(over);
    const before = over.coach.minutesLeft();
    over.coach.live()?.send({ do: 'add-set' });
    expect(over.coach.minutesLeft()).toBeGreaterThan(before);
    expect(cutTo(over, 25)).toBeNull();
    expect(over.coach.minutesLeft()).toBeLessThanOrEqual(25);
  });

  it('after another lift took over in the middle asks for as many sets as it says', () => {
    const over = made();
    begun(over);
    const [other] = over.coach.alternatives(over.session().exercises[0]!.prescribed);
    over.coach.live()?.send({ do: 'replace', exercise: 0, by: other!, because: 'other-lift' });
    expect(cutTo(over, 25)).toBeNull();
    expect(over.coach.minutesLeft()).toBeLessThanOrEqual(25);
    expect(over.session().exercises[0]?.earlier).toHaveLength(1);
  });

  it.each([30, 20, 15])(
    'fits into %i min where it leaves out the one of a pair whose turn it is',
    (minutes) => {
      const paired = PROGRAM.replace(/(back-squat|bench-press)\n/g, '$1\n        pair: a\n');
      const over = scene({ program: paired, past: [] });
      over.coach.begin();
      const live = over.coach.live();
      for (let lift = 0; lift < 2; lift += 1) {
        live?.send({ do: 'skip-set' });
        over.clock.pass(5000);
      }
      live?.send({ do: 'start' });
      over.clock.pass(35_000);
      expect(live?.send({ do: 'put-down' })).toBeNull();
      expect(over.session().stage).toMatchObject({ kind: 'resting', next: { exercise: 1 } });
      expect(cutTo(over, minutes)).toBeNull();
      expect(over.coach.minutesLeft()).toBeLessThanOrEqual(minutes);
    },
  );

  it('counts the rest that runs, and what is left of a cluster', () => {
    const over = scene({ program: CLUSTERS, past: [] });
    const at = new Player(WIDE, { over }).keys(' ').wait(2);
    over.coach.live()?.send({ do: 'skip-set' });
    at.store.tick();
    const whole = over.coach.minutesLeft();
    at.keys(' ').wait(40).keys(' ').wait(1);
    // One cluster of five is left whole, and of this one four mini-sets.
    expect(whole - over.coach.minutesLeft()).toBeLessThanOrEqual(2);
    expect(over.coach.minutesLeft()).toBeGreaterThanOrEqual(whole - 1);
  });

  it('asks for no less than is there, and not while a set is lifted', () => {
    const over = made();
    const at = begun(over).wait(300).keys(' ').wait(3);
    at.keys('k');
    expect(at.screen()).toContain('Put the set down first.');
  });

  it('says at once where there is hardly anything left to cut', () => {
    const over = made();
    const at = begun(over);
    cutTo(over, 5);
    at.store.tick();
    expect(at.keys('k').screen()).toContain('There is hardly anything left to cut.');
  });

  it('fits every size', () => {
    for (const size of [PHONE, LAPTOP]) {
      const over = made();
      begun(over);
      const at = new Player(size, { over }).keys(' k');
      expect(at.screen()).toContain('How much time is left?');
    }
  });
});
