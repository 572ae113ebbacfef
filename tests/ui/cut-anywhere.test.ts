import fc from 'fast-check';
import { expect, it, vi } from 'vitest';
import type { SessionCommand } from '../../src/session/command.ts';
import { decide } from '../../src/session/decide.ts';
import { setsAskedOf } from '../../src/session/next-set.ts';
import { kilograms } from '../../src/training/mass.ts';
import { demoScene, type Scene } from './scene.ts';

vi.setConfig({ testTimeout: 120_000 });

/** What a lifter does in the middle of things; a set is rested for and lifted. */
type Act =
  | { readonly do: 'set'; readonly rest: number }
  | { readonly do: 'cut'; readonly minutes: number }
  | { readonly do: 'other-lift'; readonly exercise: number; readonly which: number }
  | { readonly do: 'kill' }
  | { readonly do: 'command'; readonly command: SessionCommand };

const exercise = fc.nat(4);
const ofExercise = fc.constantFrom(
  'pair',
  'part-pair',
  'choose-exercise',
  'mark-pain',
  'skip-exercise',
);
const plain = fc.constantFrom('add-set', 'skip-set', 'undo', 'redo', 'end-cluster');

const act: fc.Arbitrary<Act> = fc.oneof(
  {
    weight: 8,
    arbitrary: fc.record({ do: fc.constant('set' as const), rest: fc.constantFrom(20, 60, 240) }),
  },
  {
    weight: 3,
    arbitrary: fc.record({
      do: fc.constant('cut' as const),
      minutes: fc.constantFrom(5, 10, 15, 20, 30, 45),
    }),
  },
  {
    weight: 2,
    arbitrary: fc.record({ do: fc.constant('other-lift' as const), exercise, which: fc.nat(3) }),
  },
  { weight: 1, arbitrary: fc.constant({ do: 'kill' as const }) },
  {
    weight: 4,
    arbitrary: fc.oneof(plain, fc.record({ name: ofExercise, exercise })).map(
      (found): Act => ({
        do: 'command',
        command: (typeof found === 'string'
          ? { do: found }
          : { do: found.name, exercise: found.exercise }) as SessionCommand,
      }),
    ),
  },
);

/** Carries out what is not refused. */
function sent({ coach, session }: Scene, command: SessionCommand): boolean {
  const live = coach.live();
  if (!live || !decide(session(), command, live.now()).ok) return false;
  expect(live.send(command)).toBeNull();
  return true;
}

function lifted(over: Scene, rest: number): void {
  over.clock.pass(rest * 1000);
  sent(over, { do: 'start' });
  over.clock.pass(30_000);
  const asked = { load: kilograms(20), count: 8 };
  if (!sent(over, { do: 'put-down' })) sent(over, { do: 'put-down', numbers: asked });
}

function cut(over: Scene, minutes: number): void {
  const { coach, session } = over;
  const left = coach.minutesLeft();
  const command = coach.shortenTo(minutes);
  if (command.do !== 'shorten' || !sent(over, command)) return;
  for (const { exercise: at, sets } of command.exercises) {
    const now = session().exercises[at];
    if (now && !now.leftOut) expect(setsAskedOf(now)).toBe(sets);
  }
  const isLeast = command.cut.some(({ rule }) => rule === 'short-least');
  expect(coach.minutesLeft()).toBeLessThanOrEqual(isLeast ? left : Math.min(left, minutes));
}

function done(over: Scene, each: Act): Scene {
  switch (each.do) {
    case 'set':
      lifted(over, each.rest);
      return over;
    case 'cut':
      cut(over, each.minutes);
      return over;
    case 'other-lift': {
      const found = over.session().exercises[each.exercise];
      const others = found ? over.coach.alternatives(found.prescribed) : [];
      const by = others[each.which % Math.max(1, others.length)];
      const { exercise: at } = each;
      if (by) sent(over, { do: 'replace', exercise: at, by, because: 'other-lift' });
      return over;
    }
    case 'kill': {
      const later = over.again();
      later.coach.begin();
      return later;
    }
    case 'command':
      sent(over, each.command);
      return over;
  }
}

const MOST_SETS = 60;

it('whatever was done before, a cut asks for what it says, fits, and the session comes to its end', () => {
  fc.assert(
    fc.property(
      fc.constantFrom('A', 'B', 'C'),
      fc.array(act, { maxLength: 25, size: 'max' }),
      (day, acts) => {
        const first = demoScene();
        first.coach.begin(day);
        const over = acts.reduce(done, first);
        let sets = 0;
        for (; over.session().stage.kind !== 'all-done' && sets < MOST_SETS; sets += 1) {
          lifted(over, 240);
        }
        expect(sets).toBeLessThan(MOST_SETS);
        over.clock.pass(5000);
        sent(over, { do: 'confirm' });
        expect(sent(over, { do: 'close', how: 'finished' })).toBe(true);
        const last = over.again().lifter.journal().history().sessions.at(-1);
        // Nothing but sets and cuts: what was cut was never asked for.
        const isAsAsked = acts.every((each) => ['set', 'cut', 'kill'].includes(each.do));
        if (isAsAsked) expect(last?.setsDone).toBe(last?.setsPlanned);
      },
    ),
    {
      numRuns: 30,
      examples: [
        // More time than what is left takes: a cut must not make it longer.
        [
          'C',
          [
            { do: 'cut', minutes: 45 },
            ...Array<Act>(5).fill({ do: 'set', rest: 20 }),
            { do: 'command', command: { do: 'pair', exercise: 3 } },
            { do: 'set', rest: 20 },
            { do: 'other-lift', exercise: 3, which: 0 },
            ...Array<Act>(3).fill({ do: 'set', rest: 20 }),
            { do: 'cut', minutes: 45 },
          ],
        ],
        [
          'B',
          [
            { do: 'set', rest: 20 },
            { do: 'command', command: { do: 'skip-set' } },
            { do: 'cut', minutes: 20 },
            { do: 'set', rest: 20 },
            { do: 'cut', minutes: 15 },
          ],
        ],
      ],
    },
  );
});
