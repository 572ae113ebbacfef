import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';
import { BaseSequencer, type TestSpecification } from 'vitest/node';

/** Runs test files in the order of a list: those that fail soonest come first. */
class AsListed extends BaseSequencer {
  override sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const list = process.env.HOLDFAST_TESTS;
    const order: string[] = list ? JSON.parse(readFileSync(list, 'utf8')) : [];
    const place = ({ moduleId }: TestSpecification) =>
      order.findIndex((name) => moduleId.endsWith(name));
    return Promise.resolve(files.toSorted((a, b) => place(a) - place(b)));
  }
}

/** The tests that need no terminal, as `tests/vitest.config.ts` has them. */
export default defineConfig({
  root: fileURLToPath(new URL('../../', import.meta.url)),
  test: {
    include: ['tests/**/*.test.{ts,tsx}'],
    exclude: ['tests/terminal/**'],
    setupFiles: ['tests/mutants/note-met.ts'],
    pool: 'threads',
    testTimeout: 60_000,
    hookTimeout: 60_000,
    sequence: { sequencer: AsListed },
  },
});
