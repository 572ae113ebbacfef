import { readdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';
import stringWidth from 'string-width';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { historySchema } from '../../src/commands/history-schema.ts';
import { reviewSchema } from '../../src/commands/review-schema.ts';
import { weighSchema } from '../../src/commands/weigh-schema.ts';
import { AHome } from './a-home.ts';
import { lifterOf } from './a-session.ts';
import { withDemoWeeks } from './demo-weeks.ts';

let home: AHome;
beforeAll(() => {
  home = new AHome();
  withDemoWeeks(home);
});
afterAll(() => home.throwAway());

const widest = (text: string) => Math.max(...text.split('\n').map((line) => stringWidth(line)));

describe('review', () => {
  test('gives the verdict first, then what it rests on, within 80 columns', async () => {
    const { status, out, err } = await home.run('review');
    expect([status, err]).toEqual([0, '']);
    const [title, , verdict = ''] = out.split('\n');
    expect(title).toMatch(/^Weekly review · Three days · Wed 25 Nov 2026$/);
    expect(verdict).toMatch(/^(Do less|You may do more|Go on as you are)/);
    for (const part of ['Strength kept', 'Rate of loss', 'Hard sets a week', 'Week by week']) {
      expect(out).toContain(part);
    }
    expect(widest(out)).toBeLessThanOrEqual(80);
  });

  test('prints one document of the shape that its schema tells', async () => {
    const json = reviewSchema.strict().parse(await home.json('review', '--weeks', '3'));
    expect(json.weeks).toHaveLength(3);
    expect(json.rate?.percent_a_week).toBeGreaterThan(0.4);
    expect(json.verdict.text).not.toBe('');
  });

  test('says nothing about losing weight before the question is answered, and asks it', async () => {
    const { data } = home;
    const other = new AHome();
    try {
      const { out, err } = await other.run('review', '--data', data);
      expect(out).not.toContain('Rate of loss');
      expect(out).not.toContain('Body weight');
      expect(err).toContain('eating disorder');
      other.writeSettings({ weightAdvice: 'no' });
      const quiet = await other.run('review', '--data', data);
      expect(quiet.out).not.toContain('Rate of loss');
      expect(quiet.err).toBe('');
    } finally {
      other.throwAway();
    }
  });

  test('refuses a number of weeks that is none', async () => {
    const { status, err } = await home.run('review', '--weeks', 'few');
    expect([status, err.trim()]).toEqual([
      2,
      '--weeks is "few". It is a whole number from 1 to 520. "holdfast review --help" tells more.',
    ]);
  });
});

describe('history', () => {
  test('of one lift has a plot, a row for each session, and fits 80 columns', async () => {
    const { out } = await home.run('history', 'back-squat');
    expect(out).toMatch(/^Back squat: e1RM, kg/);
    expect(out.match(/^\d{4}-\d\d-\d\d /gm)).toHaveLength(11);
    expect(widest(out)).toBeLessThanOrEqual(80);
  });

  test('finds a lift by its name too, and knows a near miss', async () => {
    const byName = await home.run('history', 'Back squat');
    const byKey = await home.run('history', 'back-squat');
    expect(byName.out).toBe(byKey.out);
    const { status, err } = await home.run('history', 'back-sqat');
    expect([status, err]).toEqual([2, expect.stringContaining('Did you mean "back-squat"?')]);
  });

  test('finds by note, and by month', async () => {
    const note = await home.run('history', '--search', 'slept five');
    expect(new Set(note.out.match(/^\d{4}-\d\d-\d\d/gm)).size).toBe(1);
    const month = await home.run('history', '--search', '2026-10');
    expect(month.out.match(/^2026-10-\d\d/gm)?.length).toBeGreaterThan(20);
    expect(month.out).not.toMatch(/^2026-11/m);
  });

  test('prints one document of the shape that its schema tells, with the ids that amend takes', async () => {
    const json = historySchema.strict().parse(await home.json('history', 'pull-up'));
    const [first] = json.results;
    const id = first?.sets[0]?.id ?? '';
    expect(id).not.toBe('');
    const { out } = await home.run('history', 'pull-up', '--ids');
    expect(out).toContain(id);
  });
});

describe('export', () => {
  test('as csv has a row a set, which another reader reads', async () => {
    const { out } = await home.run('export', '--as', 'csv');
    const rows: Record<string, string>[] = parse(out, { columns: true });
    const squats = rows.filter(({ lift }) => lift === 'back-squat');
    const json = historySchema.parse(await home.json('history', 'back-squat'));
    expect(squats).toHaveLength(json.results.flatMap(({ sets }) => sets).length);
  });

  test('writes to a file, and replaces none unasked', async () => {
    const path = join(home.folder, 'cut.html');
    const first = await home.run('export', '--as', 'html', '--out', 'cut.html');
    expect([first.status, first.out]).toEqual([0, '']);
    expect(readFileSync(path, 'utf8')).toMatch(/^<!doctype html>/i);
    const again = await home.run('export', '--as', 'html', '--out', 'cut.html');
    expect([again.status, again.err]).toEqual([2, expect.stringContaining('is there already')]);
    expect(
      (await home.run('export', '--as', 'html', '--out', 'cut.html', '--replace')).status,
    ).toBe(0);
  });

  test('of weigh-ins by a table and by events are no doubles of each other', async () => {
    const [csv, json] = [join(home.folder, 'w.csv'), join(home.folder, 'w.json')];
    await home.run('export', '--as', 'csv', '--weigh-ins', '--out', csv);
    await home.run('export', '--as', 'json', '--out', json);
    const other = new AHome();
    try {
      const count = async () => (await other.json('export', '--as', 'json')).weigh_ins as unknown[];
      await other.run('import', csv);
      const { length } = await count();
      expect(length).toBeGreaterThan(10);
      await other.run('import', json);
      expect(await count()).toHaveLength(length);
    } finally {
      other.throwAway();
    }
  });

  test('read back with every row twice is no twice as much', async () => {
    const csv = join(home.folder, 'twice.csv');
    await home.run('export', '--as', 'csv', '--out', csv);
    const [head = '', ...rows] = readFileSync(csv, 'utf8').trim().split('\r\n');
    writeFileSync(csv, [head, ...rows.flatMap((row) => [row, row])].join('\r\n'));
    const other = new AHome();
    try {
      expect((await other.run('import', csv)).status).toBe(0);
      const { out } = await other.run('export', '--as', 'csv');
      expect(out.trim().split('\r\n')).toHaveLength(rows.length + 1);
    } finally {
      other.throwAway();
    }
  });

  test.each([
    ['body_mass', 'date,body_mass,unit\r\n2026-11-20,-5,kg\r\n', /Row 2, column body_mass/],
    [
      'a year to come',
      'date,body_mass,unit\r\n2125-11-20,80,kg\r\n',
      /2125-11-20 is still to come/,
    ],
    ['a year long ago', 'date,body_mass,unit\r\n-000001-11-20,80,kg\r\n', /Row 2, column date/],
    [
      'an open quote',
      'date,body_mass,unit\r\n"2026-11-20,80,kg\r\n',
      /Line \d+ has a quoted field/,
    ],
  ])('with %s is refused with its place', async (_, text, said) => {
    const file = join(home.folder, 'bad.csv');
    writeFileSync(file, text);
    const { status, err } = await home.run('import', file);
    expect([status, err]).toEqual([2, expect.stringMatching(said)]);
  });

  test('of a set of 700,000 reps is refused with its place', async () => {
    const csv = join(home.folder, 'many.csv');
    await home.run('export', '--as', 'csv', '--out', csv);
    const [head = '', row = ''] = readFileSync(csv, 'utf8').split('\r\n');
    const at = head.split(',').indexOf('count');
    const cells = row.split(',').map((cell, index) => (index === at ? '700000' : cell));
    writeFileSync(csv, `${head}\r\n${cells.join(',')}\r\n`);
    const other = new AHome();
    try {
      const { status, err } = await other.run('import', csv);
      expect([status, err]).toEqual([2, expect.stringContaining('column count: found "700000"')]);
    } finally {
      other.throwAway();
    }
  });

  test('asks about what the scales would ask about, and can be tried first', async () => {
    const file = join(home.folder, 'slips.csv');
    writeFileSync(
      file,
      'date,body_mass,unit\r\n2026-11-20,80,kg\r\n2026-11-21,820,kg\r\n2026-11-22,80.2,kg\r\n',
    );
    const other = new AHome();
    try {
      const weighIns = async () =>
        ((await other.json('export', '--as', 'json')).weigh_ins as unknown[]).length;
      const tried = await other.run('import', file, '--dry-run');
      expect(tried.out).toMatch(
        /^Nothing is written yet\..*2 weigh-ins added.*820 kg on 2026-11-21/,
      );
      expect(await weighIns()).toBe(0);
      await other.run('import', file);
      expect(await weighIns()).toBe(2);
      await other.run('import', file, '--doubtful');
      expect(await weighIns()).toBe(3);
    } finally {
      other.throwAway();
    }
  });

  test('of weigh-ins, some of them left out, is no loss to doctor; none is of a day to come', async () => {
    const other = new AHome();
    try {
      for (const [on, mass] of [
        ['2026-11-20', '80'],
        ['2026-11-21', '820'],
        ['2026-11-22', '80.2'],
        ['2026-11-23', '80.3'],
      ]) {
        await other.run('weigh', mass ?? '', '--date', on ?? '', '--sure');
      }
      const { out } = await other.run('export', '--as', 'json');
      const file = join(home.folder, 'some.json');
      // As a version wrote it that did not keep what was said to be right.
      const before = out.replaceAll(/"sure":\s*true,?/g, '').replaceAll(/,(\s*})/g, '$1');
      writeFileSync(file, before.replaceAll('2026-11-22', '2125-11-22'));
      const third = ['--data', join(other.folder, 'third')];
      const said = (await other.run('import', file, ...third)).out;
      expect(said).toMatch(/^2 events added/);
      expect(said).toContain('1 of days still to come were left out');
      expect(said).toContain('820 kg on 2026-11-21');
      const doctor = await other.run('doctor', ...third);
      expect([doctor.status, doctor.out]).toEqual([0, expect.not.stringContaining('missing')]);
    } finally {
      other.throwAway();
    }
  });

  test.each(['csv', 'json'])('as %s is taken back by one id, and brought back', async (as) => {
    const file = join(home.folder, `back.${as}`);
    await home.run('export', '--as', as, '--out', file, '--replace');
    const other = new AHome();
    try {
      const count = async () => {
        const { sessions, weigh_ins } = await other.json('export', '--as', 'json');
        return (sessions as unknown[]).length + (weigh_ins as unknown[]).length;
      };
      const { out } = await other.run('import', file);
      const [, id = ''] = /"holdfast amend (\S+) --delete"/.exec(out) ?? [];
      const all = await count();
      expect(all).toBeGreaterThan(10);
      expect((await other.run('amend', id, '--delete')).out).toMatch(/^Taken back: the import of /);
      expect(await count()).toBe(0);
      await other.run('amend', id, '--restore');
      expect(await count()).toBe(all);
    } finally {
      other.throwAway();
    }
  });

  test.each(['csv', 'json'])('as %s brings no deleted session back, and says so', async (as) => {
    const file = join(home.folder, `gone.${as}`);
    await home.run('export', '--as', as, '--out', file, '--replace');
    const other = new AHome();
    try {
      await other.run('import', file);
      const [session] = lifterOf(other).journal().history().sessions;
      await other.run('amend', session?.session ?? '', '--delete');
      const files = () => readdirSync(join(other.data, 'journal'), { recursive: true }).length;
      const before = files();
      const { out } = await other.run('import', file);
      expect(out).toMatch(
        /1 session is deleted here and stay.* "holdfast amend \S+ --restore" brings it back/,
      );
      expect(files()).toBe(before);
    } finally {
      other.throwAway();
    }
  });

  test('as csv keeps when a session ended, and its notes', async () => {
    const csv = join(home.folder, 'notes.csv');
    await home.run('export', '--as', 'csv', '--out', csv);
    const [head = {}, ...rows] = parse(readFileSync(csv), { columns: true }) as Record<
      string,
      string
    >[];
    const noted = {
      ...head,
      notes: 'slow today\nknee fine',
      end: '2026-11-25T18:30:00Z',
      start: '2026-11-25T17:40:00Z',
      date: '2026-11-25',
      session: 'noted',
    };
    const names = Object.keys(noted);
    const cell = (text = '') => `"${text.replaceAll('"', '""')}"`;
    writeFileSync(
      csv,
      [
        names.join(','),
        names.map((name) => cell(noted[name as keyof typeof noted])).join(','),
      ].join('\r\n'),
    );
    expect(rows.length).toBeGreaterThan(0);
    const other = new AHome();
    try {
      await other.run('import', csv);
      const [session] = lifterOf(other).journal().history().closed();
      expect(session?.notes).toEqual(['slow today', 'knee fine']);
      const { out } = await other.run('export', '--as', 'csv');
      expect(parse(out, { columns: true })).toMatchObject([
        { notes: noted.notes, end: '2026-11-25T18:30:00.000Z' },
      ]);
    } finally {
      other.throwAway();
    }
  });

  test('writes over nothing in the data folder, by whatever name it is reached', async () => {
    const journal = join(home.data, 'journal');
    const [month = ''] = readdirSync(journal);
    const [name = ''] = readdirSync(join(journal, month));
    symlinkSync(join(journal, month, name), join(home.folder, 'link.json'));
    const before = readFileSync(join(journal, month, name), 'utf8');
    for (const out of [join(journal, month, name), 'link.json', join(home.data, 'new.json')]) {
      const { status, err } = await home.run('export', '--as', 'json', '--out', out, '--replace');
      expect([status, err]).toEqual([2, expect.stringContaining('lies in the data folder')]);
    }
    expect(readFileSync(join(journal, month, name), 'utf8')).toBe(before);
    expect(readdirSync(home.data)).not.toContain('new.json');
  });

  test.each(['__proto__', 'constructor', 'toString'])('refuses the format %s', async (as) => {
    const { status, err } = await home.run('export', '--as', as);
    expect([status, err]).toEqual([2, expect.stringContaining(as)]);
  });

  test('knows a near miss of a format', async () => {
    const { status, err } = await home.run('export', '--as', 'cvs');
    expect([status, err]).toEqual([2, expect.stringContaining('Did you mean "csv"?')]);
  });

  test.each(['json', 'csv'])(
    'as %s can be read back into an empty folder, without doubles',
    async (as) => {
      const file = join(home.folder, `all.${as}`);
      await home.run('export', '--as', as, '--out', file, '--replace');
      const other = new AHome();
      try {
        expect((await other.run('import', file)).status).toBe(0);
        const there = await other.json('history');
        const here = await home.json('history');
        const told = ({ results }: Record<string, unknown>) =>
          (results as { date: string; lift: string; sets: object[] }[]).map(
            ({ date, lift, sets }) => [date, lift, sets.map((set) => ({ ...set, id: '' }))],
          );
        expect(told(there)).toEqual(told(here));
        expect((await other.run('import', file)).out).toMatch(/^0 (events|sessions)/);
      } finally {
        other.throwAway();
      }
    },
  );
});

describe('weigh', () => {
  test('saves a reading and says what the trend makes of it', async () => {
    const { status, out } = await home.run('weigh', '79.1');
    expect(status).toBe(0);
    expect(out).toMatch(
      /^Saved: 79.1 kg on Wed 25 Nov 2026. Trend 7\d(\.\d)? kg, falling by \d\.\d % a week \(± \d\.\d\)\.$/m,
    );
    weighSchema.strict().parse(await home.json('weigh', '79.2', '--date', '2026-11-24'));
  });

  test('asks about a lost decimal point, and saves nothing before it is sure', async () => {
    const count = async () => (await home.run('export', '--as', 'csv', '--weigh-ins')).out.length;
    const before = await count();
    const { status, err } = await home.run('weigh', '791');
    expect([status, err]).toEqual([1, expect.stringContaining('Was it 79.1 kg?')]);
    expect(await count()).toBe(before);
  });

  test('takes no day that is yet to come, and no day that no calendar has', async () => {
    expect((await home.run('weigh', '79', '--date', '2026-11-26')).err).toContain('yet to come');
    expect((await home.run('weigh', '79', '--date', '2026-02-30')).status).toBe(2);
  });
});

describe('the waist', () => {
  const own = new AHome();
  afterAll(() => own.throwAway());

  test('is recorded beside the weight or alone, in the tape of the unit or in another', async () => {
    expect((await own.run('weigh', '82.4', '--waist', '86,5')).out).toMatch(
      /^Saved: 82\.4 kg, waist 86\.5 cm on /,
    );
    const alone = weighSchema.parse(await own.json('weigh', '--waist', '34in', '--unit', 'kg'));
    expect(alone).toMatchObject({ mass: null, waist: 86.36, waist_unit: 'cm' });
    expect((await own.run('weigh', '--waist', '34', '--unit', 'lb')).out).toContain('waist 34 in');
  });

  test('that nobody has is refused with what to type, and nothing to record is said', async () => {
    const { status, err } = await own.run('weigh', '--waist', '8.6');
    expect([status, err]).toEqual([2, expect.stringContaining('Type what the tape says, in cm')]);
    expect((await own.run('weigh', '--waist', 'wide')).err).toContain('--waist is "wide".');
    expect((await own.run('weigh')).err).toContain('<mass> is missing.');
  });

  test('goes out as a table and as a document, and comes back without doubles', async () => {
    const csv = (await own.run('export', '--as', 'csv', '--waists')).out;
    expect(csv.trim().split(/\r?\n/)).toHaveLength(4);
    const path = join(own.folder, 'waists.csv');
    writeFileSync(path, csv);
    const waists = lifterOf(own)
      .journal()
      .history()
      .waists.map(({ length }) => length);
    const json = join(own.folder, 'all.json');
    writeFileSync(json, (await own.run('export', '--as', 'json')).out);
    const other = new AHome();
    try {
      expect((await other.run('import', path)).out).toContain('2 waist readings added.');
      expect((await other.run('import', path)).out).toContain('3 were here already');
      const lengths = () =>
        lifterOf(other)
          .journal()
          .history()
          .waists.map(({ length }) => length);
      expect(new Set(lengths())).toEqual(new Set(waists));
    } finally {
      other.throwAway();
    }
    const third = new AHome();
    try {
      await third.run('import', json);
      expect(lifterOf(third).journal().history().waists).toHaveLength(3);
    } finally {
      third.throwAway();
    }
  });

  test('is listed with its id, deleted by it and brought back', async () => {
    const { waists } = historySchema.parse(await own.json('history'));
    const id = waists[0]?.id ?? '';
    expect((await own.run('history', '--ids')).out).toContain(`waist 86.5 cm  ${id}`);
    expect((await own.run('amend', id, '--delete')).out).toContain('Deleted: Waist of');
    expect(historySchema.parse(await own.json('history')).waists).toHaveLength(2);
    expect((await own.run('amend', id, '--restore')).out).toContain('Brought back: Waist of');
  });
});

test('an unlikely waist is asked about, as an unlikely weight is', async () => {
  const own = new AHome();
  try {
    const { status, err } = await own.run('weigh', '--waist', '86in');
    expect(status).toBe(1);
    expect(err).toContain(
      'A waist of 86 in is an unlikely one. Was it 86 cm? Enter that, or say once more that 86 in is right. With --sure it is recorded as it is.',
    );
    expect((await own.json('export', '--as', 'json')).waists).toEqual([]);
    expect((await own.run('weigh', '--waist', '86in', '--sure')).out).toContain('waist 218.4 cm');
  } finally {
    own.throwAway();
  }
});
