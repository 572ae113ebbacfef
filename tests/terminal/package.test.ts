import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { ROOT } from '../../src/tooling/root.mjs';

const DIST = join(ROOT, 'dist');
const MEGABYTE = 1_000_000;
const notices = readFileSync(join(DIST, 'NOTICES.txt'), 'utf8').split(/\n-{72}\n/);
const manifest = JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8'));

describe('what is published', () => {
  test('runs without any other package', () => {
    expect(manifest.dependencies).toBeUndefined();
    expect(manifest.optionalDependencies).toBeUndefined();
    expect(manifest.files).toContain('dist');
  });

  test('is no larger than three megabytes', () => {
    // Parts of earlier builds stay for a day; those written with the entry are one build.
    const built = statSync(join(DIST, 'cli.js')).mtimeMs;
    const parts = readdirSync(DIST).map((name) => statSync(join(DIST, name)));
    const together = parts.filter(({ mtimeMs }) => Math.abs(built - mtimeMs) < 10_000);
    expect(together.length).toBeGreaterThan(20);
    expect(together.reduce((sum, { size }) => sum + size, 0)).toBeLessThan(3 * MEGABYTE);
  });

  test.each(['ink', 'react', 'conf', 'commander', 'yaml', 'zod', 'temporal-polyfill', 'preact'])(
    'carries the licence of %s',
    (library) => {
      const notice = notices.find((each) => each.trim().startsWith(`${library} `));
      expect(notice).toMatch(/permission|redistribution/i);
    },
  );

  test('names a licence for every library', () => {
    for (const notice of notices) expect(notice.trim()).toMatch(/^@?[\w./-]+ \d+\.\d+\.\d+.*, \S/);
  });
});
