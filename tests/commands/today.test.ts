import { copyFileSync, cpSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { todaySchema } from '../../src/commands/today-schema.ts';
import { openCoach } from '../../src/lifter/open-coach.ts';
import { openLifter } from '../../src/lifter/open-lifter.ts';
import { writeSettings } from '../../src/settings/write-settings.ts';
import { AHome } from './a-home.ts';
import { doSession } from './a-session.ts';

let home: AHome;
beforeEach(() => {
  home = new AHome();
});
afterEach(() => home.throwAway());

test.each(['A', 'B', 'C'])(
  'day %s fits into 30 and 20 minutes, and says what was cut',
  async (day) => {
    for (const most of [30, 20]) {
      const { minutes, short, exercises } = await home.json(
        'today',
        '--day',
        day,
        '--minutes',
        `${most}`,
      );
      expect(minutes).toBeLessThanOrEqual(most);
      expect(minutes).toBeGreaterThan(most - 5);
      expect(exercises).not.toEqual([]);
      expect(short).toMatchObject({
        minutes: most,
        cut: expect.arrayContaining([expect.objectContaining({ rule: 'short-sets' })]),
      });
      const { out } = await home.run('today', '--day', day, '--minutes', `${most}`);
      expect(out).toContain(`Cut to ${most} min:\n`);
    }
  },
);

test('what it prints as JSON keeps to its schema, cut or whole', async () => {
  for (const minutes of ['20', '180']) {
    const printed = await home.json('today', '--minutes', minutes);
    expect(todaySchema.parse(printed)).toEqual(printed);
  }
});

test('of a day that was begun, the minutes go to what is left of it', async () => {
  const warmUps = 3;
  doSession(home, { sets: warmUps + 4 });
  home.wall += 24 * 3_600_000;
  const { minutes, exercises } = await home.json('today', '--minutes', '30');
  const lifts = (exercises as readonly { readonly lift: string }[]).map(({ lift }) => lift);
  expect(lifts).not.toContain('back-squat');
  expect(lifts).toEqual(expect.arrayContaining(['bench-press', 'barbell-row']));
  expect(minutes).toBeGreaterThan(25);
  expect(minutes).toBeLessThanOrEqual(30);
});

test('a day that fits is whole', async () => {
  const { short, minutes } = await home.json('today', '--minutes', '90');
  expect([short, minutes]).toEqual([null, 56]);
});

test.each(['9', '181', 'half an hour', '-20'])('%s minutes are refused', async (minutes) => {
  const { status, err } = await home.run('today', `--minutes=${minutes}`);
  expect(status).toBe(2);
  expect(err).toContain('whole number from 10 to 180');
});

/** Begins a session as the screens do, and closes it: its program is remembered. */
function trainBy(asked: { readonly data: string | null; readonly program: string | null }): void {
  const lifter = openLifter(home.ports(), asked);
  const live = openCoach(lifter, (change) => writeSettings(lifter.folders.config, change)).begin();
  if ('what' in live) throw new Error(live.what);
  for (const command of ['start', 'put-down', 'confirm'] as const) live.send({ do: command });
  live.send({ do: 'close', how: 'as-it-is' });
  lifter.journal().release();
}

const programNow = async (...args: string[]) => (await home.json('today', ...args)).program;

test('a program that was tried out once with other data is not that of the real ones', async () => {
  const tried = join(home.folder, 'tried');
  trainBy({ data: null, program: 'four-day' });
  trainBy({ data: tried, program: 'try-out' });
  expect(await programNow()).toBe('Four days');
  expect(await programNow('--data', tried)).toBe('Try-out');
});

test('a program that is gone is said, with the one in its place, and doctor ends in 1', async () => {
  const path = join(home.folder, 'own.yaml');
  copyFileSync(join(home.ports().shippedPrograms, 'four-day.yaml'), path);
  trainBy({ data: null, program: path });
  rmSync(path);
  const { status, err } = await home.run('today');
  expect([status, err]).toEqual([
    0,
    expect.stringContaining(
      `The program of the last session is gone: ${path}. four-day.yaml is used`,
    ),
  ]);
  const coach = openCoach(openLifter(home.ports(), { data: null, program: null }), (change) =>
    writeSettings(home.config, change),
  );
  expect(coach.today().troubles).toEqual([expect.stringContaining('is gone')]);
  const checked = await home.run('doctor');
  expect([checked.status, checked.out]).toEqual([1, expect.stringContaining(path)]);
});

test('a data folder that was copied to another machine goes on with its program', async () => {
  trainBy({ data: null, program: 'four-day' });
  const other = new AHome();
  try {
    cpSync(home.data, other.data, { recursive: true });
    expect((await other.json('today')).program).toBe('Four days');
  } finally {
    other.throwAway();
  }
});

test('a journey west over midnight does not hide what was done today', async () => {
  home.wall = Date.UTC(2026, 10, 26, 0, 30);
  trainBy({ data: null, program: 'try-out' });
  await home.run('weigh', '80', '--sure');
  // Five hours further west it is the evening before.
  home.zone = -300;
  const { state, date } = await home.json('today');
  expect([state, date]).toEqual(['done-today', '2026-11-26']);
  expect((await home.run('weigh', '80.2')).out).toContain('26 Nov');
  expect((await home.run('review')).out).toContain('26 Nov');
});

test('says that the last session lies ahead, where the clock stands more than a day before it', async () => {
  doSession(home);
  const ahead = "lies ahead, on Wed 25 Nov 2026: is this machine's clock right?";
  const told = async () => (await home.run('today')).out.replace(/\s+/g, ' ');
  home.wall = Date.UTC(2026, 10, 24, 18);
  expect(await told()).not.toContain('lies ahead');
  home.wall = Date.UTC(2026, 0, 25, 18);
  expect(await told()).toContain(ahead);
});

test('a session that was closed before its first set makes no day done', async () => {
  doSession(home, { sets: 0 });
  expect((await home.json('today')).state).toBe('due');
});

test('what was recorded under a clock that was a day ahead does not move today', async () => {
  home.wall = Date.UTC(2026, 10, 27, 18);
  await home.run('weigh', '80', '--sure');
  home.wall = Date.UTC(2026, 10, 26, 18);
  expect((await home.json('today')).date).toBe('2026-11-26');
});

test('a record of two days ahead does not hide what was done before a journey west', async () => {
  home.wall = Date.UTC(2026, 10, 28, 12);
  await home.run('weigh', '80', '--sure');
  home.wall = Date.UTC(2026, 10, 26, 0, 30);
  trainBy({ data: null, program: 'try-out' });
  home.zone = -300;
  expect((await home.json('today')).date).toBe('2026-11-26');
});

test('a data folder with a program that was never trained by goes on with it', async () => {
  await home.run('draft', '--days', '2', '--use');
  const { program } = await home.json('today');
  const other = new AHome();
  try {
    cpSync(home.data, other.data, { recursive: true });
    expect((await other.json('today')).program).toBe(program);
  } finally {
    other.throwAway();
  }
});

test('a program that did not come along with the data is missed aloud', async () => {
  const path = join(home.folder, 'elsewhere.yaml');
  const text = readFileSync(join(home.ports().shippedPrograms, 'try-out.yaml'), 'utf8');
  writeFileSync(path, text.replace(/^name: .*/m, 'name: Garage plan'));
  trainBy({ data: null, program: path });
  const other = new AHome();
  try {
    cpSync(home.data, other.data, { recursive: true });
    const { err } = await other.run('today');
    expect(err).toContain('"Garage plan", the program of the last session, is not here.');
  } finally {
    other.throwAway();
  }
});

test('a table of other origin brings no program that could be missed', async () => {
  const table = join(home.folder, 'years.csv');
  writeFileSync(table, 'Date;Lift;Load;Reps\n2026-11-20;Bench;60;8\n');
  expect((await home.run('import', table, '--take')).out).toContain('1 set on 1 day added');
  const { out, err } = await home.run('today');
  expect(out).toContain('Three days');
  expect(err).not.toContain('is not here');
});

test('one rep is one rep', async () => {
  const path = join(home.folder, 'singles.yaml');
  const singles = [
    '{ lift: back-squat, sets: 3, reps: 1 }',
    '{ lift: split-squat, sets: 1, reps: 1 }',
    '{ lift: dumbbell-curl, cluster: { lead: 1-2 } }',
  ];
  writeFileSync(
    path,
    `name: S\nunit: kg\ndays: [{ name: A, exercises: [${singles.join(', ')}] }]\n`,
  );
  const { out } = await home.run('today', '--program', path);
  expect(out).toContain('  3 sets of 1 rep, ');
  expect(out).toContain('  1 set of 1 rep a side, ');
  expect(out).toContain('  1 rep, then mini-sets of ');
});

test('gear that makes none of several loads is told in one line, and of each what it needs', async () => {
  const { warnings, exercises } = await home.json('today', '--kit', 'body weight and bands');
  expect(warnings).toContainEqual({
    rule: 'gear-missing-many',
    text: 'Your gear does not allow Back squat, Bench press, Barbell row and Dumbbell side raise: each asks for another lift when it is due.',
  });
  expect(JSON.stringify(warnings)).not.toContain('your gear has none');
  const [squat] = exercises as readonly { load: unknown; why: readonly { text: string }[] }[];
  expect(squat).toMatchObject({ load: null, warm_up: [] });
  expect(squat?.why.map(({ text }) => text)).toEqual([
    'Back squat needs a rack, and your gear has none: it asks for another lift when it is due.',
  ]);
});

test('a program whose unit was changed says of each lift once what is done in place of last time’s load', async () => {
  const path = join(home.folder, 'p.yaml');
  const lifts = ['back-squat', 'bench-press', 'barbell-row'];
  const listed = lifts.map((lift) => `{ lift: ${lift}, sets: 2, reps: 5-8 }`);
  writeFileSync(
    path,
    `name: P\nunit: lb\naim: maintain\ndays: [{ name: A, exercises: [${listed.join(', ')}] }]\n`,
  );
  const table = join(home.folder, 't.csv');
  const done = lifts.map((lift) => `2026-11-23,${lift},90 kg,7,2,1`);
  writeFileSync(table, ['date,lift,load,reps,sets,reserve', ...done, ''].join('\n'));
  await home.run('import', table, '--take', '--program', path);
  const { warnings, exercises } = await home.json('today', '--program', path);
  expect(
    (warnings as { rule: string; text: string }[])
      .filter(({ rule }) => rule.startsWith('gear'))
      .map(({ text }) => text),
  ).toEqual([
    'The loads of Back squat, Bench press and Barbell row cannot be made with your gear: each is done with one that can.',
  ]);
  for (const { why } of exercises as { why: { text: string }[] }[]) {
    expect(why.map(({ text }) => text)).toEqual([
      '198.42 lb cannot be made with your gear: 195 lb instead.',
    ]);
  }
});

test('one dumbbell in both hands is no load a hand', async () => {
  const path = join(home.folder, 'one.yaml');
  const of = (lift: string) => `{ lift: ${lift}, sets: 2, reps: 8-12, start: 20, step: 1 }`;
  const both = ['goblet-squat', 'dumbbell-pullover', 'overhead-triceps-extension'];
  const listed = [...both, 'dumbbell-row', 'dumbbell-bench-press'].map(of);
  writeFileSync(
    path,
    `name: D\nunit: kg\ndays: [{ name: A, exercises: [${listed.join(', ')}] }]\n`,
  );
  const { out } = await home.run('today', '--program', path);
  for (const name of ['Goblet squat', 'Dumbbell pullover', 'Overhead triceps extension']) {
    expect(out).toMatch(new RegExp(`^${name} {2}20 kg(?! a hand)`, 'm'));
  }
  expect(out).toMatch(/^One-arm dumbbell row {2}20 kg a hand/m);
  expect(out).toMatch(/^Dumbbell bench press {2}20 kg a hand/m);
  expect(out.match(/First time: 20 kg(?! a hand)/g)).toHaveLength(both.length);
});

test('a start that the gear does not make is told once, at its lift', async () => {
  const file = join(home.folder, 'odd.yaml');
  const text = readFileSync(join(home.ports().shippedPrograms, 'three-day.yaml'), 'utf8');
  writeFileSync(file, text.replace('start: 40 ', 'start: 20.3 '));
  const { out } = await home.run('--program', file, 'today', '--day', 'A');
  expect(out.match(/starts at 20\.3 kg, which cannot be made/g)).toHaveLength(1);
  expect(out).toContain('  start: The program starts at 20.3 kg');
});
