import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { importSchema } from '../../src/commands/import-schema.ts';
import { AHome } from './a-home.ts';

let home: AHome;
beforeEach(() => {
  home = new AHome();
});
afterEach(() => home.throwAway());

const table = (text: string, name = 'years.csv'): string => {
  const path = join(home.folder, name);
  writeFileSync(path, text);
  return path;
};

/** Invented: as a spreadsheet set to German saves it. */
const YEARS = [
  'Datum;Übung;Gewicht (kg);Wdh;Sätze;RIR;Laune',
  '31.12.2025;Bench;82,5;8/8/7;;1;gut',
  '31.12.2025;Squats;100;5;3;2;',
  '02.01.2026;Deadlift;140;5;;;',
  '5.1.26;Pull-up;;6;3;1;',
  '5.1.26;Pull-up;10;4;;0;',
  'some day;Bench;80;8;;;',
  '06.01.2026;Bench;much;8;;;',
  '06.01.2026;Log thing;60;8;;;',
  '07.01.2026;Bench;200 lb;3;;;',
  '08.01.2026;Bench;40;8;;warm-up;',
  '',
].join('\r\n');

const OWN_PROGRAM = `
name: Mine
unit: kg
aim: maintain
days_per_week: 2
days:
  - name: A
    exercises:
      - { lift: dumbbell-curl, sets: 2, reps: 8-12, rest: 2 min, reserve: 0-1 }
      - { lift: dip, sets: 2, reps: 5-8, rest: 3 min, reserve: 0-1 }
      - { lift: bench-press, sets: 2, reps: 6-10, rest: 3 min, reserve: 1-2 }
`;

const setsOf = async () => {
  const { results } = (await home.json('export', '--as', 'json')) as { results?: unknown[] };
  return results;
};

describe('a table of the lifter’s own', () => {
  test.each([
    ['UTF-16 with its mark', Buffer.from(`\ufeff${YEARS}`, 'utf16le')],
    ['UTF-8 with its mark', Buffer.from(`\ufeff${YEARS}`)],
    ['the code page of Windows', Buffer.from(YEARS, 'latin1')],
  ])('is read in %s', async (_, bytes) => {
    const path = join(home.folder, 'years.csv');
    writeFileSync(path, bytes);
    const { out } = await home.run('import', path);
    expect(out).toContain('with semicolons between its columns');
    expect(out).toMatch(/lift +Übung +Bench/);
  });

  test('reads ratings of exertion as reps in reserve, and thousands', async () => {
    const rated =
      'date,lift,load,reps,RPE\n2026-01-02,Squats,100,5,8\n2026-01-02,Squats,"1,000",1,10\n';
    const { out } = await home.run('import', table(rated), '--take');
    expect(out).toContain('2 sets on 1 day added.');
    // Zourdos 2016: 8 is two in reserve.
    expect((await home.run('history', 'back-squat')).out).toMatch(/100 kg, 1000 kg +5 1 +2 0/);
  });

  test.each([
    ['Warmup', 'yes'],
    ['Warm-up?', 'x'],
    ['Is warm-up', '1'],
    ['Set Type', 'warmup'],
    ['Set type', 'W'],
    ['Typ', 'Aufwärmen'],
  ])(
    'leaves out what its column %s marks as warm-up by %s, and calls no column unread',
    async (heading, mark) => {
      const path = table(
        `date,lift,load,reps,${heading}\n2026-01-02,Squats,60,5,${mark}\n2026-01-02,Squats,100,5,\n2026-01-02,Squats,100,4,no\n`,
      );
      const { out } = await home.run('import', path, '--take');
      expect(out).toMatch(new RegExp(`warm-up +${heading.replace('?', '.')} +${mark}`));
      expect(out).not.toContain('Not read');
      expect(out).toContain('Left out as warm-ups: 1 line.');
      expect((await home.run('history')).out).toMatch(/2026-01-02 +100 kg +5 4/);
    },
  );

  test('reads what is held in seconds or minutes, body weight and what hangs from it, and reps at a rating', async () => {
    const rows = [
      'date,lift,load,reps',
      '2026-01-02,plank,,45s',
      '2026-01-02,plank,,1:00',
      '2026-01-02,plank,0,50 sec',
      '2026-01-02,plank,0,1 min',
      '2026-01-05,pull up,BW+10,5',
      '2026-01-05,pull up,bw - 20 kg,8',
      '2026-01-06,squats,100,5 @ 8',
      '2026-01-07,bench press,BW+10,5',
      '2026-01-07,bench press,60,45s',
    ];
    const { out } = await home.run('import', table(rows.join('\n')), '--take');
    expect(out).toContain('- "BW+10" is no load: line 9');
    expect(out).toContain('- "45s" is no count of reps: line 10');
    home.columns = 160;
    const history = (await home.run('history')).out;
    expect(history).toMatch(/2026-01-02 +Plank +body weight +45 s 60 s 50 s 60 s/);
    expect(history).toMatch(/2026-01-05 +Pull-up +body weight \+ 10 kg, body weight − 20 kg +5 8/);
    // Zourdos 2016: 8 is two in reserve.
    expect(history).toMatch(/2026-01-06 +Back squat +100 kg +5 +2/);
    // Nobody moved a load there.
    expect(history).not.toContain('start');
  });

  test('reads a date with its day of the week before it or a time behind it', async () => {
    const days = [
      'Mon 2 Nov 2026',
      'Tuesday, Nov 3, 2026',
      '4 November 2026 10:30',
      'Do 5.11.2026',
      '6.11.2026 7:15',
    ];
    const rows = days.map((day) => `${day};Squats;100;5`).join('\n');
    await home.run('import', table(`date;lift;load;reps\n${rows}\n`), '--take');
    const { out } = await home.run('history');
    for (const day of [2, 3, 4, 5, 6]) expect(out).toContain(`2026-11-0${day}`);
  });

  test('says which load is far from all other days of its lift before it takes it in', async () => {
    const days = [
      '2026-01-02,Bench,60,8',
      '2026-01-05,Bench,62.5,8',
      '2026-01-08,Bench,600,8',
      '2026-01-09,Squats,200,5',
      '2026-01-10,Pull-up,0,8',
      '2026-01-12,Pull-up,20,8',
    ];
    const path = table(`date,lift,load,reps\n${days.join('\n')}\n`);
    const { out } = await home.run('import', path, '--dry-run');
    expect(out.replace(/\s+/g, ' ')).toContain(
      'Far heavier than any other day of the lift: Bench press 600 kg × 8 (line 4). Where that is a slip, mend the table first: it is taken as it stands.',
    );
    expect(out).toContain('6 sets on 6 days');
    // Beside what is known already, too; half as much again is training.
    await home.run('import', table(`date,lift,load,reps\n${days[0]}\n`, 'a.csv'), '--take');
    const later = async (load: number) => {
      const file = table(`date,lift,load,reps\n2026-02-01,Bench,${load},8\n`, `${load}.csv`);
      return (await home.run('import', file, '--dry-run')).out;
    };
    expect(await later(600)).toContain('Far heavier');
    expect(await later(90)).not.toContain('Far heavier');
  });

  test('names every line that it leaves out', async () => {
    const rows = ['date,lift,load,reps'];
    for (let at = 0; at < 20; at += 1) rows.push('2026-01-02,Squats,100,0');
    rows.push('2026-01-02,Squats,100,5');
    for (let at = 0; at < 8; at += 1) rows.push(`2026-01-02,Squats,much ${at},5`);
    const { out } = await home.run('import', table(rows.join('\n')), '--dry-run');
    expect(out).toContain('28 lines find no place');
    expect(out).toContain('- "0" is no count of reps: line 2–21');
    // Causes that differ in what was found stand under one head, each with what it was and where.
    expect(out.replaceAll(/\s+/g, ' ')).toContain(
      '- no load: "much 0", line 23; "much 1", line 24; "much 2", line 25; "much 3", line 26; "much 4", line 27; "much 5", line 28; "much 6", line 29; "much 7", line 30',
    );
    expect(out).not.toContain('other cause');
  });

  test('adds nothing anew that was corrected, deleted or taken back, and says how it comes back', async () => {
    const path = table('date,lift,load,reps\n2026-01-02,Squats,100,5\n2026-01-02,Squats,100,4\n');
    const { out } = await home.run('import', path, '--take');
    const ids = (await home.run('history', '--ids')).out.match(/set \d +(\S+)/g) ?? [];
    const [first = '', second = ''] = ids.map((line) => line.replace(/^set \d +/, ''));
    await home.run('amend', first, '--reps', '8');
    await home.run('amend', second, '--delete');
    const again = await home.run('import', path, '--take');
    expect(again.out).toContain('Nothing is new. 2 sets of it are here already.');
    const taken = /amend (\S+) --delete/.exec(out.replace(/\s+/g, ' '))?.[1] ?? '';
    await home.run('amend', taken, '--delete');
    const later = (await home.run('import', path, '--take')).out.replace(/\s+/g, ' ');
    expect(later).toContain(`2 sets of it were taken back: "holdfast amend ${taken} --restore"`);
  });

  test('tells one set as one, and none not at all', async () => {
    const path = table('date,lift,load,reps\n2026-01-02,Squats,100,5\n');
    const told = async (...more: string[]) =>
      (await home.run('import', path, ...more)).out.replace(/\s+/g, ' ');
    expect(await told()).not.toMatch(/here already|taken back/);
    const taken = /amend (\S+) --delete/.exec(await told('--take'))?.[1] ?? '';
    expect(await told()).toMatch(/Nothing is new\. 1 set of it is here already\.(?! 0)/);
    await home.run('amend', taken, '--delete');
    expect(await told()).toContain('1 set of it was taken back: ');
    expect(await told()).toContain('brings it back.');
  });

  test('takes in what was done tomorrow, where it may be tomorrow already, and nothing later', async () => {
    const on = async (day: string) =>
      (await home.run('import', table(`date,lift,load,reps\n${day},Squats,100,5\n`))).out;
    expect(await on('2026-11-26')).not.toContain('still to come');
    expect(await on('2026-11-27')).toContain('a day that is still to come');
  });

  test('names a lift that the table does not have', async () => {
    const path = table('date,lift,load,reps\n2026-01-02,Squats,100,5\n');
    const { status, err } = await home.run('import', path, '--lift', 'Nothere=back-squat');
    expect(status).toBe(2);
    expect(err).toContain('The table has no lift "Nothere". It has Squats.');
  });

  test('knows what gyms write for short', async () => {
    const path = table('date,lift,load,reps\n2026-01-02,DB row,20,8\n2026-01-02,BB rows,60,8\n');
    const { out } = await home.run('import', path);
    expect(out).toMatch(/DB row +One-arm dumbbell row/);
    expect(out).toMatch(/BB rows +Barbell row/);
  });

  test.each([
    ['Bench press (barbell)', 'Bench press'],
    ['Bench Press (Dumbbell)', 'Dumbbell bench press'],
    ['Barbell bent-over row', 'Barbell row'],
    ['DB bench', 'Dumbbell bench press'],
    ['Lateral raise (cable)', 'Cable side raise'],
    ['Pullups', 'Pull-up'],
    ['Weighted dips', 'Dip'],
    ['Crunches', 'Crunch'],
    ['Farmer’s walk', 'Two-hand carry'],
    ['Flat bench press', 'Bench press'],
  ])('knows %s as %s', async (name, lift) => {
    const { out } = await home.run(
      'import',
      table(`date,lift,load,reps\n2026-01-02,${name},20,8\n`),
    );
    expect(out).toMatch(new RegExp(`^${name.replace(/[()]/g, '.')} +${lift} +1$`, 'm'));
  });

  test('takes no name for one lift that may be several, with another load each', async () => {
    const path = table('date,lift,load,reps\n2026-01-02,Curl,20,8\n2026-01-02,Curls,20,8\n');
    const { out } = await home.run('import', path);
    expect(out).toMatch(/Curl +one of \d+ lifts +0/);
    expect(out).toContain('- may be one of several lifts: "Curl", line 2; "Curls", line 3');
    expect(out.replace(/\s+/g, ' ')).toContain(
      '--lift "Curl=KEY" says which lift it is; "holdfast lifts curl" finds keys.',
    );
    const told = await home.run('import', path, '--lift', 'Curl=barbell-curl');
    expect(told.out).toMatch(/Curl +Barbell curl +1/);
  });

  test.each([
    ['plank', '0', '1 min 30 s', '', '90 s'],
    ['plank', '0', `1'30"`, '', '90 s'],
    ['plank', '0', '45"', '', '45 s'],
    ['squats', '100', '8 reps', '', '8 '],
    ['squats', '100', '8 Wdh.', '', '8 '],
    ['squats', '100', 'AMRAP 8', '', '8 '],
    ['squats', '100 @ 8', '5', '', '5 +2 '],
    ['squats', '100', '5', 'RPE 8', '5 +2 '],
    ['squats', '100', '5', '2+', '5 +2 '],
    ['squats', '100', '5', '1-2', '5 +1 '],
    ['squats', '100', '5', 'failure', '5 +0 '],
    ['dumbbell curl', '2 x 10', '12', '', '10 kg a hand +12'],
  ])('reads %s %s for %s, %s in reserve', async (lift, load, reps, reserve, told) => {
    const path = table(`date;lift;load;reps;RIR\n2026-01-02;${lift};${load};${reps};${reserve}\n`);
    expect((await home.run('import', path, '--take')).out).toContain('1 set on 1 day added.');
    home.columns = 160;
    const row = (await home.run('history')).out.split('\n').find((line) => line.includes('2026'));
    expect(`${row} `).toMatch(new RegExp(told));
  });

  test('is shown as it was understood before anything is written', async () => {
    const { status, out } = await home.run('import', table(YEARS));
    expect(status).toBe(0);
    expect(out).toContain('with semicolons between its columns');
    expect(out).toMatch(/date +Datum +31\.12\.2025/);
    expect(out).toMatch(/load +Gewicht \(kg\) +82,5/);
    expect(out).toMatch(/Bench +Bench press +4/);
    expect(out).toMatch(/Log thing +no lift that is known +0/);
    expect(out).toContain('Not read: Laune.');
    expect(out).toContain('- "some day" is no date: line 7');
    expect(out).toContain('- "much" is no load: line 8');
    expect(out).toContain('Left out as warm-ups: 1 line.');
    expect(out).toMatch(/Nothing is written yet: 12 sets on 4 days would be added\./);
    expect((await home.run('history')).out).not.toContain('Bench');
  });

  test('is told as a document that fits its schema', async () => {
    const told = await home.json('import', table(YEARS), '--take');
    expect(importSchema.parse(told)).toMatchObject({ schema: 1, written: true, sessions: 4 });
  });

  test('is taken in with decimals by comma, several sets in a line, body weight and pounds', async () => {
    await home.run('import', table(YEARS), '--take');
    const { out } = await home.run('history');
    expect(out).toMatch(/2025-12-31 +Bench press +82\.5 kg +8 8 7/);
    expect(out).toMatch(/2025-12-31 +Back squat +100 kg +5 5 5/);
    expect(out).toMatch(/2026-01-05 +Pull-up .*body weight \+ 10 kg +6 6 6 4/);
    // 200 lb × 0.45359237 kg/lb (NIST SP 811) = 90.718 kg.
    expect(out).toMatch(/2026-01-07 +Bench press +90\.72 kg +3/);
  });

  test('adds nothing the second time, and only what is new once it has grown', async () => {
    await home.run('import', table(YEARS), '--take');
    const before = await setsOf();
    const again = await home.run('import', table(YEARS), '--take');
    expect(again.out).toContain('Nothing is new. 12 sets of it are here already.');
    expect(await setsOf()).toEqual(before);
    const grown = `${YEARS}09.01.2026;Squat;102,5;5;;;\r\n`;
    expect((await home.run('import', table(grown), '--take')).out).toContain(
      '1 set on 1 day added.',
    );
  });

  test('is taken back by one id', async () => {
    const { out } = await home.run('import', table(YEARS), '--take');
    const id = /amend\s+(\S+)\s+--delete/.exec(out)?.[1] ?? '';
    expect((await home.run('amend', id, '--delete')).status).toBe(0);
    expect((await home.run('history')).out).not.toContain('Bench press');
  });

  test('two equal lines of one day are two sets', async () => {
    const text = 'date,exercise,weight,reps\n2026-03-02,bench,80,5\n2026-03-02,bench,80,5\n';
    await home.run('import', table(text), '--take');
    expect((await home.run('history')).out).toMatch(/2026-03-02 +80 kg +5 5/);
  });

  test('its columns and lifts can be told', async () => {
    const text = 'When\tWhat\tHow heavy\tHow often\n2026-03-02\tMonday push\t80\t5\n';
    const guessed = await home.run('import', table(text));
    expect(guessed.status).toBe(2);
    expect(guessed.err).toContain('No column for lift, load, reps was found');
    expect(guessed.err).toContain('"How heavy"');
    const { status, out } = await home.run(
      ...['import', table(text), '--take', '--lift', 'Monday push=bench-press'],
      ...['--columns', 'lift=what, load=How heavy, reps=How often'],
    );
    expect(status).toBe(0);
    expect(out).toContain('1 set on 1 day added.');
    expect((await home.run('history')).out).toMatch(/2026-03-02 +80 kg +5/);
  });

  test('without headings its columns go by their numbers', async () => {
    const text = '2026-03-02;bench;80;5\n2026-03-04;squat;100;5\n';
    const { out } = await home.run(
      ...['import', table(text), '--take', '--columns', 'lift=2,load=3,reps=4'],
    );
    expect(out).toContain('2 sets on 2 days added.');
  });

  test('days and months are never guessed where both could be meant', async () => {
    const text = 'date,exercise,lbs,reps\n3/4/2026,bench,225,5\n5/4/2026,bench,225,5\n';
    const { status, err } = await home.run('import', table(text));
    expect(status).toBe(2);
    expect(err).toContain('--dates day-first');
    const { out } = await home.run('import', table(text), '--take', '--dates', 'month-first');
    expect(out).toContain('2 sets on 2 days added.');
    expect((await home.run('history')).out).toMatch(/2026-05-04 +102\.06 kg/);
  });

  test('one date past the 12th tells the order of all', async () => {
    const text = 'date,exercise,kg,reps\n3/4/2026,bench,80,5\n3/25/2026,bench,82.5,5\n';
    await home.run('import', table(text), '--take');
    const { out } = await home.run('history');
    expect(out).toContain('2026-03-04');
    expect(out).toContain('2026-03-25');
  });

  test('of days and body weights becomes weigh-ins, once each', async () => {
    const text = 'Date;Body weight\n2026-11-20;82,4\n2026-11-21;82,1\n2026-11-21;82,1\n';
    const { out } = await home.run('import', table(text), '--take');
    expect(out).toContain('2 weigh-ins added.');
    expect((await home.run('import', table(text), '--take')).out).toContain('Nothing is new.');
  });

  test('a day that is still to come and loads that nobody lifts stay out', async () => {
    const text = 'date,exercise,kg,reps\n2030-01-01,bench,80,5\n2026-03-02,bench,8000,5\n';
    const { out } = await home.run('import', table(text));
    expect(out).toContain('a day that is still to come: line 2');
    expect(out).toContain('nobody lifts "8000": line 3');
    expect(out).toContain('Nothing is new.');
  });

  test('a bar that held nothing is taken as it is written, less than nothing is not', async () => {
    const text = 'date,exercise,kg,reps\n2026-03-02,bench,0,5\n2026-03-04,bench,-5,5\n';
    const { out } = await home.run('import', table(text), '--take');
    expect(out).toContain('nobody lifts "-5": line 3');
    expect((await home.run('history')).out).toMatch(/2026-03-02 +0 kg +5/);
  });

  test('a reading is laid beside the newest one before it, here or in the file', async () => {
    for (const [mass, day] of [
      ['90', '2026-05-01'],
      ['80', '2026-11-01'],
    ])
      await home.run('weigh', mass!, '--date', day!, '--sure');
    const readings = (...rows: readonly string[]) =>
      table(`date,body weight\n${rows.join('\n')}\n`);
    const one = await home.run('import', readings('2026-11-02,88'), '--take');
    expect(one.out).toContain('1 unlikely weigh-in was left out: 88 kg on 2026-11-02');
    const two = await home.run('import', readings('2026-11-03,79.5', '2026-11-04,79'), '--take');
    expect(two.out).not.toContain('unlikely');
  });

  test('goes on in the program the same, whether it or the program came first', async () => {
    const program = join(home.folder, 'mine.yaml');
    writeFileSync(program, OWN_PROGRAM);
    const text =
      'date,exercise,kg,reps\n2026-11-23,dumbbell curl,9,12\n2026-11-23,dumbbell curl,9,12\n2026-11-23,dip,10,8\n2026-11-23,dip,10,8\n2026-11-23,bench press,90,3\n';
    const later = new AHome();
    try {
      await home.run('weigh', '80');
      await later.run('weigh', '80');
      await home.run('import', table(text), '--take');
      await later.run('import', table(text), '--take', '--program', program);
      const [first, second] = [
        (await home.run('today', '--program', program)).out,
        (await later.run('today', '--program', program)).out,
      ];
      expect(first).toBe(second);
      // 12 and 12 lie in 8-12, 8 and 8 in 5-8: both tops are reached, and the load goes up.
      expect(first).toContain('Every set reached 12 at 9 kg a hand, so on to 9.5 kg');
      expect(first).toContain(
        'Every set reached 8 at body weight + 10 kg, so on to body weight + 11.25 kg',
      );
      // Three reps lie in no range of 6 to 10: they tell a load, and no more.
      expect(first).toContain('Known from another range: 3 reps at 90 kg point to 67.5 kg here');
      expect(first).not.toContain('90 kg × 3');
    } finally {
      later.throwAway();
    }
  });

  test('goes on in the program from the range that the program has', async () => {
    const text = 'date,exercise,kg,reps,sets\n2026-11-20,back squat,100,8,3\n';
    await home.run('import', table(text), '--take', '--program', 'three-day');
    const { out } = await home.run('today', '--program', 'three-day', '--day', 'A');
    expect(out).toMatch(/last time, Fri 20 Nov 2026: 100 kg × 8, 8, 8/);
  });
});

test('a lift that the table does not have is told as it was typed', async () => {
  const { err } = await home.run('import', table(YEARS), '--lift', 'Hack Squats=back-squat');
  expect(err).toContain('The table has no lift "Hack Squats".');
});
