import { describe, expect, it, vi } from 'vitest';
import { seededRandom } from '../../src/rehearsal/seeded-random.ts';
import { repsToFailureAt } from '../../src/training/strength.ts';
import { Player, WIDE } from './player.ts';
import { type Scene, type SceneOptions, scene } from './scene.ts';

vi.setConfig({ testTimeout: 120_000 });

const program = (more = '') => `
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
        sets: 3
        reps: 5-8
        rest: 3-5 min
        start: 100
      - lift: bench-press
        sets: 3
        reps: 5-8
        rest: 3-5 min
        start: 100
`;

interface Story {
  readonly weeks: number;
  /** Strength as a share of the start, by days since: of the squat, and of the bench press where it goes with it. */
  readonly strength?: (at: number) => number;
  readonly together?: true;
  /** Body weight in kg by days since; null: not weighed. */
  readonly body?: ((at: number) => number) | null;
  readonly head?: string;
}

/** Weeks of training three days a week, up to yesterday, on the real program and disk. */
function lived({ weeks, strength = () => 1, together, body, head }: Story): SceneOptions {
  const random = seededRandom(11);
  const days = weeks * 7;
  const weighs = body === undefined ? (at: number) => 85 * 0.993 ** (at / 7) : body;
  const past = [...Array(days).keys()]
    .filter((at) => at % 7 === 0 || at % 7 === 2 || at % 7 === 4)
    .map((at) => {
      const sets = (share: number) => {
        const able = 124 * share * (1 + 0.01 * random.normal());
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
  return { program: program(head), past, weighIns };
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

const chosenRule = (at: Player): string | undefined => {
  const { screen } = at.store.model().ui;
  return screen.kind === 'review'
    ? screen.page.advice[screen.chosen]?.finding.reason.rule
    : undefined;
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
      ['o', 'yes', yes],
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
  const at = atAdvice(resting, 'cut-at-rest').keys('o');
  expect(at.screen()).toContain('The cut begins again.');
  expect(resting.again().coach.today().prescription.aim).toBe('cut');
});
