import { describe, expect, it } from 'vitest';
import { openCoach } from '../../src/lifter/open-coach.ts';
import { KITS } from '../../src/training/kits.ts';
import { kilograms } from '../../src/training/mass.ts';
import { LEAN_SPRING } from './lean-spring.ts';
import { PHONE, Player, WIDE } from './player.ts';
import { demoScene, LAST_DAYS } from './scene.ts';

const types = (player: Player) => player.scene.facts().map(({ type }) => type);

describe('every act is an event, and undone by one key', () => {
  it.each([
    ['a set that was put down', '  ', 'set-done'],
    ['a start', ' ', 'set-started'],
    ['a correction', '  5<enter>', 'set-amended'],
    ['an added set', 'a', 'set-added'],
    ['a skipped set', 's', 'set-skipped'],
    ['a longer rest', '  +', 'rest-changed'],
    ['a pause', '  p', 'paused'],
    ['going on after it', '  pp', 'resumed'],
    ['another exercise', 'x<down> ', 'exercise-chosen'],
    ['an exercise left out', 'x<down>d<esc>', 'exercise-skipped'],
    ['another lift', 'xl ', 'exercise-replaced'],
    ['another load', 'c75<enter>', 'exercise-replaced'],
    ['pain', 'm ', 'pain-marked'],
  ])('%s', (_, keys, type) => {
    const player = new Player().atFirstSet();
    const before = JSON.stringify({ ...player.scene.session(), events: [], lastAt: 0 });
    player.keys(keys);
    expect(types(player).at(-1)).toBe(type);
    const after = JSON.stringify({ ...player.scene.session(), events: [], lastAt: 0 });
    expect(after).not.toBe(before);
    const many = types(player).length;
    player.keys('u');
    expect(types(player).slice(many)).toEqual(['undone']);
    player.keys('<ctrl-u>');
    expect(JSON.stringify({ ...player.scene.session(), events: [], lastAt: 0 })).toBe(after);
  });

  it('esc marks no pain', () => {
    const player = new Player().atFirstSet();
    const many = types(player).length;
    expect(types(player.keys('m<esc>')).slice(many)).toEqual([]);
    expect(player.scene.session().exercises[0]).toMatchObject({ pain: false, leftOut: false });
  });

  it.each([
    ['warm-ups', ' s', '3 warm-ups left out. u takes it back.'],
    ['a set', ' ss', 'Set 1 of Back squat left out. u takes it back.'],
    ['an exercise', ' xd', 'Back squat: what was left is left out. u takes it back.'],
    ['the rest for pain', ' sm ', 'Pain is marked at Back squat. u takes it back.'],
    ['another lift', ' xl ', 'Paused squat in place of Back squat. u takes it back.'],
    ['another load', ' c60<enter>', '60 kg from here on. u takes it back.'],
    ['a set more', ' sa', '4 sets now. u takes it back.'],
    ['another exercise', ' x<down> ', 'On to Pull-up. u takes it back.'],
  ])('what is left out or changed is said, with the way back: %s', (_, keys, said) => {
    expect(new Player().keys(keys).screen().replace(/\s+/g, ' ')).toContain(said);
  });

  it('also the end of a cluster', () => {
    const player = new Player().atCluster().keys('  ').wait(12).keys('s');
    expect(player.screen()).toContain('Cluster ended. u takes it back.');
  });

  it('what was typed and not saved is undone first', () => {
    const player = new Player().atFirstSet().keys('  5u');
    expect(player.screen()).toContain('‹7› reps');
    expect(player.sets(0)).toBe('7@-');
  });

  it('an undo says what it took back', () => {
    const player = new Player().atFirstSet().keys('  u');
    expect(player.screen()).toContain('Taken back: the set. ctrl-u brings it back.');
    expect(player.keys('<ctrl-u>c75<enter>u').screen()).toContain(
      'Taken back: the other load or lift.',
    );
  });

  it('a correction of the set before is told of while the next one is lifted', () => {
    const player = new Player().atFirstSet().keys('   b5<enter>');
    expect(player.sets(0)).toBe('5@-');
    expect(player.screen()).toContain('The correction is saved.');
  });

  it('a start is taken back by r', () => {
    const player = new Player().atFirstSet().keys(' r');
    expect(types(player).at(-1)).toBe('start-withdrawn');
    expect(player.screen()).toContain('READY');
  });
});

describe('which lift pain is marked at', () => {
  it('after the last set of a lift is that lift’s, until a set of the next is begun', () => {
    const player = new Player(WIDE).atFirstSet().keys('  ').wait(200).keys('  ').wait(200);
    player.keys('  ');
    expect(player.screen()).toContain('Back squat, set 3 of 3');
    player.keys('m');
    expect(player.screen()).toContain('Pain: Back squat');
    expect(player.screen()).toContain('▸ Mark it');
    expect(player.screen()).not.toContain('Leave the rest');
    player.keys(' ');
    expect(player.screen()).toContain('Pain is marked at Back squat. u takes it back.');
    expect(player.scene.session().exercises.map(({ pain }) => pain)).toEqual([
      true,
      false,
      false,
      false,
    ]);
    // Every set of it was done: nothing is called left out.
    expect(player.keys('x').screen()).toMatch(/Back squat +82\.5 kg · done 7, 6, 6 · pain/);
    expect(player.keys('<esc>m').screen()).toContain('Pain: Pull-up');
    player.keys('<esc>').wait(300).keys(' m');
    expect(player.screen()).toContain('Pain: Pull-up');
  });

  it('after the last set of all can be marked, too', () => {
    const player = new Player(WIDE).keys(' x<down><down><down> ').keys('  ');
    player.keys('xd<down>d<down>d<esc>');
    expect(player.screen()).toContain('DONE');
    player.keys('m');
    expect(player.screen()).toContain('Pain: Plank');
  });

  it('of a pair is that of the lift that was put down, not of the one that is due', () => {
    const player = new Player(WIDE).atFirstSet().keys('  x<down>+<esc>');
    expect(player.screen()).toMatch(/REST.*Pull-up/);
    player.keys('m');
    expect(player.screen()).toContain('Pain: Back squat');
  });

  it('of any other lift is marked in the list of all', () => {
    const player = new Player(WIDE).atFirstSet().keys('  x<down>m');
    expect(player.screen()).toContain('Pain: Pull-up');
    player.keys(' ');
    expect(player.scene.session().exercises[1]).toMatchObject({ pain: true, leftOut: true });
  });
});

describe('what was closed', () => {
  it('is taken up again by undo from the summary', () => {
    const player = new Player().atFirstSet().keys('  f<down> ');
    expect(player.screen()).toContain('Done · A');
    player.keys('u');
    expect(player.screen()).toContain('Taken back: the closing. ctrl-u brings it back.');
    expect(player.screen()).toMatch(/REST.*set 2 of 3/);
  });
});

describe('a set that failed', () => {
  it('is told with one key, and known', () => {
    const player = new Player().atFirstSet().keys('  z');
    expect(player.screen()).toContain('saved: 7 reps, the next one failed');
    expect(player.scene.session().exercises[0]?.done[0]).toMatchObject({
      count: 7,
      reserve: 0,
      failed: true,
    });
  });

  it('before a single rep is recorded as that, and brings an offer', () => {
    const player = new Player().atFirstSet().keys(' 0 ');
    expect(player.sets(0)).toBe('0@-');
    expect(player.screen()).toMatch(/y takes [\d.]+ kg: 0 reps at 82\.5 kg is under 5/);
  });
});

it('a lift in the place of another does not show that one’s set as its own', () => {
  const player = new Player().atFirstSet().keys('  xl ');
  expect(player.screen()).toContain('Back squat, set 1 of');
});

it('digits go to the newest set, also after the clock was set back', () => {
  const player = new Player().atFirstSet().keys('  ').wait(300).keys(' ').wait(30);
  player.scene.clock.jump(-3_600_000);
  player.keys(' 4<enter>');
  expect(player.sets(0)).toBe('7@- 4@-');
});

describe('pain', () => {
  const marked = () => new Player().atFirstSet().keys('  m');

  it('leaves the rest of the exercise out, unless the lifter says otherwise', () => {
    const player = marked().keys(' ');
    expect(player.screen()).toContain('Pull-up');
    expect(player.scene.session().exercises[0]).toMatchObject({ pain: true, leftOut: true });
  });

  it('offers a lighter load', () => {
    const player = marked().keys('<down> ');
    expect(player.scene.facts().at(-1)).toMatchObject({ because: 'lighter' });
    expect(player.screen()).toContain('62.5 kg × 8 reps');
  });

  it('goes back from the list of lifts to the question', () => {
    const player = marked().keys('<down><down> ');
    expect(player.screen()).toContain('Another lift');
    expect(player.keys('<esc>').screen()).toContain('Pain: Back squat');
  });

  it('offers another lift', () => {
    const player = marked().keys('<down><down> ').keys(' ');
    expect(player.scene.facts().at(-1)).toMatchObject({ because: 'other-lift' });
    expect(player.screen()).toContain('Paused squat');
  });

  it('goes on as planned', () => {
    const player = marked().keys('<up><up> ');
    expect(player.screen()).toMatch(/Back squat +set 2 of 3/);
  });

  it('that is gone is kept as gone, and the load is what it was', () => {
    const past = [
      { ago: 5, day: 'A', sets: ['80x8@2 80x8@2!', '-', '-', '-'] },
      ...LAST_DAYS.slice(1),
    ];
    const player = new Player(undefined, { past }).keys('  ');
    expect(player.screen()).toMatch(/Go on as planned +80 kg/);
    player.keys('<up> ');
    const { decisions } = player.scene.lifter.journal().history();
    expect(decisions).toMatchObject([
      { rule: 'pain-asked', answer: 'go-on', subject: 'back-squat straight 5-8' },
    ]);
    expect(player.scene.session().exercises[0]?.prescribed.load).toBe(80e9);
  });

  it('that stopped a lift before its first set ever is asked about, too', () => {
    const first = new Player(undefined, { past: [] }).keys(' m f<down> ');
    expect(first.screen()).toContain('Done · A');
    first.scene.clock.pass(7 * 24 * 3_600_000);
    const player = new Player(undefined, { over: first.scene.again() }).keys('  ');
    expect(player.screen()).toMatch(/Pain was marked at Back squat last time/);
  });

  it('of last time is asked about once, before the first set', () => {
    const past = [{ ago: 5, day: 'A', sets: ['80x8@2!', '-', '-', '-'] }, ...LAST_DAYS.slice(1)];
    const player = new Player(undefined, { past }).keys('  ');
    expect(player.screen()).toContain('Pain was marked at Back squat last time.');
    player.keys('<up> ');
    expect(player.screen()).toContain('WARM UP');
    expect(player.keys(' ').screen()).toContain('LIFT');
  });
});

/** A first session, in which the load of the squat is asked for. */
const first = () => new Player(undefined, { program: WITHOUT_START, past: [] }).keys('  ');

const WITHOUT_START = LEAN_SPRING.replace('        start: 80\n', '');

describe('a load', () => {
  it('that is not known is asked for before the first set', () => {
    expect(first().screen()).toContain('choose a load that you could do for 10 reps');
    expect(first().keys('60<enter>').screen()).toMatch(/WARM UP.*warm-up 1 of 3/);
    expect(first().keys('60<enter>s').screen()).toContain('60 kg × 6 reps');
  });

  it('that is not known is what a digit begins', () => {
    const player = new Player(undefined, { program: WITHOUT_START, past: [] }).keys(' 6');
    expect(player.screen()).toContain('choose a load that you could do for 10 reps');
    expect(player.keys('0<enter>s').screen()).toContain('60 kg × 6 reps');
  });

  it('that is not known can be chosen while the rest before it runs', () => {
    const player = new Player(undefined, { program: WITHOUT_START, past: [] });
    player.keys('<down><enter>s  x<up> ');
    expect(player.screen()).toContain('next: a load to choose, c asks for it');
    expect(player.screen()).toContain('5  kg added');
    expect(player.keys('c60<enter>s').screen()).toContain('next 60 kg × 6 reps');
  });

  it('that cannot be made is answered with those that can', () => {
    const player = first().keys('61<enter>');
    expect(player.screen()).toContain('60 or 62.5 kg');
    expect(player.keys('<up><enter>s').screen()).toContain('62.5 kg × 6 reps');
  });

  it('is changed from what it is now: the next heavier one costs three keys', () => {
    const player = new Player().atFirstSet().keys('c');
    expect(player.screen()).toContain('Now 82.5 kg. Which load from here on?');
    expect(player.keys('<up><enter>').screen()).toContain('85 kg × 6 reps');
  });

  it('is needed: enter without one says so', () => {
    expect(first().keys('<enter>').screen()).toContain('Type a load first, such as 72.5.');
  });

  it('on offer after a miss is taken with one key', () => {
    const player = new Player().atFirstSet().keys(' 3 ');
    expect(player.screen()).toMatch(/y takes 72\.5 kg: .*72\.5 kg fits the range better/s);
    player.keys('y');
    expect(player.scene.facts().at(-1)).toMatchObject({ because: 'after-a-miss' });
  });
});

describe('warm-ups', () => {
  const steps = (player: Player) =>
    player.scene.session().exercises[0]?.prescribed.warmUp.map(({ load }) => load / 1e9);

  it('lead up to another load', () => {
    expect(steps(new Player().keys(' c100<enter>'))).toEqual([40, 60, 80]);
  });

  it('lead up to a load that was asked for', () => {
    expect(steps(first().keys('140<enter>'))).toEqual([50, 80, 110]);
  });

  it('lead up to a lighter load for pain', () => {
    const past = [{ ago: 5, day: 'A', sets: ['80x8@2!', '-', '-', '-'] }];
    const player = new Player(undefined, { past }).keys('  ');
    expect(steps(player)).toHaveLength(3);
  });

  it('lead up to another lift, fewer where its muscles are warm', () => {
    const player = new Player().keys(' xl ');
    expect(player.screen()).toMatch(/WARM UP.*Paused squat.*warm-up 1 of/);
    const warm = new Player().atFirstSet().keys('  xl ').wait(300);
    expect(warm.screen()).toMatch(/Paused squat.*warm-up 1 of 1/);
  });
});

describe('an offer', () => {
  it('aims at what today’s set says, not at what the last session did', () => {
    const player = new Player().atFirstSet().keys(' 3<tab>0 ').keys('y');
    const { prescribed } = player.scene.session().exercises[0] ?? {};
    // 3 reps to failure at 82.5 kg are a maximum of 87.4 kg; 72.5 kg are 6 reps with 1 to 2 left.
    expect(prescribed?.load).toBe(70e9);
    expect(prescribed?.sets[1]?.aim).toBeLessThanOrEqual(7);
  });

  it('waits while a set is lifted, which it must not end', () => {
    const resting = new Player().atFirstSet().keys(' 3<tab>0 ');
    expect(resting.screen()).toContain('y takes 70 kg');
    const lifting = resting.wait(200).keys(' ');
    expect(lifting.screen()).not.toContain('y takes');
    expect(lifting.keys('y').scene.session().stage.kind).toBe('lifting');
    expect(lifting.keys('r').screen()).toContain('y takes 70 kg');
  });
});

describe('the bar', () => {
  it('is told from the empty one, and then from what is on it', () => {
    const player = new Player().keys(' ');
    expect(player.screen()).toContain('put on 5 a side');
    expect(player.keys('  ').screen()).toContain('take off 5, put on 10 + 2.5 a side');
    expect(player.keys('s').screen()).toContain('put on');
    expect(player.keys('  ').screen()).toContain('as it is: 25 + 5 + 1.25 a side');
  });
});

it('a day that was begun yesterday goes on with what is left of it, and says so', () => {
  const past = [{ ago: 1, day: 'A', sets: ['80x8@2 80x8@2 80x8@1', '-', '-', '-'] }];
  const player = new Player(undefined, { past });
  expect(player.screen()).toContain('A was begun: Back squat done already, so what is left comes');
  expect(player.screen()).toMatch(/▸ Pull-up/);
  expect(player.keys(' ').scene.session().prescription.exercises).toHaveLength(3);
});

describe('before and after', () => {
  it('cautions come first and are kept as answered', () => {
    const player = new Player(undefined, {
      start: { kind: 'cautions', scroll: 0 },
      settings: { cautions: 'unread' },
    });
    player.keys('<down>'.repeat(30)).keys(' ');
    expect(player.screen()).toContain('Your health');
    expect(player.scene.coach.choices().cautions).toBe('unread');
    player.keys('<down>'.repeat(30)).keys('y');
    expect(player.scene.coach.choices().cautions).toBe('doctor-first');
    expect(player.screen()).toContain('see a doctor first');
    player.keys(' ');
    expect(player.screen()).toContain('See a doctor first; y says that one knows that you train.');
    expect(player.store.model().ui.screen.kind).toBe('preview');
    player.keys('y');
    expect(player.scene.coach.choices().cautions).toBe('read');
    expect(player.screen()).not.toContain('doctor');
    player.keys(' ');
    expect(player.store.model().ui.screen.kind).toBe('runner');
  });

  it('a cut asks one question more before its first session', () => {
    const start = { kind: 'cautions', scroll: 0 } as const;
    const asked = () =>
      new Player(WIDE, { start, settings: { cautions: 'unread', weightAdvice: 'ask' } }).keys(
        `${'<down>'.repeat(30)} ${'<down>'.repeat(30)}n`,
      );
    const player = asked();
    expect(player.screen()).toContain('eating disorder');
    player.keys('n');
    expect(player.store.model().ui.screen.kind).toBe('preview');
    expect(player.scene.coach.today().prescription.aim).toBe('cut');
    expect(asked().keys('y').scene.coach.today().prescription.aim).toBe('maintain');
  });

  it('one key reads a page at a time, to the end', () => {
    const player = new Player(PHONE, { start: { kind: 'health', scroll: 0 } });
    expect(player.keys('n').screen()).toMatch(/Read to the end of the\s+questions first/);
    expect(player.screen()).toContain('Is any of it so?');
    let pages = 0;
    while (player.screen().includes('↓ more')) {
      player.keys(' ');
      pages += 1;
    }
    expect(pages).toBeLessThanOrEqual(5);
    expect(player.screen()).toContain('Is any of it so?');
    expect(player.keys(' ').screen()).toContain('Answer with y or n.');
    expect(player.keys('n').screen()).toContain('space begin');
  });

  it('the summary is left by the same key, once all of it was in sight', () => {
    const player = new Player(PHONE).atFirstSet().keys('  f<down> ');
    while (player.screen().includes('↓ more')) {
      expect(player.left).toEqual([]);
      player.keys(' ');
    }
    player.keys(' ');
    expect(player.left).toEqual([0]);
  });

  it('why is read to its end and then goes back', () => {
    const player = new Player(PHONE).keys('w');
    while (player.screen().includes('↓ more')) player.keys(' ');
    expect(player.screen()).toContain('read on');
    expect(player.keys(' ').screen()).toContain('space begin');
  });

  it('reading down the preview does not change where space begins', () => {
    expect(new Player().keys('<down><down> ').screen()).toMatch(/WARM UP.*Back squat/);
  });

  it('the session begins with the exercise that was chosen by enter', () => {
    const player = new Player().keys('<down><enter>');
    expect(player.screen()).toMatch(/WARM UP.*Pull-up +warm-up 1 of 1/);
    expect(new Player().keys(' ').screen()).toContain('Back squat');
  });

  it('another day of the program can be looked at and begun', () => {
    const player = new Player().keys('<right>');
    expect(player.screen()).toContain('Lean spring · B');
    player.keys(' ');
    expect(player.scene.session().prescription.day).toBe('B');
  });

  it('q leaves with the session open', () => {
    const player = new Player().atFirstSet().keys('  q');
    expect(player.left).toEqual([0]);
    expect(player.scene.session().stage.kind).toBe('resting');
  });

  it('esc puts away what was typed before it leaves', () => {
    const player = new Player().atFirstSet().keys('  5<esc>');
    expect(player.left).toEqual([]);
    expect(player.keys('<esc>').left).toEqual([0]);
  });

  it('finishing early closes the session as it is, and shows what comes next', () => {
    const player = new Player().atFirstSet().keys('  f<down> ');
    expect(types(player).slice(-2)).toEqual(['sets-confirmed', 'session-closed']);
    expect(player.screen()).toContain('Next time');
  });

  it('discarding is asked about once more, and then leaves', () => {
    const player = new Player().atFirstSet().keys('  f<up> ');
    expect(player.screen()).toContain('1 set would not count, and no key brings them back.');
    expect(player.keys(' ').screen()).toContain('Finish early?');
    player.keys(' <down> ');
    expect(types(player).at(-1)).toBe('session-discarded');
    expect(player.left).toEqual([0]);
  });

  it('sounds are switched and kept', () => {
    const player = new Player().keys('g ');
    expect(player.scene.coach.choices().bell).toBe(false);
    expect(player.screen()).toContain('[ ] Bell');
    expect(player.keys('<esc>').screen()).toContain('Lean spring');
  });
});

describe('the time there is', () => {
  const minutes = (player: Player) =>
    player.scene.coach.live()?.state().prescription.short?.minutes;

  it('k cuts the day on the preview shorter each time, says what was cut, and makes it whole again', () => {
    const player = new Player(WIDE);
    expect(player.screen()).not.toContain('Cut to');
    expect(player.keys('k').screen()).toContain('Cut to 30 min: shorter rests.');
    expect(player.keys('k').screen()).toContain('Cut to 20 min');
    expect(player.screen()).toContain('in turn Back squat and Pull-up.');
    expect(player.keys('w').screen()).toContain(
      'one lift while the other rests: Back squat and Pull-up',
    );
    player.keys('<esc>');
    expect(player.keys('k').screen()).toContain('Cut to 15 min');
    expect(player.screen().replace(/\s+/g, ' ')).toContain('k cuts further.');
    expect(player.keys('k').screen()).toContain('Cut to 10 min');
    expect(player.screen().replace(/\s+/g, ' ')).toContain('k makes it whole again.');
    expect(player.keys('k').screen()).not.toContain('Cut to');
  });

  it('stays cut after a look at another screen', () => {
    const player = new Player(WIDE).keys('kki<esc>');
    expect(player.screen()).toContain('Cut to 20 min');
  });

  it('the session that is begun is the short one, and its exercises keep to it at another load', () => {
    const player = new Player(WIDE).keys('kk ');
    expect(minutes(player)).toBe(20);
    const [before] = player.scene.session().exercises;
    player.keys('c70<enter>');
    const [after] = player.scene.session().exercises;
    expect(after?.prescribed.load).not.toBe(before?.prescribed.load);
    expect(after?.prescribed.sets).toHaveLength(before?.prescribed.sets.length ?? 0);
    expect(after?.prescribed.rest).toEqual(before?.prescribed.rest);
  });
});

it('says at the end of an exercise which of its sets were too light to count, and in the summary', () => {
  const player = new Player().atFirstSet();
  for (const reserve of ['5', '1', '6']) {
    player.keys(' ').wait(20).keys(' ').keys(`<tab>${reserve}<enter>`).wait(310);
  }
  expect(player.screen()).toContain(
    'Sets 1 and 3 do not count: 5 or more in reserve, so too light.',
  );
  expect(player.spoken().join(' ')).toContain('Sets 1 and 3 do not count');
  expect(player.keys('f<down> ').screen()).toContain('Sets 1 and 3 do not count');
});

it('a load that was stepped to gives way to what is typed', () => {
  const program = LEAN_SPRING.replace('        start: 80\n', '');
  const player = new Player(WIDE, { program, past: [] }).keys('  ');
  player.keys('<up><up>');
  const stepped = player.screen();
  expect(player.keys('72').screen()).not.toBe(stepped);
  player.keys('.5<enter>');
  expect(player.scene.session().exercises[0]?.prescribed.load).toBe(kilograms(72.5));
});

it('a day named at the start is the one that is shown, until a session is begun', () => {
  const { lifter } = demoScene();
  const coach = openCoach(lifter, () => lifter.settings().settings, null, 'C');
  expect(coach.today().prescription.day).toBe('C');
  expect(coach.today('A').prescription.day).toBe('A');
  coach.begin();
  expect(coach.live()?.state().prescription.day).toBe('C');
  coach.live()?.send({ do: 'discard' });
  expect(coach.today().prescription.day).not.toBe('C');
});

it('a first load of a band lift names the band to begin with, and both arrows lead to it', () => {
  const program = `
name: Bands
unit: kg
days:
  - name: A
    exercises:
      - { lift: band-curl, sets: 2, reps: 8-12 }
`;
  const gear = KITS[0]?.gear('kg') ?? null;
  const player = () => new Player(WIDE, { program, past: [], gear }).keys('  ');
  expect(player().screen()).toMatch(/From \d+ kg up \(.*band.*\); the arrows step\./);
  expect(player().keys('<down>').screen()).toBe(player().keys('<up>').screen());
});
