import { readFileSync } from 'node:fs';
import { describe, expect, it, vi } from 'vitest';
import { aimOf } from '../../src/session/aim.ts';
import { setSeconds } from '../../src/training/set-clock.ts';
import { LEAN_SPRING } from './lean-spring.ts';
import { type Scene, scene } from './scene.ts';

vi.setConfig({ testTimeout: 60_000 });

const THREE_DAYS = readFileSync('programs/three-day.yaml', 'utf8');
const PAIRED = LEAN_SPRING.replace('start: 80', 'start: 80\n        pair: a').replace(
  'start: 5\n',
  'start: 5\n        pair: a\n',
);

/** Minutes of the session that runs, from now to its end, each rest taken to its middle, after warm-ups to its early end. */
function playedOut({ clock, coach, session }: Scene): number {
  const from = clock.read().wall;
  for (;;) {
    const { stage, lastDown } = session();
    if (stage.kind === 'all-done') return (clock.read().wall - from) / 60_000;
    const set = stage.kind === 'ready' || stage.kind === 'resting' ? stage.next : null;
    const exercise = session().exercises[set?.exercise ?? -1]?.prescribed;
    if (!set || !exercise) throw new Error(`The session is ${stage.kind}.`);
    if (stage.kind === 'resting') {
      const { since, rest } = stage.running;
      const asked = lastDown?.place.role === 'warm-up' ? rest.from : (rest.from + rest.to) / 2;
      clock.pass(Math.max(0, since.wall + asked * 1000 - clock.read().wall));
    }
    coach.live()?.send({ do: 'start' });
    clock.pass(setSeconds(aimOf(session(), set)?.count ?? 0, exercise) * 1000);
    expect(coach.live()?.send({ do: 'put-down' })).toBeNull();
  }
}

const begun = (program: string, day: string, minutes: number | null): Scene => {
  const over = scene({ program, past: [] });
  over.coach.begin(day, minutes);
  return over;
};

// Two minutes: of a lift done a side at a time the warm-ups take as long again.
describe('the minutes that are said are those of a session that rests as it asks', () => {
  it.each(
    ['A', 'B', 'C'].flatMap((day) => [null, 45, 30, 20].map((minutes) => ({ day, minutes }))),
  )('day $day of three days, $minutes min', ({ day, minutes }) => {
    const over = begun(THREE_DAYS, day, minutes);
    const said = over.coach.minutesLeft();
    expect(over.coach.today().minutes).toBe(said);
    expect(Math.abs(playedOut(over) - said)).toBeLessThanOrEqual(2);
  });

  it('a pair of the program', () => {
    const over = begun(PAIRED, 'A', null);
    const said = over.coach.minutesLeft();
    expect(Math.abs(playedOut(over) - said)).toBeLessThanOrEqual(2);
  });

  it.each([20, 15])('what is left in the middle, cut to %i min', (minutes) => {
    const over = begun(THREE_DAYS, 'A', null);
    const { coach, clock } = over;
    for (let set = 0; set < 7; set += 1) {
      coach.live()?.send({ do: 'start' });
      clock.pass(20_000);
      coach.live()?.send({ do: 'put-down' });
      clock.pass(set < 6 ? 200_000 : 30_000);
    }
    coach.live()?.send(coach.shortenTo(minutes));
    const said = coach.minutesLeft();
    expect(said).toBeLessThanOrEqual(minutes);
    expect(Math.abs(playedOut(over) - said)).toBeLessThanOrEqual(2);
  });
});
