import fc from 'fast-check';
import { afterAll, afterEach, beforeEach, describe, expect, test } from 'vitest';
import { openLifter } from '../../src/lifter/open-lifter.ts';
import { todayOf } from '../../src/lifter/prepare.ts';
import { missingFor } from '../../src/program/check/rules/gear.ts';
import type { PrescribedExercise } from '../../src/progression/prescription.ts';
import { readSettings } from '../../src/settings/read-settings.ts';
import { defaultGear } from '../../src/training/default-gear.ts';
import type { Gear } from '../../src/training/gear.ts';
import { loadsFor } from '../../src/training/loads.ts';
import { kilograms } from '../../src/training/mass.ts';
import { AHome } from './a-home.ts';
import { withTinyProgram } from './a-session.ts';

let home: AHome;
beforeEach(() => {
  home = new AHome();
});
afterEach(() => home.throwAway());

const gear = async (): Promise<Gear> => (await home.json('gear')).gear as Gear;
const kg = (amount: number) => ({ amount, unit: 'kg' as const });
const lb = (amount: number) => ({ amount, unit: 'lb' as const });

test('before anything is said a usual home gym is shown, and named as such', async () => {
  const { status, out, err } = await home.run('gear');
  expect(status).toBe(0);
  expect(err).toContain('usual home gym');
  expect(out).toMatch(/^plate +20 kg +6$/m);
  expect((await home.json('gear')).set).toBe(false);
});

test('plates are counted by their stamp, in both units; none of them takes the kind away', async () => {
  await home.run('gear', '--plates', '20kg=4, 45lb=2', '--plates', '1.25=0');
  const { plates } = await gear();
  expect(plates).toContainEqual({ stamped: kg(20), count: 4 });
  expect(plates).toContainEqual({ stamped: lb(45), count: 2 });
  expect(plates.filter(({ stamped }) => stamped.amount === 1.25)).toEqual([]);
  // What was not named stays.
  expect(plates).toContainEqual({ stamped: kg(10), count: 4 });
});

test('a weighed plate counts as it weighs, until its stamp is trusted again', async () => {
  await home.run('gear', '--measured', '20kg=19.8kg');
  expect((await gear()).plates).toContainEqual({
    stamped: kg(20),
    count: 6,
    measured: kg(19.8),
  });
  expect((await home.run('load', '59.6')).out).toContain('20 a side');
  await home.run('gear', '--plates', '20kg=8');
  expect((await gear()).plates).toContainEqual({ stamped: kg(20), count: 8, measured: kg(19.8) });
  await home.run('gear', '--measured', '20kg=0');
  expect((await gear()).plates).toContainEqual({ stamped: kg(20), count: 8 });
});

test('bars, their collars, stacks, bands, handles and the rest are set by name', async () => {
  const { status } = await home.run(
    'gear',
    ...['--bars', 'short bar=15kg, bar=45lb', '--collars', 'short bar=2.5', '--belt', 'no'],
    ...['--stacks', 'pulldown=5kg..100kg by 5kg', '--bands', 'light band=0, green=12'],
    ...['--handles', '2kg=0, 2.3kg=2', '--safeties', 'yes', '--free-step', '4kg'],
  );
  expect(status).toBe(0);
  const now = await gear();
  expect(now.bars).toEqual([
    { name: 'bar', mass: lb(45), collars: kg(0) },
    { name: 'short bar', mass: kg(15), collars: kg(2.5) },
  ]);
  expect(now.stacks).toEqual([{ name: 'pulldown', lowest: kg(5), step: kg(5), highest: kg(100) }]);
  expect(now.bands.map(({ name }) => name)).toEqual(['medium band', 'heavy band', 'green']);
  expect(now.handles).toEqual([{ mass: kg(2.3), count: 2 }]);
  expect(now).toMatchObject({ belt: false, safeties: true, freeStep: kg(4) });
});

test('a row of dumbbells is written in one go', async () => {
  await home.run('gear', '--dumbbells', '3..10 by 1=0', '--dumbbells', '2.5kg..10kg by 2.5kg=2');
  expect((await gear()).dumbbells).toEqual(
    [2.5, 5, 7.5, 10].map((amount) => ({ stamped: kg(amount), count: 2 })),
  );
});

test('a gym in pounds begins from pounds, and bare numbers are pounds from then on', async () => {
  await home.run('gear', '--defaults', 'lb', '--plates', '45=8');
  const now = await gear();
  expect(now.unit).toBe('lb');
  expect(now.bars[0]?.mass).toEqual(lb(45));
  expect(now.plates[0]).toEqual({ stamped: lb(45), count: 8 });
});

test('what was set is in the journal, and its copy in the settings', async () => {
  await home.run('gear', '--belt', 'no');
  expect(readSettings(home.config).settings.gear).toEqual(await gear());
  // Another machine reads the same folder and has no settings.
  home.writeSettings({});
  expect((await gear()).belt).toBe(false);
});

test('an odd plate is kept, and pointed out', async () => {
  const { status, err } = await home.run('gear', '--plates', '20kg=5');
  expect(status).toBe(0);
  expect(err).toContain('One of them has no partner');
});

test.each([
  [['--plates', '20kg'], '--plates has "20kg". Each part is a thing, "=" and a value'],
  [['--plates', '2,5kg=4'], 'write decimals with a point'],
  [['--plates', '20kg=-4'], 'how many you own'],
  [['--plates', '20kg=1000'], 'up to 200'],
  [['--plates', 'heavy=4'], '"heavy" is not a mass'],
  [['--plates', '5000kg=4'], 'up to 1000'],
  [['--measured', '20kg=44kg'], 'more than a tenth from its stamp'],
  [['--measured', '21kg=21kg'], 'You own no plate of 21 kg.'],
  [['--collars', 'brr=5kg'], 'Your gear has no bar "brr". Did you mean "bar"?'],
  [['--bars', `${'b'.repeat(41)}=20kg`], 'A name has 1 to 40 letters.'],
  [['--stacks', 'pulldown=100kg'], '"pulldown=5kg..100kg by 5kg"'],
  [['--stacks', 'pulldown=5kg..22kg by 5kg'], 'cannot reach 22 kg from 5 kg'],
  [['--dumbbells', '10kg..2kg by 2kg=2'], 'rises from above 0'],
  [['--belt', 'maybe'], '--belt has "maybe". It is yes or no.'],
  [['--unit', 'stone'], '--unit has "stone". It is kg or lb.'],
])('%j is refused in a sentence, and nothing changes', async (options, sentence) => {
  const before = await gear();
  const { status, err, out } = await home.run('gear', ...options);
  expect(status).toBe(2);
  expect(err).toContain(sentence);
  expect(out).toBe('');
  expect(await gear()).toEqual(before);
});

test('names are shown at 80 columns, whatever else is to be said of a bar', async () => {
  await home.run(
    'gear',
    '--bars',
    'the long bar at the window=20kg',
    '--collars',
    'the long bar at the window=2.5kg',
  );
  const { out } = await home.run('gear');
  expect(out).toContain('the long bar at the window');
  expect(out.replace(/\s+/g, ' ')).toMatch(/collars 2\.5 kg, makes [\d.]+ to/);
  expect(out).toContain('plates hang from the body');
  for (const line of out.split('\n')) expect(line.length).toBeLessThanOrEqual(80);
});

test('a load can be typed back as it is shown, of a bar in kg with plates in lb too', async () => {
  await home.run('gear', '--bars', 'bar=20kg', '--plates', '45lb=4, 20kg=0, 15kg=0, 10kg=0, 5kg=0');
  const { out } = await home.run('load', '60 kg');
  const shown = /([\d.]+ kg) on the bar[^;]*above/.exec(out)?.[1] ?? '';
  expect(shown).toBe('60.82 kg');
  expect(await home.run('load', shown)).toMatchObject({ status: 0 });
});

const owned = (most: number) => fc.integer({ min: 0, max: most });

/** Gear of a stranger: often without a bar, with one dumbbell, one handle, or nothing at all. */
const strangersGear: fc.Arbitrary<Gear> = fc
  .record({
    bars: owned(2),
    plates: owned(4),
    dumbbells: owned(3),
    handles: owned(2),
    bands: owned(1),
    belt: fc.boolean(),
  })
  .map(({ bars, plates, dumbbells, handles, bands, belt }) => ({
    ...defaultGear('kg'),
    bars: defaultGear('kg').bars.slice(0, bars === 0 ? 0 : 1),
    plates: [20, 5, 2.5, 1.25]
      .slice(0, plates)
      .map((amount) => ({ stamped: kg(amount), count: 2 })),
    dumbbells: [6, 10, 14]
      .slice(0, dumbbells)
      .map((amount, at) => ({ stamped: kg(amount), count: 1 + (at % 2) })),
    handles: handles === 0 ? [] : [{ mass: kg(2), count: handles }],
    stacks: [],
    bands: bands === 0 ? [] : [{ name: 'light', assistance: kg(10) }],
    belt,
  }));

test('no load is told as if it could be made where nothing makes it', async () => {
  await fc.assert(
    fc.asyncProperty(
      strangersGear,
      fc.constantFrom('three-day', 'four-day'),
      fc.nat({ max: 3 }),
      async (given, program, day) => {
        const theirs = new AHome();
        try {
          theirs.writeSettings({ gear: given, cautions: 'read' });
          const { days } = todayOf(openLifter(theirs.ports(), { data: null, program }), null);
          const { exercises, warnings } = (await theirs.json(
            'today',
            ...['--program', program, '--day', days[day % days.length] ?? 'A'],
          )) as { exercises: Record<string, never>[]; warnings: { text: string }[] };
          for (const {
            name,
            loading,
            hands,
            load,
            bar,
            step,
            basis,
          } of exercises as never as PrescribedExercise[]) {
            if (loading !== 'barbell' && loading !== 'dumbbell') continue;
            const loads = loadsFor(given, { loading, hands, bar, step });
            const isMade =
              missingFor({ lift: { loading, hands, needs: [] } as never, step }, given) === null;
            const isLoadable =
              load === null ||
              loads.atOrBelow(kilograms(load as number)) === kilograms(load as number);
            const isSilent =
              load === null && !warnings.some(({ text }) => text.startsWith(`${name}: `));
            const isTold = warnings.some(({ text }) => text.startsWith(`${name} needs `));
            expect(isMade ? isLoadable : isTold && isSilent, `${name} ${load} ${basis}`).toBe(true);
          }
        } finally {
          theirs.throwAway();
        }
      },
    ),
    { numRuns: 40 },
  );
});

test('a name that is near one that is owned is asked about, and kept with --new', async () => {
  await home.run('gear', '--bars', 'short bar=15kg');
  const asked = await home.run('gear', '--bars', 'shrot bar=15kg');
  expect([asked.status, asked.err]).toEqual([
    2,
    expect.stringContaining('Your gear has no "shrot bar" among its bars, but a "short bar".'),
  ]);
  expect((await gear()).bars.map(({ name }) => name)).toEqual(['bar', 'short bar']);
  const { err } = await home.run('gear', '--bars', 'shrot bar=15kg', '--new');
  expect(err).toContain('Saved; what was not named stays as it was.');
  expect((await gear()).bars).toHaveLength(3);
});

test('a load in the unit of the program has that of the gear beside it', async () => {
  await home.run('gear', '--defaults', 'kg');
  const { out } = await home.run('--program', 'three-day-lb', 'load', '135');
  expect(out).toMatch(
    /^135 lb cannot be made with your plates: [\d.]+ lb \([\d.]+ kg\) on the bar/,
  );
  expect((await home.run('--program', 'three-day', 'load', '60')).out).toMatch(/^60 kg on the bar/);
  // To a tenth: 62.54 kg is what plates that were weighed come to.
  await home.run('gear', '--measured', '1.25kg=1.27kg');
  const weighed = (await home.run('--program', 'three-day-lb', 'load', '135')).out;
  expect(weighed).toMatch(/137\.88 lb \(62\.5 kg\) on the bar/);
});

test('gear in pounds is a word on the unit, before there is a program', async () => {
  const pounds = new AHome();
  await pounds.run('gear', '--defaults', 'lb');
  expect((await pounds.run('weigh', '185')).out).toContain('Saved: 185 lb ');
  expect((await pounds.run('load', '135')).out).toMatch(/^135 lb on the bar/);
  expect((await pounds.run('today')).out).toMatch(/^Three days in pounds/);
  pounds.throwAway();
});

describe('a kit of another place', () => {
  const away = new AHome();
  afterAll(() => away.throwAway());

  test('is kept under a name, leaves what is owned as it is, and is trained with by --kit', async () => {
    withTinyProgram(away);
    const before = (await away.run('gear')).out;
    const made = await away.run(
      'gear',
      '--kit',
      'hotel',
      '--dumbbells',
      '30kg=2',
      '--stations',
      'rack',
    );
    expect(made.err).toContain('Kept as the kit hotel');
    expect((await away.run('gear')).out).toBe(before);
    expect((await away.run('gear', '--kit', 'hotel')).out).toMatch(/dumbbell +30 kg/);
    const { out } = await away.run('today', '--kit', 'hotel');
    expect(out).toMatch(/needs a bar, and your gear has none/);
    // It has what was named, and nothing of home.
    expect((await away.run('gear', '--kit', 'hotel')).out).not.toMatch(/^(bar|plate) /m);
    const unsaid = await away.run('gear', '--kit', 'gym');
    expect([unsaid.status, unsaid.err]).toEqual([2, expect.stringContaining('Say what is there')]);
    expect((await away.run('today')).out).not.toMatch(/needs a bar/);
    const { status, err } = await away.run('today', '--kit', 'hotle');
    expect([status, err]).toEqual([2, expect.stringContaining('Did you mean "hotel"?')]);
    expect((await away.run('gear', '--kit', 'hotel', '--forget')).out).toContain('Forgotten');
    expect((await away.run('today', '--kit', 'hotel')).status).toBe(2);
  });
});

test('a kit is named in one line', async () => {
  for (const name of ['a\nb', '\u001b[31mred', ' ', 'k'.repeat(300)]) {
    const { status, err } = await home.run('gear', '--kit', name, '--plates', '20kg=2');
    expect(status, name).toBe(2);
    expect(err).toContain('--kit needs a short name, in one line.');
  }
});

test('an estimate tells loads of a bar that is there, and none without one', async () => {
  const estimate = () => home.run('estimate', '--load', '100', '--reps', '5');
  expect((await estimate()).out).toMatch(/on your bar\n.* 100 % {2,}\d+(\.\d)? kg\n/);
  await home.run('gear', '--bars', 'bar=0');
  const { out, status } = await estimate();
  expect(status).toBe(0);
  expect(out).not.toContain('bar');
  const { loads } = await home.json('estimate', '--load', '100', '--reps', '5');
  expect((loads as { loadable: unknown }[]).map(({ loadable }) => loadable)).not.toContain(100);
});

test('a list that names nothing is said to change nothing', async () => {
  const { status, err } = await home.run('gear', '--plates', '');
  expect(status).toBe(2);
  expect(err).toContain('--plates has "". It names nothing, so nothing would change.');
  expect(err).not.toContain('Saved');
});

test('what is refused is told as it was typed', async () => {
  const { err } = await home.run('gear', '--stations', 'Bench, Smith Rack');
  expect(err).toContain('--stations has "Smith Rack".');
});
