import fc from 'fast-check';
import { describe, expect, it, test, vi } from 'vitest';
import { CATALOGUE } from '../../src/program/catalogue.ts';
import { checkProgram } from '../../src/program/check/check-program.ts';
import { programFigures } from '../../src/program/check/figures.ts';
import { draftProgram } from '../../src/program/draft/draft-program.ts';
import { DRAFT_RULES } from '../../src/program/draft/draft-rules.ts';
import { readProgram } from '../../src/program/read-program.ts';
import { KITS } from '../../src/training/kits.ts';
import { directMuscles, JOINTS, MUSCLES } from '../../src/training/lift.ts';
import { isLoadable, loadsFor } from '../../src/training/loads.ts';
import { kilograms } from '../../src/training/mass.ts';
import type { Reason } from '../../src/training/rule.ts';
import { DAYS, GEARS, MINUTES, someWishes } from './some-wishes.ts';

vi.setConfig({ testTimeout: 120_000 });

const sentences = (reasons: readonly Reason[]) =>
  reasons.map(({ rule, facts }) =>
    DRAFT_RULES.find(({ key }) => key === rule)?.sentence(facts, 'kg'),
  );

const liftsOf = (draft: ReturnType<typeof draftProgram>) =>
  draft.program.days.map(({ exercises }) => exercises.map(({ lift }) => lift));

describe.each(Object.keys(GEARS) as (keyof typeof GEARS)[])('with %s', (name) => {
  const gear = GEARS[name];

  describe.each(DAYS)('%i days a week', (days) => {
    it.each(MINUTES)('of %i minutes', (minutes) => {
      const wishes = someWishes({ gear, days, minutes, unit: gear.unit });
      const draft = draftProgram(wishes);
      const read = readProgram(draft.text, 'draft.yaml');
      expect(read.ok && read.warnings).toEqual([]);
      const errors = draft.findings.filter(({ severity }) => severity === 'error');
      expect(errors).toEqual([]);
      expect(draft.program.days).toHaveLength(days);
      for (const day of programFigures(draft.program).days) {
        expect(day.minutes).toBeLessThanOrEqual(Math.min(minutes, 75));
      }
      // What is not as it should be is told, never left for the check to find.
      if (draft.findings.length > 0) expect(draft.givenUp.length).toBeGreaterThan(0);
      for (const lift of liftsOf(draft).flat()) {
        const owns = { barbell: gear.bars, dumbbell: [...gear.dumbbells, ...gear.handles] };
        if (lift.loading === 'barbell' || lift.loading === 'dumbbell') {
          expect(owns[lift.loading].length, lift.key).toBeGreaterThan(0);
        }
        if (lift.loading === 'stack') expect(gear.stacks.length, lift.key).toBeGreaterThan(0);
      }
      expect([...draft.chosen, ...draft.givenUp].map(({ rule }) => rule)).not.toContain(undefined);
      if (days === 4) expect(neighboursShare(draft)).toEqual([]);
    });
  });
});

/** Muscles trained directly on a day and on the one after it. */
function neighboursShare(draft: ReturnType<typeof draftProgram>): string[] {
  const direct = liftsOf(draft).map((day) => day.flatMap(({ trains }) => directMuscles(trains)));
  return direct.flatMap((muscles, at) => {
    const next = direct[(at + 1) % direct.length] ?? [];
    return muscles.filter((muscle) => next.includes(muscle));
  });
}

it('finds a program without a finding for three days of an hour at home', () => {
  expect(draftProgram(someWishes()).findings).toEqual([]);
});

it('takes a body with nothing to lift as it is, and says what is missing', () => {
  const draft = draftProgram(someWishes({ gear: GEARS['body weight'] }));
  expect(draft.findings.map(({ facts }) => facts.muscles)).toEqual(['side delts']);
  expect(sentences(draft.givenUp)).toContain(
    'No work of its own: side delts; your gear holds nothing for it.',
  );
});

it('says what two half hours leave out, and that time is the cause', () => {
  const draft = draftProgram(someWishes({ days: 2, minutes: 30 }));
  expect(sentences(draft.givenUp).join(' ')).toMatch(/No work of its own: .*; the time does not/);
});

it('has a lift for push, pull and legs even then', () => {
  const draft = draftProgram(someWishes({ days: 2, minutes: 30 }));
  expect(draft.findings.map(({ rule }) => rule)).not.toContain('missing-pattern');
});

describe('lifts wished for', () => {
  it('come in, and a bar that can pin a lone lifter is told', () => {
    const draft = draftProgram(someWishes({ like: ['bench-press', 'front-squat'] }));
    const keys = liftsOf(draft)
      .flat()
      .map(({ key }) => key);
    expect(keys).toEqual(expect.arrayContaining(['bench-press', 'front-squat']));
    expect(sentences(draft.givenUp).join()).toMatch(/Bench press is in as you wished, though/);
    expect(draft.findings.map(({ rule }) => rule)).toContain('safeties');
  });

  it('stay out where they cannot be loaded or were ruled out, and that is told', () => {
    const draft = draftProgram(
      someWishes({ like: ['leg-press', 'deadlift'], without: ['deadlift'] }),
    );
    const keys = liftsOf(draft)
      .flat()
      .map(({ key }) => key);
    expect(keys).not.toContain('leg-press');
    expect(keys).not.toContain('deadlift');
    expect(sentences(draft.givenUp)).toEqual(
      expect.arrayContaining([
        'Leg press is not in: your gear holds nothing for it.',
        'Deadlift is not in: you left it out.',
      ]),
    );
  });

  it('name as the cause of a movement that is not in what really bars it', () => {
    const squats = (wishes: Parameters<typeof someWishes>[0]) =>
      sentences(
        draftProgram(someWishes({ gear: KITS[0]!.gear('kg'), days: 2, minutes: 15, ...wishes }))
          .givenUp,
      ).filter((said) => said?.startsWith('No squat or lunge'));
    // One squat of many is left out; it is the knee that bars the others, and that one, too.
    expect(squats({ hurts: ['knee'], without: ['back-squat'] })).toEqual(
      squats({ hurts: ['knee'] }),
    );
    expect(squats({ hurts: ['knee'] }).join()).toContain('it loads what hurts you');
    const all = ['bodyweight-squat', 'bodyweight-split-squat', 'step-up', 'reverse-lunge'];
    expect(squats({ without: ['split-squat', 'box-squat', ...all] })).toEqual([
      'No squat or lunge: you left out what there is for it.',
    ]);
  });

  it('bring no lift under a bar without safeties when nobody asked for it', () => {
    const keys = liftsOf(draftProgram(someWishes()))
      .flat()
      .map(({ key }) => key);
    expect(keys).not.toContain('back-squat');
    expect(keys).not.toContain('bench-press');
  });
});

it('gives muscles to bring up eight hard sets', () => {
  const draft = draftProgram(someWishes({ focus: ['biceps'], minutes: 75 }));
  const biceps = programFigures(draft.program).muscles.find(({ muscle }) => muscle === 'biceps');
  expect(biceps?.directDays).toBeGreaterThan(0);
  expect(biceps?.hardSets).toBeGreaterThanOrEqual(8);
});

describe('loads of the first session', () => {
  /**
   * NSCA's chart: 5 reps are 87 % and 8 reps 80 % of the maximum. 100 kg × 5 to failure is a
   * maximum of 115 kg; 8 reps to failure (6–7 with 1–2 in reserve) are 92 kg of it, 95 % of
   * that 87.4 kg; the chart and the curve may differ by a step of 2.5 kg.
   */
  it('come from a recent best by the curve', () => {
    const best = { lift: 'bench-press', load: kilograms(100), reps: 5, reserve: 0 };
    const draft = draftProgram(someWishes({ like: ['bench-press'], bests: [best] }));
    const [bench] = draft.program.days
      .flatMap(({ exercises }) => exercises)
      .filter(({ lift }) => lift.key === 'bench-press');
    expect(bench?.range).toEqual([5, 8]);
    expect(Math.abs((bench?.start ?? 0) - kilograms(87.4))).toBeLessThanOrEqual(kilograms(2.5));
    expect(draft.text).toMatch(/lift: bench-press\n(?: {8}.*\n)*? {8}start: \d/);
  });

  it('are left to the first session where no best is known', () => {
    const draft = draftProgram(someWishes());
    expect(draft.text).not.toContain('start:');
    expect(sentences(draft.chosen).join()).toMatch(/first session asks for the loads/);
  });
});

describe('whatever is wished', () => {
  const keys = [...CATALOGUE.keys()];
  const some = fc.uniqueArray(fc.constantFrom(...keys), { maxLength: 4 });
  const wishes = fc
    .record({
      days: fc.constantFrom(...DAYS),
      minutes: fc.integer({ min: 15, max: 120 }),
      gear: fc.constantFrom(...Object.values(GEARS)),
      like: some,
      without: some,
      focus: fc.uniqueArray(fc.constantFrom(...MUSCLES), { maxLength: 2 }),
      aim: fc.constantFrom('cut', 'maintain', 'build'),
      bests: fc.array(
        fc.record({
          lift: fc.constantFrom(...keys),
          load: fc.integer({ min: 0, max: 200 }).map(kilograms),
          reps: fc.integer({ min: 1, max: 15 }),
          reserve: fc.integer({ min: 0, max: 5 }),
        }),
        { maxLength: 3 },
      ),
    })
    .map((wished) => someWishes({ ...wished, unit: wished.gear.unit }));

  it('the program can be read, has no error but of lifts asked for, and every load can be made', () => {
    fc.assert(
      fc.property(wishes, (wished) => {
        const { program, text, findings } = draftProgram(wished);
        expect(readProgram(text, 'draft').ok).toBe(true);
        expect(findings).toEqual(checkProgram(program, wished.gear));
        for (const { exercises } of program.days) {
          for (const { lift, start } of exercises) {
            expect(wished.without).not.toContain(lift.key);
            const { loading, hands } = lift;
            const loads = loadsFor(wished.gear, { loading, hands, bar: null, step: null });
            if (start !== null) expect(isLoadable(loads, start), lift.key).toBe(true);
          }
        }
      }),
      { numRuns: 25 },
    );
  });

  it('the same wishes give the same program', () => {
    fc.assert(
      fc.property(wishes, (wished) => {
        expect(draftProgram(structuredClone(wished))).toEqual(draftProgram(wished));
      }),
      { numRuns: 6 },
    );
  });
});

describe('what hurts', () => {
  test.each(JOINTS)('%s: no lift loads it hard, and what goes has that cause', (joint) => {
    const gear = { ...KITS[5]!.gear('kg'), safeties: true };
    const draft = draftProgram(someWishes({ gear, hurts: [joint] }));
    const loading = liftsOf(draft)
      .flat()
      .filter(({ joints }) => joints.includes(joint));
    expect(loading).toEqual([]);
    const causes = draft.givenUp.filter(({ rule }) => rule === 'draft-movement-out');
    expect(causes.map(({ facts }) => facts.cause)).not.toContain('gear');
  });

  test('is said as common practice, and leads to someone licensed', () => {
    const gear = { ...KITS[2]!.gear('kg'), safeties: true };
    const draft = draftProgram(someWishes({ gear, hurts: ['knee'] }));
    expect(sentences(draft.givenUp).join(' ')).toMatch(
      /No squat or lunge: .*common practice; see someone who is licensed if it lasts/,
    );
  });
});

test('the best of a lift like it gives a first load at 90 % of the usual ratio', () => {
  const gear = KITS[3]!.gear('kg');
  const best = { lift: 'bench-press', load: kilograms(60), reps: 5, reserve: 0 };
  const draft = draftProgram(someWishes({ gear, bests: [best] }));
  // 60 kg × 5 is a maximum of 67.5 kg; a dumbbell 40 % of it, 27; at 9.5 reps to failure 76 %,
  // 20.6; 90 % of that 18.5: the pair of 18 kg.
  expect(sentences(draft.chosen).join(' ')).toMatch(
    /Dumbbell bench press starts at 18 kg a hand: 90 % of what 60 kg × 5 with 0 in reserve of Bench press/,
  );
});

test('a first load with the body is told as the lifter thinks of it', () => {
  const best = { lift: 'pull-up', load: kilograms(0), reps: 7, reserve: 1 };
  const wishes = { gear: KITS[5]!.gear('kg'), bests: [best], bodyMass: kilograms(80) };
  expect(sentences(draftProgram(someWishes(wishes)).chosen).join(' ')).toMatch(
    /Pull-up starts at body weight.*: 95 % of what body weight × 7 with 1 in reserve points to/,
  );
});

test('a changed program names every lift that it leaves out, with the cause', () => {
  const text = `name: Before
unit: kg
days:
  - name: A
    exercises:
      - {lift: back-squat, sets: 3, reps: 5-8}
      - {lift: dip, sets: 3, reps: 6-10}
      - {lift: good-morning, sets: 3, reps: 6-10}
`;
  const read = readProgram(text, 'before.yaml');
  if (!read.ok) throw new Error('It can be read.');
  const gear = { ...KITS[5]!.gear('kg'), safeties: true };
  const from = { text, program: read.program };
  const draft = draftProgram(someWishes({ gear, from, without: ['good-morning'] }));
  expect(sentences(draft.givenUp)).toEqual(
    expect.arrayContaining([
      'No more in it: Dip; your gear holds nothing for it.',
      'No more in it: Good morning; you left it out.',
    ]),
  );
});

describe('pairs', () => {
  const gear = KITS[5]!.gear('kg');
  const pairsOf = (minutes: number) => {
    const draft = draftProgram(someWishes({ gear, minutes }));
    return {
      draft,
      pairs: draft.program.days.flatMap(({ exercises }) =>
        exercises.flatMap(({ pair }) => pair ?? []),
      ),
    };
  };

  it('come in where the time does not reach without them, are named, and clash with none', () => {
    const { draft, pairs } = pairsOf(40);
    expect(pairs.length).toBeGreaterThan(0);
    expect(draft.text).toContain('pair: a');
    expect(sentences(draft.chosen).join(' ')).toContain('Their sets alternate');
    expect(draft.findings.filter(({ rule }) => rule.startsWith('pair'))).toEqual([]);
    // All but the arms and calves have their hard sets or miss them by one.
    const short = programFigures(draft.program).muscles.filter(
      ({ hardSets, directDays }) => directDays > 0 && hardSets < 5,
    );
    expect(short).toEqual([]);
  });

  it('stay out where there is time enough', () => {
    expect(pairsOf(60).pairs).toEqual([]);
  });
});

test('a draft is written with a blank line between its days, and none before the first', () => {
  const { text } = draftProgram(someWishes({ days: 3 }));
  const lines = text.split('\n');
  const before = (start: RegExp) =>
    lines.flatMap((line, at) => (start.test(line) ? [lines[at - 1]] : []));
  expect(before(/^ {2}- name: /)).toEqual(['days:', '', '']);
  expect(before(/^days:/)).toEqual(['']);
});
