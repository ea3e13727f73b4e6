import { defineConfig } from 'vitest/config'

export default defineConfig({
  test: {
    projects: [
      { test: { name: 'unit', include: ['lib/**/*.test.ts', 'seed/**/*.test.ts'] } },
      {
        test: {
          name: 'integration',
          include: ['test/**/*.test.ts'],
          exclude: ['test/bench/**'],
          globalSetup: ['test/postgres.ts'],
          // Real Postgres and real processes on two shared cores.
          testTimeout: 60_000,
          hookTimeout: 120_000,
        },
      },
    ],
  },
})
