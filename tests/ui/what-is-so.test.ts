import { describe, expect, it } from 'vitest';
import { LAPTOP, PHONE, Player, WIDE } from './player.ts';
import { GEAR } from './scene.ts';

/** Up to the last set of the squat, which is put down. */
const afterSquats = () =>
  new Player(WIDE).atFirstSet().keys('  ').wait(200).keys('  ').wait(200).keys('  ');

describe('the end of a session and its summary', () => {
  it('count the same sets and the same minutes', () => {
    const player = new Player(WIDE).atFirstSet().keys('  ').wait(200).keys('  a').wait(100);
    player.keys('xd<down>d<down>d<down>d<esc>').wait(400);
    const end = /(\d+ of \d+ sets) done, \d+ left out[\s\S]*?(\d+ min)\n/.exec(player.screen());
    expect(end?.slice(1)).toEqual(['2 of 8 sets', '3 min']);
    expect(player.screen()).toContain('3 min in');
    player.keys(' ');
    expect(player.screen()).toContain('2 of 8 sets · 3 min');
  });
});

describe('the preview after a session of today', () => {
  it('says once that there was one, with the next good day', () => {
    const player = new Player(WIDE).atFirstSet().keys('  ').wait(200);
    player.keys('xd<down>d<down>d<down>d<esc>').keys('  ');
    const { scene } = player;
    expect(scene.session().stage.kind).toBe('closed');
    const screen = new Player(WIDE, { over: scene.again() }).screen();
    expect(screen.match(/trained today/g)).toHaveLength(1);
    expect(screen).toContain('Next good day:');
  });
});

describe('numbers that were refused', () => {
  it('give way to the next digit, and the refusal says what to do', () => {
    const player = new Player().atFirstSet().keys('  999<enter>');
    expect(player.screen().replace(/\s+/g, ' ')).toContain('Type another over it, or rub it out.');
    expect(player.keys('5').screen()).toContain('‹5› reps');
    expect(player.keys('<enter>').sets(0)).toBe('5@-');
  });

  it('stay to be rubbed out, where that is what is done', () => {
    const player = new Player().atFirstSet().keys('  99<enter><backspace>');
    expect(player.screen()).toContain('‹9› reps');
    expect(player.keys('1').screen()).toContain('‹91› reps');
  });

  it('of a load and of an old set, too', () => {
    const load = new Player().atFirstSet().keys('c61<enter>6');
    expect(load.store.model().ui.screen).toMatchObject({ kind: 'load', typed: '6' });
    const old = new Player().keys('h<enter><enter><enter>99<enter>6');
    expect(old.store.model().ui.screen).toMatchObject({ kind: 'correct', typed: { count: '6' } });
  });

  it('are those of a set without a rep that has some in reserve', () => {
    const player = new Player().atFirstSet().keys('  0<tab>2<enter>');
    expect(player.sets(0)).toBe('7@-');
    expect(player.screen()).toContain('A set of no reps has none in reserve, so not 2.');
  });
});

it('the start of a mini-set whose rest is over goes on by itself, and undo says so', () => {
  const player = new Player(WIDE).atCluster().keys('  ').wait(6).keys(' ').wait(20).keys('u');
  expect(player.screen()).toContain('LIFT');
  expect(player.screen()).toContain('Its rest is over meanwhile, so it has begun by itself;');
  expect(player.keys('++++').screen()).toContain('REST');
});

it('why tells the sets that are asked for by now, at the load they have, and no warm-up that is over', () => {
  const player = new Player(WIDE);
  expect(player.keys(' w').screen()).toContain('warm-up 30 × 8, 45 × 5, 65 × 2');
  player.keys('<esc> ').wait(30).keys(' w');
  expect(player.screen()).toContain('warm-up 45 × 5, 65 × 2');
  player.keys('<esc>s').wait(200).keys('  <tab><tab>80<enter>a').wait(200).keys('w');
  expect(player.screen()).toContain('80 kg · 4 sets of 7, 6, 6, 6 reps');
  expect(player.screen()).not.toContain('warm-up');
});

describe('a note', () => {
  it('is about the lift that was just put down, until a set of the next is begun', () => {
    const player = afterSquats().keys('m<up> ');
    expect(player.screen()).toContain('Note: Back squat');
    expect(player.keys('<esc>').wait(300).keys(' m<up> ').screen()).toContain('Note: Pull-up');
  });

  it('is about the chosen lift in the list of all', () => {
    expect(new Player().keys(' x<down><down>m<up> ').screen()).toContain(
      'Note: Dumbbell side raise',
    );
  });
});

describe('a lift that is done', () => {
  const list = () => afterSquats().keys('x<up>');

  it('is offered nothing in the list that it would refuse', () => {
    const footer = list().screen().split('\n').slice(-2).join(' ');
    for (const gone of ['another lift', 'leave out', 'alternate']) {
      expect(footer).not.toContain(gone);
    }
    expect(footer).toContain('m mark pain, note');
  });

  it.each([
    ['l', 'Back squat is done.'],
    ['d', 'Nothing of Back squat is left to do.'],
    ['+', 'Nothing of Back squat is left to do.'],
    ['-', 'Back squat alternates with no other.'],
  ])('says so at once: %s', (key, said) => {
    const player = list().keys(key);
    expect(player.screen()).toContain(said);
    expect(player.store.model().ui.screen.kind).toBe('exercises');
  });
});

describe('a program with an error', () => {
  const gear = { ...GEAR, bars: [], stations: [] };
  const player = (size = LAPTOP) => new Player(size, { gear, past: [] });

  it.each([PHONE, LAPTOP, WIDE])(
    'is shown what stops it, not begun, at $columns × $rows',
    (size) => {
      const at = player(size);
      expect(at.screen()).not.toContain('space begin');
      expect(at.screen()).not.toContain('when it is due; ');
      expect(at.screen()).toContain('space what stops it');
      at.keys(' ');
      const [first] = at.screen().match(/(error|advice|accepted): /) ?? [];
      expect(first).toBe('error: ');
      expect(at.screen().replace(/\s+/g, ' ')).toContain('Back squat needs a rack');
      expect(at.keys('<esc>').store.model().ui.screen.kind).toBe('preview');
    },
  );

  it('does not say that its lifts ask for others', () => {
    expect(player().screen()).not.toContain('Your gear does not allow');
  });

  it('lets a finger see it, too', () => {
    const at = new Player(PHONE, { gear, past: [], settings: { taps: true } });
    at.tap(3, 15);
    expect(at.store.model().ui.screen.kind).toBe('findings');
  });
});

describe('what is to be known before a session', () => {
  const few = { ...GEAR, plates: GEAR.plates.filter(({ stamped }) => stamped.amount >= 10) };
  const handles = { ...few, dumbbells: [] };

  it('leaves room for the first lift on the smallest screen, and is whole behind w', () => {
    const settings = { cautions: 'doctor-first' } as const;
    const at = new Player(PHONE, { settings, past: [], gear: handles }).keys('kk');
    expect(at.screen()).toMatch(/▸ .*\n.* sets? of/);
    expect(at.screen()).toContain('…');
    const why = at.keys('w').spoken().join(' ');
    expect(why).toContain('About the session');
    expect(why).toContain('Does one know that you train? y says so.');
  });

  it('is said once', () => {
    const at = new Player({ columns: 80, rows: 60 }, { gear: handles, past: [] });
    const text = at.screen().replace(/\s+/g, ' ');
    expect(text.split('program starts at 8 kg a hand').length).toBe(2);
  });
});
