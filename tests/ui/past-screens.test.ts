import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { beforeEach, describe, expect, it, vi } from 'vitest';
import type { Lifter } from '../../src/lifter/open-lifter.ts';
import { kilograms } from '../../src/training/mass.ts';
import { widthOf } from '../../src/ui/line.ts';
import { LEAST } from '../../src/ui/too-small.ts';
import { LAPTOP, PHONE, Player, WIDE } from './player.ts';
import { demoScene, type Scene } from './scene.ts';

vi.setConfig({ testTimeout: 60_000 });

let over: Scene;
let lifter: Lifter;

/** The screens over the demo's twelve weeks. */
beforeEach(() => {
  over = demoScene();
  lifter = over.lifter;
});

const player = (size = LAPTOP) => new Player(size, { over });
/** The question about weight was not answered yet. */
function asked() {
  over = demoScene({ settings: { weightAdvice: 'ask' } });
  lifter = over.lifter;
}
const decisions = () => lifter.journal().history().decisions;

describe('the weekly review', () => {
  it('gives the verdict first, and goes back to the session', () => {
    const at = player().keys('t');
    const [title = '', , verdict = ''] = at.screen().split('\n');
    expect(title).toContain('Three days · Wed 25 Nov');
    expect(verdict).toMatch(/▸ (Do less|You may do more)/);
    expect(at.screen()).toContain('Strength kept');
    expect(at.keys('q').store.model().ui.screen.kind).toBe('preview');
  });

  it('names every figure at every width', () => {
    const at = player().keys('t');
    for (let { columns } = LEAST; columns <= 120; columns += 1) {
      at.store.resize({ columns, rows: 200 });
      const text = at.screen();
      for (const name of ['Strength kept', 'Body weight', 'Rate of loss', 'Sessions']) {
        expect(
          text.match(new RegExp(`^ *${name}[: ] *\\d`, 'gm')),
          `${name}, ${columns}`,
        ).toHaveLength(1);
      }
      expect(text).not.toContain('figure');
    }
  });

  /** Goes on until the chosen advice changes the program file. */
  function atAdvice(): Player {
    const at = player(WIDE).keys('t');
    for (let tries = 0; tries < 6; tries += 1) {
      if (at.screen().includes('y yes to it')) return at;
      at.keys('<tab>');
    }
    throw new Error('No advice of the demo changes its program.');
  }

  it('shows what taking an advice changes before it is written', () => {
    const at = atAdvice().keys('y');
    const screen = at.screen();
    expect(screen).toMatch(/^\s*-\s+(sets|cluster)/m);
    expect(screen).toMatch(/^\s*\+\s+(sets|cluster)/m);
    expect(screen).toContain('Nothing is written yet');
    at.keys('<esc>');
    expect(at.store.model().ui.screen.kind).toBe('review');
    expect(decisions()).toEqual([]);
  });

  it('writes it with one key more, keeps the comments, and remembers the answer', () => {
    const shipped = lifter.programPath();
    const before = readFileSync(shipped, 'utf8');
    const at = atAdvice();
    const { screen } = at.store.model().ui;
    const change =
      screen.kind === 'review' ? screen.page.advice[screen.chosen]?.finding.changes[0] : undefined;
    if (!change || !('day' in change)) throw new Error('It changes no exercise.');
    at.keys('y ');
    const own = join(lifter.folders.data, 'programs', 'three-day.yaml');
    expect(at.screen()).toContain('Written to');
    const after = readFileSync(own, 'utf8').split('\n');
    const differing = before.split('\n').filter((line, at) => line !== after[at]);
    expect(after).toHaveLength(before.split('\n').length);
    expect(differing).toHaveLength(1);
    expect(differing[0]).toContain(String(change.from));
    expect(readFileSync(shipped, 'utf8')).toBe(before);
    expect(decisions()).toMatchObject([{ answer: 'yes' }]);
    expect(at.keys('u').screen()).toContain('The change stands in the program file');
    // The review is made of the changed program from now on.
    const { exercises } = lifter.program().days.find(({ name }) => name === change.day) ?? {};
    const exercise = exercises?.[change.index];
    expect(exercise?.style === 'straight' ? exercise.sets : exercise?.mostSets).toBe(change.to);
  });

  it('puts an advice aside, and does not bring it up again', () => {
    const at = player(WIDE).keys('t');
    const { screen } = at.store.model().ui;
    const text = screen.kind === 'review' ? screen.page.advice[screen.chosen]?.text : undefined;
    const start = (text ?? '').slice(0, 60);
    expect(at.screen()).toContain(start);
    at.keys('n');
    expect(at.screen()).toContain('Put aside for three weeks.');
    expect(at.screen()).not.toContain(start);
    expect(decisions()).toMatchObject([{ answer: 'no' }]);
    expect(player(WIDE).keys('t').screen()).not.toContain(start);
  });

  it('asks one question first, and keeps only the answer', () => {
    asked();
    const at = player().keys('t');
    expect(at.screen()).toContain('eating disorder');
    at.keys('y');
    expect(at.screen()).toContain('nothing is said about losing weight');
    expect(at.screen()).not.toContain('Rate of loss');
    expect(over.coach.lookBack.weightAdvice()).toBe('no');
    expect(player().keys('t').screen()).not.toContain('eating disorder');
  });

  it('gives no advice on weight while the question is put off, and asks again', () => {
    asked();
    const at = player().keys('t<esc>');
    expect(at.screen()).toContain('Strength kept');
    expect(at.screen()).not.toContain('Rate of loss');
    expect(over.coach.lookBack.weightAdvice()).toBe('ask');
    expect(player().keys('t').screen()).toContain('eating disorder');
  });
});

describe('what is said to the review', () => {
  const aim = () => over.coach.today().prescription.aim;

  it('a pause is taken, trains as maintenance, says so, and can be ended', () => {
    const at = player(WIDE).keys('tc<down><down> ');
    expect(at.screen()).toContain('The cut is paused from today on');
    expect(at.screen()).toMatch(/▸ The cut is paused until Tue 8 Dec 2026/);
    expect(aim()).toBe('maintain');
    expect(player(WIDE).screen()).toContain('The cut is paused until');
    expect(at.keys('c<down><down> ').screen()).toContain('The cut rests already.');
    at.keys('<esc>n');
    expect(at.screen()).toContain('The pause is over; the cut goes on.');
    expect(aim()).toBe('cut');
    expect(decisions()).toMatchObject([
      { rule: 'pause-wanted', answer: 'yes' },
      { rule: 'pause-in-force', answer: 'no' },
    ]);
  });

  it('one key takes the end of a cut back, as every answer that changed no file', () => {
    const at = player(WIDE).keys('tc<up> ');
    expect(at.screen()).toContain('End the cut?');
    expect(aim()).toBe('cut');
    at.keys('<down> ');
    expect(aim()).toBe('maintain');
    expect(at.screen()).toContain('from now on. u takes it back.');
    expect(at.keys('u').screen()).toContain('Taken back: “The cut is over:');
    expect(aim()).toBe('cut');
    expect(decisions()).toEqual([]);
    expect(at.keys('u').screen()).toContain('There is nothing to take back.');
    expect(at.keys('n').screen()).toContain('Put aside for three weeks. u takes it back.');
    at.keys('u');
    expect(decisions()).toEqual([]);
  });

  it('says on another screen, too, which answer a key took back', () => {
    const at = player(WIDE).keys('tc<down><down> <esc>');
    expect(at.screen()).not.toContain('The cut is paused from');
    expect(at.keys('u').screen().replaceAll(/\s+/g, ' ')).toContain(
      'Taken back: “The cut is paused from today on, for two weeks at maintenance.”',
    );
    expect(aim()).toBe('cut');
  });

  it('a lighter week is asked for once in four weeks', () => {
    const at = player(WIDE).keys('tc<down> ');
    expect(at.screen()).toContain('A lighter week begins with the next session');
    expect(over.coach.today().prescription.lighter).toBe(true);
    expect(at.keys('c<down> ').screen()).toContain('one lighter week in four');
    expect(decisions()).toMatchObject([{ rule: 'lighter-week-proposed', answer: 'yes' }]);
  });

  it('sources are shown by the key for why, and hidden again', () => {
    const at = player(WIDE).keys('t');
    expect(at.screen()).not.toContain('Roth 2022');
    expect(at.keys('w').screen()).toContain('Roth 2022');
    expect(at.keys('w').screen()).not.toContain('Roth 2022');
  });
});

describe('what the cut leads to', () => {
  const file = () => readFileSync(lifter.programPath(), 'utf8');

  it('is typed on a screen that says where it leads, and written into the program', () => {
    const at = player(WIDE).keys('tc ');
    expect(at.screen()).toContain('What the cut leads to');
    at.keys('76');
    expect(at.screen()).toMatch(/Goal 76 kg: .* at .* % a week/);
    at.keys('<enter>');
    expect(at.store.model().ui.screen.kind).toBe('review');
    expect(at.screen()).toMatch(/Goal 76 kg/);
    expect(file()).toMatch(/^goal_weight: 76$/m);
    at.keys('c <backspace><backspace><enter>');
    expect(file()).not.toContain('goal_weight');
  });

  it('takes a day and a rate as well, and says what cannot be', () => {
    const at = player(WIDE).keys('tc ');
    at.keys('60<down>2026-12-24');
    expect(at.screen()).toMatch(
      /over the .* % planned at most|nothing is planned for so long a way/,
    );
    at.keys('<down><backspace><backspace><backspace>');
    at.keys('<enter>');
    expect(at.screen()).not.toContain('Written to');
    expect(at.keys('<esc>').store.model().ui.screen.kind).toBe('review');
    expect(file()).not.toContain('goal');
  });

  it('is not offered to who is not to lose weight', () => {
    over = demoScene({ settings: { weightAdvice: 'no' } });
    lifter = over.lifter;
    expect(player(WIDE).keys('tc').screen()).not.toMatch(/aim for|the cut/i);
  });
});

describe('a cut that was not answered for', () => {
  it('is trained as maintenance, and says so', () => {
    asked();
    expect(over.coach.today().prescription.aim).toBe('maintain');
    expect(player(WIDE).screen()).toContain('Trained as maintenance until one question');
    player(WIDE).keys('tn');
    expect(over.coach.today().prescription.aim).toBe('cut');
    expect(player(WIDE).screen()).not.toContain('Trained as maintenance');
  });

  it('praises no lighter weight after a yes', () => {
    asked();
    player(WIDE).keys('ty');
    expect(player(WIDE).screen()).not.toMatch(/lighter|lost|cut/i);
    expect(over.coach.today().prescription.aim).toBe('maintain');
  });
});

describe('a weigh-in', () => {
  const weighIns = () => lifter.journal().history().weighIns;

  it('takes the number and enter, and goes back to the session with the trend', () => {
    const before = weighIns().length;
    const at = player().keys('i79.1\r');
    expect(at.screen()).toMatch(/Saved: 79\.1 kg\. Trend 7\d/);
    expect(at.store.model().ui.screen.kind).toBe('preview');
    expect(weighIns()).toHaveLength(before + 1);
  });

  it('asks about a slip of the finger, and keeps it only when it is said twice', () => {
    const before = weighIns().length;
    const at = player().keys('i791\r');
    expect(at.screen()).toContain('Was it 79.1 kg?');
    expect(weighIns()).toHaveLength(before);
    at.keys('\r1\r791\r');
    expect(weighIns()).toHaveLength(before);
    at.keys('791\r');
    // It may take the place of a reading of the same morning.
    expect(weighIns().at(-1)?.mass).toBe(kilograms(791));
  });

  it('is taken back by u', () => {
    const before = weighIns().length;
    player().keys('i79.1\r').keys('iu');
    expect(weighIns()).toHaveLength(before);
  });
});

describe('the history', () => {
  const squats = () =>
    lifter
      .journal()
      .history()
      .results.filter(({ exercise }) => exercise.lift === 'back-squat');

  /** The newest session of the squat. */
  const atSquat = (size = LAPTOP) => {
    const at = player(size).keys('h/back-squat\r');
    return at.keys('\r');
  };

  it('lists the lifts, then the sessions of one with a plot, then its sets', () => {
    const at = player().keys('h');
    expect(at.screen()).toMatch(/Back squat +11 sessions · last Thu 19 Nov · best e1RM/);
    const sessions = atSquat();
    expect(sessions.screen()).toMatch(/^ *Back squat.*: e1RM, kg$/m);
    expect(sessions.screen()).toMatch(/[⠁-⣿]{3}/);
    expect(sessions.screen()).toContain('2026-11-19');
    expect(sessions.keys('\r').screen()).toMatch(/▸ Set 1 +100 kg · \d+ reps/);
  });

  it('corrects a set by a new event, and takes the correction back', () => {
    const before = squats().at(-1)?.sets[0]?.count;
    const at = atSquat().keys('\r').keys('c12\r');
    expect(at.screen()).toContain('Corrected: 100 kg × 12');
    expect(squats().at(-1)?.sets[0]?.count).toBe(12);
    at.keys('u');
    expect(squats().at(-1)?.sets[0]?.count).toBe(before);
  });

  it('refuses numbers that cannot be, and changes nothing', () => {
    const before = squats().at(-1)?.sets[0];
    const at = atSquat().keys('\r').keys('c<tab>99\r');
    expect(at.store.model().ui.message).toMatch(/reserve/);
    expect(squats().at(-1)?.sets[0]).toEqual(before);
  });

  it('deletes a set or a session only when it is said twice, and brings it back', () => {
    const [count, sets] = [squats().length, squats().at(-1)?.sets.length ?? 0];
    atSquat().keys('\r').keys('d\r');
    expect(squats().at(-1)?.sets).toHaveLength(sets);
    const at = atSquat().keys('\r').keys('d<down>\r');
    expect(at.screen()).toContain('u takes it back');
    expect(squats().at(-1)?.sets).toHaveLength(sets - 1);
    at.keys('u');
    expect(squats().at(-1)?.sets).toHaveLength(sets);
    atSquat().keys('\r').keys('<up>d<down>\r');
    expect(squats()).toHaveLength(count - 1);
  });

  it('finds a session by its note', () => {
    const at = player().keys('h/slept five\r');
    expect(at.screen()).toContain('History: slept five');
    expect(at.screen()).toContain('1 session');
    expect(player().keys('h/nothing like it\r').screen()).toContain('Nothing fits.');
  });

  it('pages through what is longer than the screen, and stops at the ends', () => {
    const at = atSquat(PHONE);
    const first = at.screen();
    at.keys('\u001b[6~');
    expect(at.screen()).not.toBe(first);
    at.keys('\u001b[5~').keys('\u001b[5~');
    expect(at.screen()).toBe(first);
  });
});

it('whatever is pressed, at any size, the screens of the past fit and say something', () => {
  const size = fc.record({
    columns: fc.integer({ min: LEAST.columns, max: 140 }),
    rows: fc.integer({ min: LEAST.rows, max: 50 }),
  });
  const keys = fc.array(
    fc.constantFrom(
      ...'thiocd/nyuwjk ?79.'.split(''),
      ...['\r', '<up>', '<down>', '<esc>', '<tab>', '<backspace>', '<right>', '\u001b[6~'],
    ),
    { maxLength: 14 },
  );
  fc.assert(
    fc.property(size, fc.boolean(), fc.boolean(), keys, (window, taps, demo, pressed) => {
      const at = new Player(window, {
        over: demoScene({
          settings: { taps },
          ports: (own) => (demo ? { ...own, demoFolder: '/tmp/holdfast-demo' } : own),
        }),
      });
      for (const key of pressed) {
        at.keys(key);
        const { lines } = at.frame();
        expect(lines).toHaveLength(window.rows);
        expect(Math.max(...lines.map(widthOf)), at.screen()).toBeLessThanOrEqual(window.columns);
        expect(at.spoken().length).toBeGreaterThan(0);
        if (demo) expect(at.screen()).toContain('Demo');
      }
    }),
    { numRuns: 25 },
  );
});

it('one whole session of the past can be looked at, lift by lift, and left again', () => {
  const player = new Player().keys('h<enter><enter><up>');
  expect(player.screen()).toContain('▸ The whole session');
  const whole = player.keys('<enter>').screen();
  for (const text of ['Lean spring, day B', 'Bench press', '60 kg · 7 reps', 'Barbell row']) {
    expect(whole).toContain(text);
  }
  expect(player.spoken().join(' ')).toContain('Barbell row');
  expect(player.keys('<esc>').screen()).toContain('▸ The whole session');
});
