import { readFileSync, writeFileSync } from 'node:fs';
import { describe, expect, it, vi } from 'vitest';
import { seededRandom } from '../../src/rehearsal/seeded-random.ts';
import { repsToFailureAt } from '../../src/training/strength.ts';
import { Player, WIDE } from './player.ts';
import { type Scene, type SceneOptions, scene } from './scene.ts';

vi.setConfig({ testTimeout: 120_000 });

const program = (more = '', sets = 3) => `
name: Watched
unit: kg
aim: cut
days_per_week: 3
${more}accept:
  few-hard-sets: made for a test
  no-work: made for a test
  no-direct-work: made for a test
days:
  - name: A
    exercises:
      - lift: back-squat
        sets: ${sets}
        reps: 5-8
        rest: 3-5 min
        start: 100
      - lift: bench-press
        sets: ${sets}
        reps: 5-8
        rest: 3-5 min
        start: 100
`;

/** The squat's track. */
const SQUAT = 'back-squat straight 5-8';

interface Story {
  readonly weeks: number;
  /** Strength as a share of the start, by days since: of the squat, and of the bench press where it goes with it. */
  readonly strength?: (at: number) => number;
  readonly together?: true;
  /** Body weight in kg by days since; null: not weighed. */
  readonly body?: ((at: number) => number) | null;
  readonly head?: string;
  readonly sets?: number;
  /** Of a day, as a share of strength. */
  readonly luck?: number;
  /** What was said before today. */
  readonly said?: readonly (readonly [rule: string, answer: 'yes' | 'no', subject?: string])[];
}

/** Weeks of training three days a week, up to yesterday, on the real program and disk. */
function lived(story: Story): SceneOptions {
  const {
    weeks,
    strength = () => 1,
    together,
    body,
    head,
    sets: planned,
    said = [],
    luck = 0.01,
  } = story;
  const random = seededRandom(11);
  const days = weeks * 7;
  const weighs = body === undefined ? (at: number) => 85 * 0.993 ** (at / 7) : body;
  const past = [...Array(days).keys()]
    .filter((at) => at % 7 === 0 || at % 7 === 2 || at % 7 === 4)
    .map((at) => {
      const sets = (share: number) => {
        const able = 124 * share * (1 + luck * random.normal());
        const reps = Math.max(1, Math.floor(repsToFailureAt(100, able) - 2));
        return [reps, reps - 1, reps - 1].map((count) => `100x${Math.max(1, count)}@2`).join(' ');
      };
      return {
        ago: days - at,
        day: 'A',
        sets: [sets(strength(at)), sets(together ? strength(at) : 1)],
        asAsked: true as const,
      };
    });
  const weighIns =
    weighs === null
      ? []
      : [...Array(days).keys()].map(
          (at) => [days - at, Math.round((weighs(at) + 0.3 * random.normal()) * 10) / 10] as const,
        );
  return {
    program: program(head, planned),
    past,
    weighIns,
    before: (lifter) => {
      for (const [rule, answer, subject = null] of said)
        lifter.journal().record({ type: 'decided', rule, answer, subject });
    },
  };
}

/** From its day on strength goes by so much a week. */
const falls = (from: number, aWeek: number) => (at: number) =>
  (1 - aWeek) ** (Math.max(0, at - from) / 7);
const loses = (percent: number) => (at: number) => 85 * (1 - percent / 100) ** (at / 7);

/** What each advice leads to: the sentence after the key, and the aim that is trained by from then on. */
const ADVICE: Readonly<
  Record<
    string,
    {
      readonly story: Story;
      readonly yes: readonly [said: string, aim: 'cut' | 'maintain'];
      readonly no: readonly [said: string, aim: 'cut' | 'maintain'];
    }
  >
> = {
  'lose-far-too-fast': {
    story: { weeks: 6, body: loses(2) },
    yes: ['Kept.', 'cut'],
    no: ['Put aside for three weeks.', 'cut'],
  },
  'lose-slower': {
    story: { weeks: 6, body: loses(1.3) },
    yes: ['Kept.', 'cut'],
    no: ['Put aside for three weeks.', 'cut'],
  },
  'pause-cut-long': {
    story: { weeks: 17, body: loses(0.6) },
    yes: ['The cut is paused from today on', 'maintain'],
    no: ['Put aside for three weeks.', 'cut'],
  },
  'not-a-cut': {
    story: { weeks: 7, body: loses(-0.5) },
    yes: ['the cut goes on', 'cut'],
    no: ['Trained as maintenance from now on', 'maintain'],
  },
  'weight-stands-still': {
    story: { weeks: 7, body: () => 85 },
    yes: ['the cut goes on', 'cut'],
    no: ['Trained as maintenance from now on', 'maintain'],
  },
  'goal-reached': {
    story: { weeks: 6, head: 'goal_weight: 83\n' },
    yes: ['The cut is over', 'maintain'],
    no: ['Put aside for three weeks.', 'cut'],
  },
  'pause-cut': {
    story: { weeks: 9, strength: falls(21, 0.02), together: true },
    yes: ['The cut is paused from today on', 'maintain'],
    no: ['Put aside for three weeks.', 'cut'],
  },
  'lighter-week-proposed': {
    story: { weeks: 9, strength: falls(21, 0.02), together: true },
    yes: ['A lighter week begins with the next session', 'cut'],
    no: ['Put aside for three weeks.', 'cut'],
  },
  'do-less': {
    story: { weeks: 6, strength: falls(14, 0.02) },
    yes: ['one set fewer until it holds again', 'cut'],
    no: ['no set is dropped, for three weeks', 'cut'],
  },
};

/** The advice that a key would answer. */
const chosenRule = (at: Player): string | undefined => {
  const { screen } = at.store.model().ui;
  const chosen = screen.kind === 'review' ? screen.page.advice[screen.chosen] : undefined;
  return chosen?.mayTake || chosen?.mayRefuse ? chosen.finding.reason.rule : undefined;
};

/** The review with this advice chosen. */
function atAdvice(over: Scene, rule: string): Player {
  const at = new Player(WIDE, { over }).keys('t');
  for (let tries = 0; tries < 5; tries += 1) {
    if (chosenRule(at) === rule) return at;
    at.keys('<tab>');
  }
  throw new Error(`The review does not ask about ${rule}:\n${at.screen()}`);
}

const lastDecision = ({ lifter }: Scene) => lifter.journal().history().decisions.at(-1);

describe('advice is answered by one key, and the answer counts', () => {
  for (const [rule, { story, yes, no }] of Object.entries(ADVICE)) {
    for (const [key, answer, [said, aim]] of [
      ['y', 'yes', yes],
      ['n', 'no', no],
    ] as const) {
      it(`${rule}: ${answer}`, () => {
        const over = scene(lived(story));
        const at = atAdvice(over, rule).keys(key);
        expect(at.screen()).toContain(said);
        expect(lastDecision(over)).toMatchObject({ rule, answer });
        const later = over.again();
        expect(later.coach.today().prescription.aim).toBe(aim);
        // It is not asked about again.
        expect(chosenRule(new Player(WIDE, { over: later }).keys('t'))).not.toBe(rule);
      });
    }
  }
});

it('a set that goes, stays where the lifter says no to it', () => {
  const story = lived(ADVICE['do-less']!.story);
  const setsNext = (over: Scene) =>
    over.coach.today().prescription.exercises.map(({ sets }) => sets.length);
  const [asked, refused] = [scene(story), scene(story)];
  expect(Math.min(...setsNext(asked))).toBe(2);
  atAdvice(refused, 'do-less').keys('n');
  const slipping = refused.again();
  expect(Math.max(...setsNext(slipping))).toBe(3);
});

it('a cut that rests begins again with a yes', () => {
  const over = scene(lived(ADVICE['weight-stands-still']!.story));
  atAdvice(over, 'weight-stands-still').keys('n');
  const resting = over.again();
  const at = atAdvice(resting, 'cut-at-rest').keys('y');
  expect(at.screen()).toContain('The cut begins again.');
  expect(resting.again().coach.today().prescription.aim).toBe('cut');
});

/** Advice whose yes is shown in the lines of the program file, and written by one key more. */
const WRITTEN: Readonly<Record<string, { readonly story: Story; readonly line: string }>> = {
  'do-less-in-file': { story: { weeks: 9, strength: falls(14, 0.01) }, line: 'sets: 2' },
  'may-do-more-under': { story: { weeks: 5, sets: 1 }, line: 'sets: 2' },
  'may-do-more-plateau': { story: { weeks: 8, sets: 2, luck: 0 }, line: 'sets: 3' },
  'set-comes-back-to-file': {
    story: {
      weeks: 6,
      sets: 2,
      said: [
        ['do-less-in-file', 'yes', SQUAT],
        ['cut-ended', 'yes'],
      ],
    },
    line: 'sets: 3',
  },
};

describe('advice that changes the program is answered by keys', () => {
  for (const [rule, { story, line }] of Object.entries(WRITTEN)) {
    it(`${rule}: yes`, () => {
      const over = scene(lived(story));
      const before = readFileSync(over.program, 'utf8');
      const at = atAdvice(over, rule).keys('y');
      expect(at.screen()).toContain('Nothing is written yet');
      expect(readFileSync(over.program, 'utf8')).toBe(before);
      at.keys(' ');
      expect(at.screen()).toContain('Written to');
      const after = readFileSync(over.program, 'utf8').split('\n');
      expect(after.filter((each, place) => each !== before.split('\n')[place])).toEqual([
        `        ${line}`,
      ]);
      expect(lastDecision(over)).toMatchObject({ rule, answer: 'yes' });
      expect(chosenRule(new Player(WIDE, { over: over.again() }).keys('t'))).not.toBe(rule);
    });

    it(`${rule}: no`, () => {
      const over = scene(lived(story));
      const before = readFileSync(over.program, 'utf8');
      const at = atAdvice(over, rule).keys('n');
      expect(at.screen()).toContain('Put aside for three weeks.');
      expect(readFileSync(over.program, 'utf8')).toBe(before);
      expect(lastDecision(over)).toMatchObject({ rule, answer: 'no' });
      expect(chosenRule(new Player(WIDE, { over: over.again() }).keys('t'))).not.toBe(rule);
    });
  }
});

describe('the way out of a cut', () => {
  /** Four days a week until the cut, three in it. */
  const fewerDays = (over: Scene) => {
    const text = readFileSync(over.program, 'utf8');
    writeFileSync(over.program, text.replace('days_per_week: 4', 'days_per_week: 3'));
    return over.again();
  };
  const atFour = () => {
    const made = lived({ weeks: 6, said: [['cut-ended', 'yes']] });
    return fewerDays(
      scene({ ...made, program: (made.program ?? '').replace('per_week: 3', 'per_week: 4') }),
    );
  };

  it('begins where it is asked for, after one question, and tells what the cut came to', () => {
    const over = scene(lived({ weeks: 6 }));
    const at = new Player(WIDE, { over }).keys('tc<up> <down> ');
    expect(at.screen()).toContain('The cut is over: trained as maintenance from now on.');
    expect(at.screen()).toContain('The cut from its beginning');
    expect(over.again().coach.today().prescription.aim).toBe('maintain');
    // It can be taken up again.
    atAdvice(over.again(), 'cut-at-rest').keys('y');
    expect(over.again().coach.today().prescription.aim).toBe('cut');
    // Ended and begun on one day, nothing of what was known is lost.
    const screen = new Player(WIDE, { over: over.again() }).keys('t').screen();
    expect(screen).toContain('% a week ±');
    expect(screen).not.toContain('Not enough data yet');
  });

  it('gives a day back that the cut took', () => {
    const over = atFour();
    const at = atAdvice(over, 'day-comes-back-to-file').keys('y');
    expect(at.screen()).toContain('3 → 4 days a week.');
    at.keys(' ');
    expect(readFileSync(over.program, 'utf8')).toContain('days_per_week: 4');
    // The next step waits for a week.
    expect(new Player(WIDE, { over: over.again() }).keys('t').screen()).not.toContain(
      'next program',
    );
  });

  it('leaves the days where they are after a no, for good', () => {
    const over = atFour();
    atAdvice(over, 'day-comes-back-to-file').keys('n');
    expect(readFileSync(over.program, 'utf8')).toContain('days_per_week: 3');
    over.clock.pass(30 * 24 * 60 * 60 * 1000);
    expect(new Player(WIDE, { over: over.again() }).keys('t').screen()).not.toContain('3 → 4');
  });

  it('ends with the draft of the next program, for maintenance, from what is lifted now', () => {
    const over = scene(lived({ weeks: 6, said: [['cut-ended', 'yes']] }));
    const { screen } = atAdvice(over, 'next-program').keys('y').store.model().ui;
    expect(screen.kind === 'question' && screen.answers.aim).toBe('maintain');
    const { bests } = over.coach.drafting.draft(over.coach.drafting.again());
    expect(bests.map(({ lift }) => lift)).toEqual(['back-squat', 'bench-press']);
  });

  it('asks no more about the next program after a no', () => {
    const over = scene(lived({ weeks: 6, said: [['cut-ended', 'yes']] }));
    atAdvice(over, 'next-program').keys('n');
    expect(new Player(WIDE, { over: over.again() }).keys('t').screen()).not.toContain(
      'next program',
    );
  });
});

describe('what nobody advised is asked for behind one key', () => {
  it('a lighter week', () => {
    const over = scene(lived({ weeks: 6 }));
    const at = new Player(WIDE, { over }).keys('tc<down> ');
    expect(at.screen()).toContain('A lighter week begins with the next session');
    const { sets } = over.again().coach.today().prescription.exercises[0]!;
    expect(sets.length).toBe(2);
    // Once is enough.
    const preview = new Player(WIDE, { over: over.again() }).screen();
    expect(preview.match(/^ *! .*lighter week.*$/gim)).toEqual([
      expect.stringContaining('Lighter week until'),
    ]);
  });

  it('a pause, which a no ends', () => {
    const over = scene(lived({ weeks: 6 }));
    new Player(WIDE, { over }).keys('tc<down><down> ');
    const paused = over.again();
    expect(paused.coach.today().prescription.aim).toBe('maintain');
    expect(atAdvice(paused, 'pause-in-force').keys('n').screen()).toContain('The pause is over');
    expect(paused.again().coach.today().prescription.aim).toBe('cut');
  });
});

it('says nothing new, not that all is well, where advice was answered', () => {
  const over = scene(lived(ADVICE['lose-slower']!.story));
  atAdvice(over, 'lose-slower').keys('n');
  const screen = new Player(WIDE, { over: over.again() }).keys('t').screen();
  expect(screen).toContain('Nothing new: ');
  expect(screen).not.toContain('Go on as you are');
  expect(screen).toContain('You said no to it.');
});
