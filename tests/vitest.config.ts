import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const root = fileURLToPath(new URL('../', import.meta.url));

export default defineConfig({
  root,
  test: {
    // Two is what the smallest machines in use have; more only makes terminals wait for each other.
    maxWorkers: 2,
    projects: [
      {
        extends: true,
        test: {
          name: 'cores',
          include: ['tests/**/*.test.{ts,tsx}'],
          exclude: ['tests/terminal/**'],
          pool: 'threads',
          // Only to end a test that hangs: nothing here is timed, and a busy machine is slow.
          testTimeout: 60_000,
          hookTimeout: 60_000,
          sequence: { groupOrder: 0 },
        },
      },
      {
        extends: true,
        test: {
          name: 'terminal',
          include: ['tests/terminal/**/*.test.{ts,tsx}'],
          pool: 'forks',
          testTimeout: 60_000,
          hookTimeout: 60_000,
          sequence: { groupOrder: 1 },
        },
      },
    ],
  },
});
