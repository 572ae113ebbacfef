import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, expect } from 'vitest';

/** Runs before each test file; what it does is told by `Met`. */

const folder = process.env.HOLDFAST_MET;
const met = new Set<number>();
const start = performance.now();
if (folder) Object.assign(globalThis, { met: (id: number) => met.add(id) });

afterAll(() => {
  if (!folder) return;
  const { testPath } = expect.getState();
  const name = `${Buffer.from(testPath ?? '')
    .toString('base64url')
    .slice(-120)}.json`;
  const ms = performance.now() - start;
  writeFileSync(join(folder, name), JSON.stringify({ test: testPath, ms, ids: [...met] }));
});
