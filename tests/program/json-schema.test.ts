import { readdirSync, readFileSync } from 'node:fs';
import { Ajv } from 'ajv';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { programJsonSchema } from '../../src/program/format-guide.ts';
import { readProgram } from '../../src/program/read-program.ts';
import { PLAIN, withChange } from './program-text.ts';

const folder = new URL('../../programs/', import.meta.url);
const shipped = readdirSync(folder).filter((file) => file.endsWith('.yaml'));
const textOf = (file: string) => readFileSync(new URL(file, folder), 'utf8');

/** What an editor would say of a text: it knows the schema alone. */
const asEditorsRead = new Ajv({ strict: true, strictRequired: false }).compile(programJsonSchema());
const fits = (text: string): boolean => asEditorsRead(parse(text));

test('the shipped schema is that of the code (vitest -u writes it anew)', async () => {
  const text = `${JSON.stringify(programJsonSchema(), null, 2)}\n`;
  await expect(text).toMatchFileSnapshot('../../programs/program.schema.json');
});

test('the schema is of the draft that editors know best', () => {
  expect(programJsonSchema().$schema).toBe('http://json-schema.org/draft-07/schema#');
});

test.each(shipped)('%s names the schema beside it, and fits it', (file) => {
  expect(textOf(file).split('\n')[0]).toBe('# yaml-language-server: $schema=./program.schema.json');
  expect(fits(textOf(file))).toBe(true);
});

describe('editors and the program agree', () => {
  test.each([
    ['as it is', 'kg', 'kg'],
    ['one number', 'reps: 5-8', 'reps: 5'],
    ['an en dash', 'reps: 5-8', 'reps: 5–8'],
    ['no reps', 'reps: 5-8', 'reps: 0'],
    ['letters', 'reps: 5-8', 'reps: five'],
    ['a range of three', 'reps: 5-8', 'reps: 5-8-9'],
    ['one rest', 'rest: 3-5 min', 'rest: 90 s'],
    ['mixed units', 'rest: 3-5 min', 'rest: 90 s - 2 min'],
    ['decimals', 'rest: 3-5 min', 'rest: 1.5-2 min'],
    ['no unit', 'rest: 3-5 min', 'rest: 3-5'],
    ['a bare number', 'rest: 3-5 min', 'rest: 90'],
    ['a time of day', 'rest: 3-5 min', 'rest: 1:30'],
    ['another unit', 'start: 80', 'start: 45 lb'],
    ['a comma', 'start: 80', 'start: 82,5 kg'],
    ['stone', 'start: 80', 'start: 80 stone'],
    ['a number in quotes', 'start: 80', 'start: "80"'],
    ['an unknown key', 'reps: 5-8', 'rep: 5-8'],
    ['an unknown muscle', 'chest: 0.5', 'chst: 0.5'],
    ['a third', 'chest: 0.5', 'chest: 0.33'],
    ['another aim', 'aim: cut', 'aim: bulk'],
    ['a rate', 'aim: cut', 'aim: cut\nrate: 0.3-0.7'],
    ['one rate', 'aim: cut', 'aim: cut\nrate: 0.7'],
    ['yes', 'start: 80', 'start: 80\n        warm_up: yes'],
    ['false', 'start: 80', 'start: 80\n        warm_up: false'],
    ['no name', 'name: Lean spring\n', ''],
    ['no sets', 'sets: 3\n        reps: 5-8', 'reps: 5-8'],
    ['no reps at all', 'sets: 3\n        reps: 5-8', 'sets: 3'],
    ['a day', 'aim: cut', 'aim: cut\ncut_from: 2026-11-25'],
    ['words for a day', 'aim: cut', 'aim: cut\ncut_from: last Monday'],
  ])('%s', (_, old, by) => {
    const text = withChange(old, by);
    expect(fits(text)).toBe(readProgram(text, 'plan.yaml').ok);
  });

  test('of the example itself', () => {
    expect(fits(PLAIN)).toBe(true);
  });
});
