import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { SETTING_ROWS } from '../../src/commands/setting-rows.ts';
import { readSettings } from '../../src/settings/read-settings.ts';
import { DEFAULT_SETTINGS, settingsSchema } from '../../src/settings/settings.ts';
import { writeSettings } from '../../src/settings/write-settings.ts';
import { defaultGear } from '../../src/training/default-gear.ts';
import { AHome } from './a-home.ts';

let home: AHome;
beforeEach(() => {
  home = new AHome();
});
afterEach(() => home.throwAway());

test('every setting is shown with its value, and what it can be', async () => {
  const { status, out } = await home.run('settings');
  expect(status).toBe(0);
  for (const { name } of SETTING_ROWS) expect(out).toMatch(new RegExp(`^${name} `, 'm'));
  expect(out).toMatch(/^bell +yes +no +rings/m);
});

test('a row can name every value that its setting may have, and no other', () => {
  for (const { name, values, change, read } of SETTING_ROWS) {
    for (const value of values) {
      const settings = settingsSchema().parse({ ...DEFAULT_SETTINGS, ...change(value) });
      expect([name, read(settings)]).toEqual([name, value]);
    }
    expect(
      settingsSchema().safeParse({ ...DEFAULT_SETTINGS, ...change('another value') }).success,
    ).toBe(
      // What is not yes is no, for a switch.
      values.length === 2 && values.includes('yes'),
    );
  }
});

test('one setting is changed and the others stay', async () => {
  const { status, out } = await home.run('settings', 'speech', 'yes');
  expect(status).toBe(0);
  expect(out).toMatch(/^speech +yes/m);
  await home.run('settings', 'theme', 'plain');
  expect((await home.json('settings')).settings).toMatchObject({
    speech: 'yes',
    theme: 'plain',
    bell: 'yes',
  });
});

test('whether weight is spoken of is asked once, and only the answer is kept', async () => {
  const asked = await home.run('settings', 'weight-advice');
  expect(asked.err).toMatch(/under 18 or pregnant.*eating disorder/);
  const yes = await home.run('settings', 'weight-advice', 'yes');
  expect(yes.err).toContain('adults only');
  expect(readSettings(home.config).settings.weightAdvice).toBe('yes');
  expect((await home.run('settings', 'weight-advice')).err).toBe('');
  await home.run('settings', 'weight-advice', 'no');
  expect(readSettings(home.config).settings.weightAdvice).toBe('no');
});

test.each([
  [['bel', 'no'], 'There is no setting "bel". Did you mean "bell"?'],
  [['volume', '11'], 'Settings: bell, flash'],
  [['bell', 'loud'], 'bell cannot be "loud". It is yes or no.'],
  [['theme', 'green'], 'theme cannot be "green". It is colour or plain.'],
])('%j is refused in a sentence', async (words, sentence) => {
  const { status, err } = await home.run('settings', ...words);
  expect(status).toBe(2);
  expect(err).toContain(sentence);
});

test('a damaged file is said, and a change puts a good one in its place', async () => {
  mkdirSync(home.config, { recursive: true });
  writeFileSync(join(home.config, 'settings.json'), '{"bell": "loud"');
  expect((await home.run('settings')).err).toContain('it is not JSON');
  await home.run('settings', 'bell', 'no');
  const { settings, problem } = readSettings(home.config);
  expect([settings.bell, problem]).toEqual([false, null]);
});

test('a new machine rings and flashes, and does nothing else that was not asked for', () => {
  const { bell, flash, speech, notification, taps } = DEFAULT_SETTINGS;
  expect({ bell, flash, speech, notification, taps }).toEqual({
    bell: true,
    flash: true,
    speech: false,
    notification: false,
    taps: false,
  });
});

test('in place of a damaged file the last good one holds, the settings of a newer version too', async () => {
  home.writeSettings({ bell: false, lamp: 3 });
  await home.run('settings', 'theme', 'plain');
  const path = join(home.config, 'settings.json');
  writeFileSync(path, 'x');
  const { settings, isDamaged, problem } = readSettings(home.config);
  expect([settings.bell, settings.theme, isDamaged]).toEqual([false, 'plain', true]);
  expect(problem?.why).toContain('copy of the last good settings');
  await home.run('settings', 'flash', 'no');
  expect(JSON.parse(readFileSync(path, 'utf8'))).toMatchObject({
    bell: false,
    flash: false,
    theme: 'plain',
    lamp: 3,
  });
  expect(readFileSync(join(home.config, 'settings.damaged.json'), 'utf8')).toBe('x');
});

test('a file of a mebibyte is read, a larger one is not', () => {
  mkdirSync(home.config, { recursive: true });
  const path = join(home.config, 'settings.json');
  const text = '{"bell": false}';
  writeFileSync(path, text.padEnd(1024 * 1024));
  expect(readSettings(home.config)).toMatchObject({ settings: { bell: false }, problem: null });
  writeFileSync(path, text.padEnd(1024 * 1024 + 1));
  expect(readSettings(home.config).problem?.what).toContain('it is too large');
});

test('without a good copy the defaults hold, and the sentence says so', () => {
  mkdirSync(home.config, { recursive: true });
  writeFileSync(join(home.config, 'settings.json'), 'x');
  const { settings, problem } = readSettings(home.config);
  expect(settings).toEqual(DEFAULT_SETTINGS);
  expect(problem?.why).toContain('The defaults are used');
});

test.each([
  ['a plate of less than nothing', { plates: [{ stamped: { amount: -1, unit: 'kg' }, count: 2 }] }],
  ['fewer plates than none', { plates: [{ stamped: { amount: 5, unit: 'kg' }, count: -2 }] }],
  ['half a plate', { plates: [{ stamped: { amount: 5, unit: 'kg' }, count: 2.5 }] }],
  ['a band without a name', { bands: [{ name: '', assistance: { amount: 5, unit: 'kg' } }] }],
])('gear with %s is not understood, and gear with none of it is', (_, part) => {
  home.writeSettings({ gear: { ...defaultGear('kg'), ...part } });
  expect(readSettings(home.config).problem?.what).toContain('does not understand gear');
  const none = { plates: [{ stamped: { amount: 0, unit: 'kg' }, count: 0 }] };
  home.writeSettings({ gear: { ...defaultGear('kg'), ...none } });
  expect(readSettings(home.config).problem).toBeNull();
});

test('several values that are not understood are spoken of as several', () => {
  home.writeSettings({ theme: 'sepia', bell: 'loud' });
  const { what, why } = readSettings(home.config).problem ?? {};
  expect(what).toContain('theme: "sepia" and bell: "loud".');
  expect(why).toMatch(/^They are kept/);
});

test('a value of a newer version costs its own setting alone, is said, and stays as it is', async () => {
  const newer = { bell: false, weightAdvice: 'no', theme: 'sepia', lamp: { on: true } };
  home.writeSettings(newer);
  const { out, err } = await home.run('settings');
  expect(err).toContain('does not understand theme: "sepia"');
  expect(err).not.toContain('lamp');
  expect(out).toMatch(/weight-advice +no/);
  await home.run('settings', 'flash', 'no');
  const path = join(home.config, 'settings.json');
  expect(JSON.parse(readFileSync(path, 'utf8'))).toMatchObject({ ...newer, flash: false });
  // Until that very setting is changed.
  await home.run('settings', 'theme', 'colour');
  expect(JSON.parse(readFileSync(path, 'utf8'))).toMatchObject({ ...newer, theme: 'colour' });
  expect(readSettings(home.config).problem).toBeNull();
});

test.each(['null', '[]', '7', '"bell"'])(
  'settings that are %s are damaged, not empty',
  async (text) => {
    mkdirSync(home.config, { recursive: true });
    writeFileSync(join(home.config, 'settings.json'), text);
    expect((await home.run('settings')).err).toContain('cannot be used');
  },
);

test('a key that every object knows is kept like any other that is not understood', () => {
  home.writeSettings({ toString: 2, constructor: 1 });
  writeSettings(home.config, { bell: false });
  expect(readSettings(home.config).foreign).toEqual({ toString: 2, constructor: 1 });
});
