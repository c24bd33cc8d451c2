import { availableParallelism } from 'node:os';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    // On two cores one worker alone leaves a core idle.
    maxWorkers: Math.max(2, availableParallelism() - 1),
    reporters: ['default', './scripts/summary-reporter.ts'],
    projects: [
      {
        test: {
          name: 'unit',
          setupFiles: ['tests/support/properties.ts'],
          include: ['tests/**/*.test.ts'],
          exclude: ['tests/db/**', 'tests/api/**', 'tests/browser/**'],
        },
      },
      {
        test: {
          name: 'pglite',
          setupFiles: ['tests/support/properties.ts'],
          include: ['tests/db/**/*.test.ts', 'tests/api/**/*.test.ts'],
          env: { TEST_DRIVER: 'pglite' },
          testTimeout: 60_000,
          hookTimeout: 120_000,
        },
      },
      {
        test: {
          name: 'server',
          setupFiles: ['tests/support/properties.ts'],
          include: ['tests/db/**/*.test.ts', 'tests/api/**/*.test.ts'],
          env: { TEST_DRIVER: 'server' },
          globalSetup: ['tests/support/postgres-server.ts'],
          testTimeout: 60_000,
          hookTimeout: 120_000,
        },
      },
      {
        test: {
          name: 'browser',
          include: ['tests/browser/**/*.test.ts'],
          globalSetup: ['tests/support/chromium.ts'],
          testTimeout: 120_000,
          hookTimeout: 180_000,
        },
      },
    ],
  },
});
