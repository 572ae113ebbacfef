import { existsSync, readFileSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { Temporal } from 'temporal-polyfill';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { COMMANDS } from '../../src/commands/command-table.ts';
import { main } from '../../src/commands/main.ts';
import { readDay } from '../../src/commands/read-day.ts';
import { AHome, type Answer } from './a-home.ts';
import { doSession, withTinyProgram } from './a-session.ts';

let home: AHome;
beforeEach(() => {
  home = new AHome();
  withTinyProgram(home);
});
afterEach(() => home.throwAway());

/** A command with other surroundings than a home has. */
async function runIn(
  change: { env?: Record<string, string>; stdin?: string },
  ...args: string[]
): Promise<Answer> {
  const [out, err]: [string[], string[]] = [[], []];
  const ports = home.ports(out, err);
  const stdin = change.stdin === undefined ? ports.stdin : Readable.from([change.stdin]);
  const status = await main(
    { ...ports, env: { ...ports.env, ...change.env }, stdin: stdin as typeof ports.stdin },
    args,
  );
  return { status, out: out.join(''), err: err.join('') };
}

describe('wrong use', () => {
  test.each([
    [['weigh'], '<mass> is missing. For example: holdfast weigh 82.4.', 'weigh'],
    [['weigh', '80', '81'], 'More was typed than "weigh" takes: 80, 81.', 'weigh'],
    [['today', '--dya', 'A'], 'There is no option "--dya" here. Did you mean "--day"?', 'today'],
    [
      ['today', '--day'],
      '"--day" was given nothing. For example: holdfast today --day B --json.',
      'today',
    ],
    [['export', '--as', 'csv', '--out', '--replace'], '"--out" was given nothing.', 'export'],
    [['gear', '--kit', '--forget'], '"--kit" was given nothing.', 'gear'],
    [['gear', '--plates', '--new'], '"--plates" was given nothing.', 'gear'],
    [['--data', '--json', 'today'], '"--data" was given nothing.', 'today'],
    [['estimate', '--load', '-5', '--reps', '5'], '--load is "-5".', 'estimate'],
    [['estimate', '--load', '0', '--reps', '5'], '--load is "0".', 'estimate'],
    [['load', 'abc'], '"abc" is not a mass.', 'load'],
    [['rehearse', '--weeks', 'x'], '--weeks is "x".', 'rehearse'],
    [['settings', 'bel'], 'There is no setting "bel".', 'settings'],
    [['draft', '--days', '9'], '"9" is no answer for days a week.', 'draft'],
    [['schema', 'nothing'], 'There is no schema of "nothing".', 'schema'],
    [['export'], '--as is missing.', 'export'],
    [['help', '--json'], '"holdfast help" takes no --json.', 'help'],
  ])('%j is told in one voice, with the help that tells more', async (args, said, name) => {
    const { status, out, err } = await home.run(...args);
    expect([status, out]).toEqual([2, '']);
    expect(err).toContain(said);
    expect(err.trimEnd().endsWith(`"holdfast ${name} --help" tells more.`)).toBe(true);
  });

  test('of no command at all names the help of all', async () => {
    const { err } = await home.run('histor');
    expect(err).toContain('Did you mean "history"?');
    expect(err.trimEnd().endsWith('"holdfast --help" tells more.')).toBe(true);
    expect((await home.run('--nope')).err).toContain('There is no option "--nope" here.');
  });

  test('what a file holds is not wrong use', async () => {
    expect((await home.run('import', 'nothing.csv')).err).not.toContain('--help');
  });
});

test('every command prints JSON with --json, or refuses it', async () => {
  doSession(home);
  const operands: Readonly<Record<string, readonly string[]>> = {
    load: ['60'],
    weigh: ['82'],
    schema: ['today'],
    estimate: ['--load', '100', '--reps', '5'],
    amend: ['nothing:0', '--delete'],
    import: ['nothing.csv'],
    demo: ['today'],
  };
  for (const { name } of COMMANDS) {
    const { status, out } = await home.run(name, ...(operands[name] ?? []), '--json');
    if (status === 2) expect([name, out]).toEqual([name, '']);
    else expect(() => JSON.parse(out), name).not.toThrow();
  }
});

test('--quiet leaves the answer, and what is wrong', async () => {
  doSession(home);
  const loud = await home.run('gear', '--plates', '20kg=4');
  expect(loud.err).toContain('Saved');
  const quiet = await home.run('gear', '--plates', '20kg=6', '--quiet');
  expect([quiet.err, quiet.out]).toEqual(['', expect.stringContaining('20 kg')]);
  const wrong = await home.run('weigh', '8', '--quiet');
  expect(wrong.err).not.toBe('');
});

describe('- is stdin or stdout', () => {
  test('a program is checked as it comes', async () => {
    const text = readFileSync(join(home.ports().shippedPrograms, 'four-day.yaml'), 'utf8');
    const piped = await runIn({ stdin: text }, 'check', '-', '--json');
    const named = await home.run('check', 'four-day', '--json');
    expect({ ...JSON.parse(piped.out), file: '' }).toEqual({ ...JSON.parse(named.out), file: '' });
    const wrong = await runIn({ stdin: 'name: 3\n' }, 'check', '-');
    expect([wrong.status, wrong.err]).toEqual([2, expect.stringContaining('stdin')]);
  });

  test('what is exported to it is imported from it', async () => {
    doSession(home);
    const { out } = await home.run('export', '--as', 'json', '--out', '-');
    const other = new AHome();
    try {
      const ports = other.ports();
      const stdin = Readable.from([out]) as unknown as typeof ports.stdin;
      expect(await main({ ...ports, stdin }, ['import', '-'])).toBe(0);
      const [mine, theirs] = [await home.json('history'), await other.json('history')];
      expect(theirs.results).toEqual(mine.results);
    } finally {
      other.throwAway();
    }
    expect(existsSync(join(home.folder, '-'))).toBe(false);
  });
});

describe('history', () => {
  beforeEach(() => {
    for (let week = 0; week < 3; week += 1) {
      doSession(home);
      home.wall += 7 * 86_400_000;
    }
  });
  const daysIn = (text: string) => text.match(/^\d{4}-\d\d-\d\d/gm) ?? [];

  test('ends on the newest', async () => {
    const days = daysIn((await home.run('history')).out);
    expect(days.length).toBeGreaterThan(2);
    expect(days).toEqual(days.toSorted());
  });

  test('shows the last, or what is since a day, and says when nothing fits', async () => {
    expect(daysIn((await home.run('history', '--last', '1')).out)).toHaveLength(1);
    const since = daysIn((await home.run('history', '--since', '2.12.2026')).out);
    expect(new Set(since)).toEqual(new Set(['2026-12-02', '2026-12-09']));
    const none = await home.run('history', '--search', 'no such thing');
    expect([none.out, none.err.trim()]).toEqual(['', 'Nothing fits.']);
    expect((await home.json('history', '--last', '1')).results).toHaveLength(1);
  });
});

test('gear begins again only where nothing was said, or for sure', async () => {
  expect((await home.run('gear', '--defaults', 'lb')).status).toBe(0);
  const asked = await home.run('gear', '--defaults', 'kg');
  expect([asked.status, asked.err]).toEqual([2, expect.stringContaining('--sure')]);
  expect((await home.json('gear')).gear).toMatchObject({ unit: 'lb' });
  await home.run('gear', '--defaults', 'kg', '--sure');
  expect((await home.json('gear')).gear).toMatchObject({ unit: 'kg' });
});

test('HOLDFAST_PROGRAM names the program, and --program goes before it', async () => {
  const env = { HOLDFAST_PROGRAM: 'four-day' };
  expect(JSON.parse((await runIn({ env }, 'today', '--json')).out).program).toBe('Four days');
  const both = await runIn({ env }, 'today', '--json', '--program', 'try-out');
  expect(JSON.parse(both.out).program).toBe('Try-out');
});

test('in a locale of nothing but ASCII no other sign is printed, and data stay as they are', async () => {
  doSession(home);
  await home.run('weigh', '82.4');
  const env = { LC_ALL: 'C' };
  for (const { name } of COMMANDS.filter((row) => !row.passesOn)) {
    const { out, err } = await runIn({ env }, name, '--help');
    expect(`${out}${err}`).toMatch(/^[\n\u0020-\u007e]*$/);
  }
  for (const name of ['today', 'review', 'history', 'check', 'gear', 'rehearse', 'settings']) {
    const [plain, usual] = [await runIn({ env }, name), await home.run(name)];
    expect(plain.out, name).toMatch(/^[\n\u0020-\u007e]+$/);
    expect(plain.out.split('\n').length).toBe(usual.out.split('\n').length);
  }
  const [json, usual] = [
    await runIn({ env }, 'today', '--json'),
    await home.run('today', '--json'),
  ];
  expect(json.out).toBe(usual.out);
});

test('deleting can be tried first', async () => {
  doSession(home);
  const before = await home.json('history');
  const [{ session }] = before.results as readonly [{ session: string }];
  const tried = await home.run('amend', session, '--delete', '--dry-run');
  expect([tried.status, tried.out]).toEqual([
    0,
    expect.stringContaining('Nothing is deleted yet.'),
  ]);
  expect(await home.json('history')).toEqual(before);
  expect((await home.run('amend', session, '--restore', '--dry-run')).status).toBe(2);
});

test('a link that leads to nothing is not replaced by what is exported', async () => {
  const link = join(home.folder, 'out.csv');
  symlinkSync(join(home.folder, 'nowhere', 'out.csv'), link);
  for (const more of [[], ['--replace']]) {
    const { status, err } = await home.run('export', '--as', 'csv', '--out', link, ...more);
    expect([status, err]).toEqual([2, expect.stringContaining('leads to nothing')]);
  }
  expect(existsSync(link)).toBe(false);
});

describe('a day', () => {
  const today = Temporal.PlainDate.from('2026-11-25');
  test.each([
    ['2026-11-05', '2026-11-05'],
    ['2026/11/5', '2026-11-05'],
    ['5.11.2026', '2026-11-05'],
    ['25/11/2026', '2026-11-25'],
    ['11/25/2026', '2026-11-25'],
    ['11-11-2026', '2026-11-11'],
    ['13/11/2026', '2026-11-13'],
    ['11/13/2026', '2026-11-13'],
    ['5 Nov 2026', '2026-11-05'],
    ['November 5, 2026', '2026-11-05'],
    ['today', '2026-11-25'],
    ['yesterday', '2026-11-24'],
  ])('%s is %s', (text, day) => {
    expect(readDay(text, '--date', today).toString()).toBe(day);
  });

  test.each(['2026-02-30', '31.2.2026', '1/2', 'monday', '5.11/2026', '', '25-11-26'])(
    '%j is none',
    (text) => {
      expect(() => readDay(text, '--date', today)).toThrow('Write the day as 2026-11-25.');
    },
  );

  test('that may be two is refused, and both are named', () => {
    expect(() => readDay('3/4/2026', '--date', today)).toThrow('2026-04-03 or 2026-03-04');
  });
});
