import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fold } from '../../src/session/apply.ts';
import type { SessionCommand } from '../../src/session/command.ts';
import { decide } from '../../src/session/decide.ts';
import { inForce } from '../../src/session/in-force.ts';
import {
  isCluster,
  isOver,
  plannedSets,
  setsAskedOf,
  worksOf,
} from '../../src/session/next-set.ts';
import { resultsOf } from '../../src/session/results.ts';
import { stageNow } from '../../src/session/stage-now.ts';
import type { SessionState } from '../../src/session/state.ts';
import { summaryOf } from '../../src/session/summary.ts';
import { kilograms } from '../../src/training/mass.ts';
import type { Reading } from '../../src/training/reading.ts';
import {
  cluster,
  meaning,
  type Play,
  play,
  prescription,
  readingAt,
  straight,
} from './a-session.ts';

const warmUp = [{ load: kilograms(40), reps: 5 }];
const LIFTS = [
  cluster({ warmUp }),
  straight(),
  straight({ track: 'hold', counts: 'seconds', sets: [{ aim: 40, range: [30, 60] }] }),
  straight({
    track: 'other',
    lift: 'other',
    load: null,
    pattern: 'horizontal-push',
    trains: { chest: 1 },
  }),
];

const exercise = fc.nat({ max: 3 });
const numbers = fc.record(
  {
    count: fc.oneof(
      { weight: 4, arbitrary: fc.integer({ min: 1, max: 6 }) },
      fc.integer({ min: -1, max: 70 }),
    ),
    reserve: fc.option(fc.integer({ min: -1, max: 6 })),
    load: fc.constantFrom(...[-5, 0, 60, 77.5].map(kilograms)),
  },
  { requiredKeys: [] },
);

/** Twenty minutes are left, and rests of one between exercises. */
const NO_TIME = {
  do: 'shorten',
  minutes: 20,
  restBetween: { from: 60, to: 60 },
  cut: [],
} as const;

/** What is done next: a command, or a wait; `of` picks a set by its place among those done. */
type Act =
  | SessionCommand
  | { readonly wait: number }
  | { readonly amend: number; readonly numbers: object };

/** The set that was put down last. */
const NEWEST = -1;

const act: fc.Arbitrary<Act> = fc.oneof(
  { weight: 16, arbitrary: fc.constant<Act>({ do: 'start' }) },
  { weight: 20, arbitrary: fc.constant<Act>({ do: 'put-down' }) },
  { weight: 6, arbitrary: fc.record({ do: fc.constant('put-down' as const), numbers }) },
  { weight: 16, arbitrary: fc.record({ wait: fc.constantFrom(1, 11, 11, 60, 200, 40_000) }) },
  { weight: 8, arbitrary: fc.record({ amend: fc.nat(), numbers }) },
  {
    weight: 6,
    arbitrary: fc.constantFrom<Act>(
      ...(
        [
          'withdraw-start',
          'confirm',
          'skip-set',
          'add-set',
          'end-cluster',
          'pause',
          'resume',
          'undo',
          'undo',
          'redo',
        ] as const
      ).map((name) => ({ do: name })),
    ),
  },
  {
    weight: 3,
    arbitrary: fc.record({
      do: fc.constantFrom('skip-exercise', 'choose-exercise', 'mark-pain', 'pair', 'part-pair'),
      exercise,
    }) as fc.Arbitrary<Act>,
  },
  {
    weight: 2,
    arbitrary: fc.record({
      do: fc.constant('replace' as const),
      exercise,
      by: fc.constantFrom(...LIFTS, straight({ load: kilograms(70) })),
      because: fc.constantFrom('other-lift', 'other-load', 'lighter'),
    }) as fc.Arbitrary<Act>,
  },
  {
    weight: 1,
    arbitrary: fc.record({
      do: fc.constant(NO_TIME.do),
      minutes: fc.constant(NO_TIME.minutes),
      restBetween: fc.constant(NO_TIME.restBetween),
      cut: fc.constant(NO_TIME.cut),
      exercises: fc.array(
        fc.record({
          exercise,
          sets: fc.integer({ min: 0, max: 4 }),
          rest: fc.constant({ from: 120, to: 120 }),
        }),
        { maxLength: 3 },
      ),
    }) as fc.Arbitrary<Act>,
  },
  {
    weight: 1,
    arbitrary: fc.record({
      do: fc.constant('change-rest' as const),
      by: fc.integer({ min: -90, max: 90 }),
    }),
  },
  {
    weight: 1,
    arbitrary: fc.constantFrom<Act>(
      { do: 'close', how: 'finished' },
      { do: 'close', how: 'as-it-is' },
      { do: 'discard' },
    ),
  },
);

/** Acts that go together, so that clusters are played out and corrected, and sets confirmed. */
const lifted: readonly Act[] = [{ do: 'start' }, { wait: 20 }, { do: 'put-down' }, { wait: 11 }];
const mini = (count: number): readonly Act[] => [
  { do: 'put-down', numbers: { count } },
  { wait: 11 },
];
const together = fc.constantFrom<readonly Act[]>(
  lifted,
  [...lifted, ...mini(4), ...mini(3), { amend: NEWEST, numbers: { count: 4 } }],
  [...lifted, ...mini(4), ...mini(4), { amend: NEWEST, numbers: { count: 3 } }],
  [...lifted, ...mini(4), ...mini(4), ...mini(4), ...mini(4)],
  [...lifted, { do: 'confirm' }],
  [{ do: 'pair', exercise: 3 }, ...lifted, ...lifted, { do: 'part-pair', exercise: 3 }],
);

const acts = fc
  .array(fc.oneof({ weight: 8, arbitrary: act.map((each) => [each]) }, together), {
    maxLength: 50,
    size: 'max',
  })
  .map((parts) => parts.flat());

/** Plays what can be done of the acts, and calls `after` behind each of them. */
function playing(given: readonly Act[], after: (session: Play) => void): Play {
  const session = play(prescription(...LIFTS));
  for (const each of given) {
    if ('wait' in each) session.wait(each.wait);
    else {
      const command = 'amend' in each ? amending(session.state(), each) : each;
      if (!decide(session.state(), command, session.now()).ok) continue;
      session.send(command);
    }
    after(session);
  }
  return session;
}

function amending(
  state: SessionState,
  { amend, numbers: given }: { amend: number; numbers: object },
) {
  const ids = setsOf(state).map(({ id }) => id);
  const newest = state.events.findLast(({ type }) => type === 'set-done')?.id;
  const of = amend === NEWEST ? newest : ids[amend % Math.max(1, ids.length)];
  return {
    do: 'amend',
    of: of ?? 'none',
    numbers: given,
  } as const;
}

/** Every number of milliseconds that a state and an instant give. */
function times(state: SessionState, now: Reading): number[] {
  const { clockSetMs: _, ...stage } = stageNow(state, now);
  const found = Object.entries(stage).flatMap(([name, value]) =>
    name.endsWith('Ms') && value !== null ? [Number(value)] : [],
  );
  return [...found, summaryOf(state, now).minutes, state.pausedMs];
}

const setsOf = (state: SessionState | null) =>
  (state?.exercises ?? []).flatMap(worksOf).flatMap(({ done }) => done);

describe('whatever is done in whatever order', () => {
  test('replaying the events gives the live state', () => {
    fc.assert(
      fc.property(acts, (given) => {
        const session = playing(given, () => {});
        expect(fold(session.events())).toEqual(session.state());
      }),
      { numRuns: 300 },
    );
  });

  test('the state is one that a session can be in', () => {
    fc.assert(
      fc.property(acts, (given) => {
        playing(given, (session) => {
          const state = session.state();
          for (const each of state.exercises) {
            for (const work of worksOf(each)) {
              const roles = work.done.map(({ role }) => role);
              const [first, ...rest] = roles;
              if (first === 'lead') expect(new Set(rest).has('lead')).toBe(false);
              if (work.prescribed.minis) expect(first ?? 'lead').toBe('lead');
              else expect(roles.every((role) => role === 'straight')).toBe(true);
              expect(work.done.every(({ count }) => Number.isInteger(count) && count >= 0)).toBe(
                true,
              );
            }
            if (each.prescribed.minis) {
              expect(each.done.length).toBeLessThanOrEqual(plannedSets(each));
            }
          }
          const ids = setsOf(state).map(({ id }) => id);
          expect(new Set(ids).size).toBe(ids.length);
          expect(resultsOf(state).flatMap(({ sets }) => sets).length).toBe(
            state.stage.kind === 'closed' && state.stage.how === 'discarded' ? 0 : ids.length,
          );
          const { stage } = state;
          if (stage.kind === 'ready' || stage.kind === 'resting') {
            expect(state.exercises[stage.next.exercise]?.leftOut).toBe(false);
          }
        });
      }),
      { numRuns: 200 },
    );
  });

  test('no time is ever negative, wherever the clock is set', () => {
    const elsewhere = fc.record({
      wall: fc.integer({ min: 0, max: 4e12 }),
      up: fc.option(fc.integer({ min: 0, max: 1e10 })),
      boot: fc.constantFrom('boot-1', 'boot-2', null),
    });
    fc.assert(
      fc.property(acts, elsewhere, (given, now) => {
        const session = playing(given, (each) =>
          expect(times(each.state(), each.now()).every((ms) => ms >= 0)).toBe(true),
        );
        expect(times(session.state(), now).every((ms) => ms >= 0)).toBe(true);
      }),
      { numRuns: 200 },
    );
  });

  test('undo gives the very state before, and redo the one after', () => {
    fc.assert(
      fc.property(acts, act, (given, last) => {
        const session = playing(given, () => {});
        const before = meaning(session.state());
        if ('wait' in last) return;
        const command = 'amend' in last ? amending(session.state(), last) : last;
        if (command.do === 'undo' || command.do === 'redo') return;
        if (!decide(session.state(), command, session.now()).ok) return;
        const after = meaning(session.send(command).state());
        expect(meaning(session.send('undo').state())).toEqual(before);
        expect(meaning(session.send('redo').state())).toEqual(after);
      }),
      { numRuns: 500 },
    );
  });

  test('cut in the middle, it asks for the sets that the cut says', () => {
    fc.assert(
      fc.property(
        acts,
        fc.array(fc.nat({ max: 9 }), { minLength: 4, maxLength: 4 }),
        (given, cuts) => {
          const session = playing(given, () => {});
          const open = session.state().exercises.flatMap((each, at) => {
            const behind = each.done.length + each.skipped;
            const isOpen = !isOver(each) && !(isCluster(each) && behind > 0);
            const sets = behind + ((cuts[at] ?? 0) % (setsAskedOf(each) - behind + 1));
            return isOpen ? [{ exercise: at, sets, rest: { from: 60, to: 60 } }] : [];
          });
          const command = { ...NO_TIME, exercises: open };
          if (!decide(session.state(), command, session.now()).ok) return;
          const { exercises } = session.send(command).state();
          for (const { exercise, sets } of open) {
            const each = exercises[exercise] as (typeof exercises)[number];
            if (each.leftOut) expect(each.done).toHaveLength(0);
            else expect(setsAskedOf(each)).toBe(sets);
          }
        },
      ),
      { numRuns: 400 },
    );
  });

  test('killed at any event, it comes back with every set that was put down', () => {
    fc.assert(
      fc.property(acts, (given) => {
        const events = playing(given, () => {}).events();
        for (let kept = 1; kept <= events.length; kept += 1) {
          const prefix = events.slice(0, kept);
          const state = fold(prefix);
          const saved = inForce(prefix).filter(
            (event) => event.type === 'set-done' && event.role !== 'warm-up',
          );
          expect(new Set(setsOf(state).map(({ id }) => id))).toEqual(
            new Set(saved.map(({ id }) => id)),
          );
          // It can go on: the stage is one, and a command is answered.
          expect(state && decide(state, { do: 'start' }, readingAt(9e6))).toBeTruthy();
        }
      }),
      { numRuns: 100 },
    );
  });
});

test('the acts tried here reach clusters, swaps and closings', () => {
  const seen = new Set<string>();
  fc.assert(
    fc.property(acts, (given) => {
      for (const { type } of playing(given, () => {}).events()) seen.add(type);
    }),
    { numRuns: 300 },
  );
  expect([...seen].sort()).toEqual(
    expect.arrayContaining([
      'cluster-ended',
      'cluster-resumed',
      'day-shortened',
      'exercise-replaced',
      'pain-marked',
      'pair-parted',
      'paired',
      'rest-changed',
      'session-closed',
      'set-added',
      'set-amended',
      'sets-confirmed',
      'undone',
      'warm-ups-skipped',
    ]),
  );
});
