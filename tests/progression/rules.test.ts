import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { progressionRules } from '../../src/progression/rules/progression-rules.ts';

const SRC = new URL('../../src/progression/', import.meta.url);

function sources(folder = SRC): readonly string[] {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) =>
    entry.isDirectory() ? [] : [readFileSync(new URL(entry.name, folder), 'utf8')],
  );
}

describe('the table of rules', () => {
  it('names every rule once', () => {
    const keys = progressionRules.map(({ key }) => key);
    expect(new Set(keys).size).toBe(keys.length);
    expect(keys.length).toBeGreaterThan(40);
  });

  it('gives each a source and how well founded it is', () => {
    for (const { key, source, standing } of progressionRules) {
      expect(source.length, key).toBeGreaterThan(3);
      expect(['printed', 'common practice', 'ours']).toContain(standing);
      if (standing === 'common practice' || source === 'ours') continue;
      expect(source, key).toMatch(/ours|\d{4}/);
    }
  });

  it('has no rule that nothing uses', () => {
    const code = sources().join('\n');
    for (const { key } of progressionRules) expect(code, key).toContain(`'${key}'`);
  });
});
