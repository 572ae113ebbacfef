import { describe, expect, test } from 'vitest';
import { CATALOGUE } from '../../src/program/catalogue.ts';
import { formatGuide, programJsonSchema } from '../../src/program/format-guide.ts';
import { programOf } from './check-report.ts';

const guide = formatGuide();

test('the shipped guide is that of the code (vitest -u writes it anew)', async () => {
  await expect(`${guide}\n`).toMatchFileSnapshot('../../programs/README.md');
});

test('its example is a program', () => {
  const [, example = ''] = /```yaml\n([\s\S]+?)```/.exec(guide) ?? [];
  expect(programOf(example).days).toHaveLength(1);
});

/** Every key that a program file may hold. */
function keysIn(schema: object): readonly string[] {
  return Object.entries(schema).flatMap(([name, value]) => {
    if (typeof value !== 'object' || value === null) return [];
    return [...(name === 'properties' ? Object.keys(value) : []), ...keysIn(value)];
  });
}

describe('it leaves nothing out', () => {
  test.each([...new Set(keysIn(programJsonSchema()))])('the key %s', (key) => {
    expect(guide).toContain(`\`${key}\``);
  });

  test('every lift', () => {
    expect([...CATALOGUE.keys()].filter((key) => !guide.includes(`| \`${key}\` |`))).toEqual([]);
  });
});
