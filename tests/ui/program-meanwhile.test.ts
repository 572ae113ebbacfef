import { chmodSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it, test } from 'vitest';
import { LEAN_SPRING } from './lean-spring.ts';
import { Player, WIDE } from './player.ts';
import { demoScene, GEAR, type Scene, scene } from './scene.ts';

const player = (over: Scene) => new Player(WIDE, { over });
const kind = (at: Player) => at.store.model().ui.screen.kind;

/** A day with its first two lifts in each other's place. */
function swapped(text: string): string {
  const [head = '', ...lifts] = text.split(/(?=^ *- lift: )/m);
  const [first = '', second = '', ...more] = lifts;
  return [head, second, first, ...more].join('');
}

describe('advice is written only onto the lift that was shown', () => {
  /** The demo's review at advice that changes the program, which is the lifter's own copy by now. */
  function atAdvice(over: Scene): Player {
    const at = player(over).keys('t');
    for (let tries = 0; tries < 6; tries += 1) {
      if (at.screen().includes('y yes to it')) return at;
      at.keys('<tab>');
    }
    throw new Error('No advice of the demo changes its program.');
  }
  const own = (over: Scene) => join(over.lifter.folders.data, 'programs', 'three-day.yaml');
  const changed = (at: Player) => {
    const { screen } = at.store.model().ui;
    const change =
      screen.kind === 'review' ? screen.page.advice[screen.chosen]?.finding.changes[0] : null;
    return change && 'day' in change ? change : null;
  };

  it('says day, lift and numbers above the lines', () => {
    const at = atAdvice(demoScene());
    const change = changed(at);
    const screen = at.keys('y').screen();
    expect(screen).toContain(`${change?.day}, `);
    expect(screen).toContain(`: ${change?.from} → ${change?.to} sets.`);
  });

  it('refuses a file in which another lift stands there by now', () => {
    const over = demoScene();
    const path = over.lifter.ownProgramPath();
    over.lifter.forgetProgram();
    const at = atAdvice(over);
    // Every day turned round: the place that the advice names is another lift's.
    const text = readFileSync(path, 'utf8');
    const turned = text.replace(
      /(exercises:\n)([\s\S]*?)(?=\n {2}- name|\nlifts|$)/g,
      (_, head, list) => {
        const parts = (list as string).split(/(?=^ {6}- lift: )/m);
        const lead = parts[0]?.startsWith('      - lift') ? '' : (parts.shift() ?? '');
        return (
          head +
          lead +
          parts
            .map((part) => `${part.trimEnd()}\n`)
            .toReversed()
            .join('')
        );
      },
    );
    writeFileSync(path, turned);
    at.keys('y');
    expect(at.screen()).toMatch(/changed by another program|holds another text/);
    expect(readFileSync(path, 'utf8')).toBe(turned);
  });

  it('refuses a file that changed between the look and the yes', () => {
    const over = demoScene();
    const at = atAdvice(over).keys('y');
    const text = `${readFileSync(own(over), 'utf8')}# mine\n`;
    writeFileSync(own(over), text);
    expect(at.keys(' ').screen()).toMatch(/nothing was written/);
    expect(readFileSync(own(over), 'utf8')).toBe(text);
    expect(over.lifter.journal().history().decisions).toEqual([]);
  });

  it('refuses where the own copy of a shipped program holds another text', () => {
    const over = demoScene();
    const at = atAdvice(over);
    const path = over.lifter.ownProgramPath();
    const text = swapped(readFileSync(path, 'utf8'));
    writeFileSync(path, text);
    expect(at.keys('y').screen()).toContain('holds another text');
    expect(readFileSync(path, 'utf8')).toBe(text);
  });
});

describe('a program that is edited in another window', () => {
  it('is noticed before a session begins by the old text', () => {
    const over = scene();
    const at = player(over);
    writeFileSync(over.program, swapped(LEAN_SPRING));
    at.keys(' ');
    expect(at.screen()).toContain('changed in another window');
    expect(kind(at)).toBe('preview');
    at.keys(' ');
    expect(kind(at)).toBe('runner');
    const first = /- lift: (\S+)/.exec(swapped(LEAN_SPRING))?.[1];
    expect(over.session().prescription.exercises[0]?.lift).toBe(first);
  });

  it('does not matter to a session that is open', () => {
    const over = scene();
    const at = player(over).keys(' ');
    writeFileSync(over.program, 'name: [');
    expect(kind(at.keys(' '))).toBe('runner');
    expect(kind(player(over.again()).keys(' '))).toBe('runner');
  });

  it('starts no session with a mistake in it, and says the mistake', () => {
    const over = scene();
    const at = player(over);
    writeFileSync(over.program, LEAN_SPRING.replace('sets:', 'stes:'));
    expect(at.keys('  ').screen()).toContain('stes');
    expect(over.coach.live()).toBeNull();
    writeFileSync(over.program, LEAN_SPRING);
    expect(kind(at.keys('<esc>  '))).toBe('runner');
  });
});

describe.each([
  ['is deleted', (path: string) => rmSync(path)],
  ['becomes unreadable', (path: string) => writeFileSync(path, 'days: [')],
])('a program that %s under the open screens', (_, ruin) => {
  it.each([
    'e',
    'ew',
    't',
    't<esc>',
    'w80<enter>',
    'h',
    'h<esc>',
    '>',
    '<',
    'm',
    ' ',
    'e+<enter>',
    '<enter>',
  ])('ends nothing at %s', (keys) => {
    const over = scene();
    const at = player(over);
    ruin(over.program);
    at.keys(keys);
    expect(at.screen()).not.toBe('');
    expect(at.left).toEqual([]);
  });

  it('ends nothing where it goes while the screens of it are open', () => {
    const over = scene();
    const at = player(over).keys('e<down>+<enter>');
    ruin(over.program);
    expect(at.keys('<enter>').screen()).toMatch(/cannot be read any more|nothing was written/);
    expect(at.keys('<esc><esc>').left).toEqual([]);
  });

  it('ends nothing where it goes in a session', () => {
    const over = scene();
    const at = player(over).keys(' ');
    ruin(over.program);
    at.keys('F<enter> <enter>');
    expect(at.screen()).not.toBe('');
    expect(at.left).toEqual([]);
  });
});

test.each([
  ['as it was', (text: string) => text],
  ['unreadable', () => 'name: ['],
  ['without the day', (text: string) => text.replace('- name: A', '- name: Other')],
  ['without its lifts', (text: string) => text.replace(/lift: back-squat/g, 'lift: front-squat')],
])(
  'what comes next time is said of every lift of a session, its program file by then %s',
  (_, made) => {
    const over = scene();
    const at = player(over).keys('   ');
    writeFileSync(over.program, made(LEAN_SPRING));
    at.keys('f<down> ');
    const { next } = over.coach.review();
    const lifts = over.session().exercises.map(({ prescribed }) => prescribed.name);
    expect(next.map(({ name }) => name)).toEqual(lifts);
    for (const { plan, why } of next) expect([plan, why]).not.toContain('');
  },
);

describe('the program screen', () => {
  it('takes changes back, one after the other', () => {
    const over = scene();
    const at = player(over).keys('e<down>++d');
    expect(at.screen()).toContain('not saved');
    at.keys('uuu');
    expect(at.screen()).not.toContain('not saved');
    expect(at.keys('u').screen()).toContain('nothing to undo');
  });

  it('writes no file that is protected against writing', () => {
    const over = scene();
    chmodSync(over.program, 0o444);
    const at = player(over).keys('e<down>+<enter><enter>');
    expect(at.screen()).toContain('protected against writing');
    expect(readFileSync(over.program, 'utf8')).toBe(LEAN_SPRING);
  });
});

it('a week of editing by hand beside the open program: every line is as the last hand left it', () => {
  const over = scene();
  const at = player(over);
  const read = () => readFileSync(over.program, 'utf8');
  const byHand = (change: (text: string) => string) => writeFileSync(over.program, change(read()));
  const number = /^( *sets: *)3/m;
  // Monday: a comment in the editor, a set more on the screen that was opened before it.
  at.keys('e<down>+<enter>');
  byHand((text) => `# Monday\n${text}`);
  expect(at.keys('<enter>').screen()).toContain('changed by another program');
  expect(read()).toBe(`# Monday\n${LEAN_SPRING}`);
  // Tuesday: the same once more, from the text as it is now.
  at.keys('<esc><esc>').keys('<down><enter>').keys('e<down>+<enter><enter>');
  expect(read()).toBe(`# Monday\n${LEAN_SPRING.replace(number, '$14')}`);
  // Wednesday: another comment in the editor, noticed before a session begins.
  byHand((text) => text.replace('# Monday', '# Wednesday'));
  expect(at.keys(' ').screen()).toContain('changed in another window');
  // Thursday: a set less, taken back, and less again.
  at.keys('e<down>-u-<enter><enter>');
  expect(read()).toBe(`# Wednesday\n${LEAN_SPRING}`);
  // Friday: half a line saved by the editor, then the whole again.
  byHand((text) => text.replace('sets:', 'set'));
  expect(at.keys('  ').left).toEqual([]);
  expect(over.coach.live()).toBeNull();
  byHand(() => `# Friday\r\n${LEAN_SPRING.replaceAll('\n', '\r\n')}`);
  // Saturday: with the other line ends; Sunday it is trained by what stands there.
  at.keys('e<down>+<enter><enter>');
  const last = LEAN_SPRING.replace(number, '$14').replaceAll('\n', '\r\n');
  expect(read()).toBe(`# Friday\r\n${last}`);
  at.keys(' ');
  expect(kind(at)).toBe('runner');
  expect(over.session().prescription.exercises[0]?.sets).toHaveLength(4);
});

it('gear that was given away in the middle of a session is said when it goes on', () => {
  const begun = new Player().atFirstSet();
  const plates = GEAR.plates.filter(({ stamped }) => stamped.amount >= 10);
  begun.scene.lifter.journal().record({ type: 'gear-set', gear: { ...GEAR, plates } });
  begun.scene.lifter.journal().release();
  const over = begun.scene.again();
  over.coach.begin();
  const player = new Player(WIDE, { over, start: { kind: 'runner', draft: null } });
  expect(player.screen()).toMatch(
    /82\.5 kg cannot be made with your gear: \d+ kg or \d+ kg can be; c/,
  );
  expect(player.keys('c80<enter>').screen()).toContain('80 kg');
});

describe('gear that is changed in another window', () => {
  const withoutPlates = (over: Scene) =>
    over
      .again()
      .lifter.journal()
      .record({ type: 'gear-set', gear: { ...GEAR, plates: [] } });

  it('is seen before the session is begun by what was shown', () => {
    const over = scene();
    const at = player(over);
    withoutPlates(over);
    expect(at.keys(' ').screen()).toContain('changed in another window');
    expect(kind(at)).toBe('preview');
    at.keys(' ');
    expect(kind(at)).toBe('runner');
  });

  it('is said with the next set of a session that runs, with the nearest load', () => {
    const over = scene();
    const at = player(over).keys(' ');
    expect(at.screen()).not.toContain('cannot be made');
    withoutPlates(over);
    at.keys('  ');
    expect(at.screen()).toMatch(/cannot be made with your gear: \d+ kg/);
  });
});
