import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import Ajv from 'ajv';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import * as z from 'zod';
import { COMMANDS } from '../../src/commands/command-table.ts';
import { SCHEMAS } from '../../src/commands/schemas.ts';
import { AHome } from './a-home.ts';
import { doSession, withTinyProgram } from './a-session.ts';

let home: AHome;
beforeEach(() => {
  home = new AHome();
  withTinyProgram(home);
});
afterEach(() => home.throwAway());

// Formats (dates) are zod's own check in the test below; ajv leaves them to a plugin.
const ajv = new Ajv({ strict: true, allowUnionTypes: true, validateFormats: false });

/** Every read command, as it prints JSON; weigh and settings change something as well. */
const READS: Readonly<Record<string, readonly string[]>> = {
  today: ['today', '--json'],
  load: ['load', '62.5', '--json'],
  estimate: ['estimate', '--load', '100', '--reps', '5', '--reserve', '2', '--json'],
  weigh: ['weigh', '82.4', '--json'],
  review: ['review', '--json'],
  history: ['history', '--json'],
  export: ['export', '--as', 'json'],
  gear: ['gear', '--json'],
  lifts: ['lifts', 'row', '--json'],
  settings: ['settings', '--json'],
  rehearse: ['rehearse', '--weeks', '3', '--json'],
  check: ['check', '--json'],
  doctor: ['doctor', '--json'],
  import: ['import', 'weights.csv', '--json'],
  amend: ['amend', 'ID', '--delete', '--json'],
};

const WEIGHTS = 'date,body_mass,unit\n2026-01-05,84.2,kg\n2026-01-06,84.1,kg\n';

/** Homes from empty to one with sessions, weigh-ins, a deletion and gear of its own. */
const LIVES: Readonly<Record<string, (home: AHome) => Promise<void> | void>> = {
  'at first': () => {},
  'with a session that is open': (home) => doSession(home, { sets: 1, close: false }),
  'after some weeks': async (home) => {
    await home.run('gear', '--plates', '45lb=2, 20kg=5', '--measured', '10kg=9.9');
    await home.run('gear', '--stacks', 'pulldown=5..80 by 5');
    for (let week = 0; week < 6; week += 1) {
      doSession(home);
      await home.run('weigh', String(84 - week / 2));
      home.wall += 3 * 86_400_000;
    }
    await home.run('settings', 'weight-advice', 'yes');
  },
};

test('every document of another command has an example here', () => {
  expect(Object.keys(READS).toSorted()).toEqual(Object.keys(SCHEMAS).toSorted());
});

test('every command that prints a document has a schema', () => {
  // These print today, a page of their own, or only words.
  const without = ['train', 'demo', 'schema', 'complete', 'draft', 'help'];
  const names = COMMANDS.map(({ name }) => name).filter((name) => !without.includes(name));
  expect(names.filter((name) => !(name in SCHEMAS))).toEqual([]);
});

describe.each(Object.entries(LIVES))('%s', (_, live) => {
  test.each(Object.entries(READS))(
    'what %s prints fits its schema, key by key',
    async (name, words) => {
      await live(home);
      writeFileSync(join(home.folder, 'weights.csv'), WEIGHTS);
      const added = await home.json('import', 'weights.csv');
      const typed = words.map((word) => (word === 'ID' ? String(added.id) : word));
      const { out, status } = await home.run(...typed);
      expect([0, 1]).toContain(status);
      const document: unknown = JSON.parse(out);
      const printed = JSON.parse((await home.run('schema', name)).out) as Record<string, unknown>;
      const fits = ajv.compile(printed);
      expect([fits(document), fits.errors]).toEqual([true, null]);
      const schema = await SCHEMAS[name]?.load();
      // Output schemas close every object: a key that is not documented fails here.
      const closed = ajv.compile(z.toJSONSchema(schema as z.ZodType, { target: 'draft-7' }));
      expect([closed(document), closed.errors]).toEqual([true, null]);
      expect(schema?.safeParse(document).error).toBeUndefined();
    },
  );
});

test('a schema is draft-7, with a title, and leaves room for keys to come', async () => {
  const schema = JSON.parse((await home.run('schema', 'today')).out);
  expect(schema.$schema).toBe('http://json-schema.org/draft-07/schema#');
  expect(schema.title).toContain('today --json');
  expect(schema.additionalProperties).toBeUndefined();
  expect(schema.required).toContain('exercises');
});

test('the schema of programs is there for editors', async () => {
  expect((await home.run('schema', 'program')).out).toContain('draft-07');
});

test('another name is refused with the one that was meant', async () => {
  const { status, err } = await home.run('schema', 'todya');
  expect([status, err]).toEqual([2, expect.stringContaining('Did you mean "today"?')]);
});

test('every line of a journal fits the schema of journals', async () => {
  doSession(home);
  await home.run('weigh', '82.4');
  await home.run('gear', '--plates', '20kg=4');
  const schema = JSON.parse((await home.run('schema', 'journal')).out);
  const fits = ajv.compile(schema);
  const folder = join(home.data, 'journal');
  const lines = readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.jsonl'))
    .flatMap((name) => readFileSync(join(folder, name), 'utf8').trimEnd().split('\n'));
  expect(lines.length).toBeGreaterThan(5);
  for (const line of lines)
    expect([fits(JSON.parse(line.slice(9))), fits.errors]).toEqual([true, null]);
  expect(fits({ ...JSON.parse(lines[0]?.slice(9) ?? ''), type: 'no-such-thing' })).toBe(false);
});
