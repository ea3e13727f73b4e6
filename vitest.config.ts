import { defineConfig } from 'vitest/config'

/** Tests that span folders and need neither Postgres nor a server. */
const IN_MEMORY = ['test/invariants*.test.ts', 'test/access-matrix.test.ts', 'test/overlay.test.ts']

export default defineConfig({
  test: {
    projects: [
      {
        test: {
          name: 'unit',
          include: ['lib/**/*.test.ts', 'app/**/*.test.ts', 'seed/**/*.test.ts', ...IN_MEMORY],
        },
      },
      {
        test: {
          name: 'integration',
          include: ['test/**/*.test.ts'],
          exclude: ['test/bench/**', ...IN_MEMORY],
          globalSetup: ['test/postgres.ts'],
          // Real Postgres and real processes on two shared cores.
          testTimeout: 60_000,
          hookTimeout: 120_000,
        },
      },
    ],
  },
})
