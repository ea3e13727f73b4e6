import { defineConfig, devices } from '@playwright/test'
import { FLAGS } from './flags.ts'

export default defineConfig({
  testDir: '.',
  outputDir: '../test-results',
  globalSetup: './build.ts',
  // Each worker has a server and a browser of its own; the machine may have two cores.
  workers: 1,
  retries: 0,
  forbidOnly: true,
  timeout: 60_000,
  // The parts of the look as they were when somebody last looked at them: `npx playwright test -c e2e parts -u` renews them.
  snapshotPathTemplate: '{testDir}/pictures/parts/{arg}{ext}',
  projects: [
    {
      name: 'empty',
      testMatch: ['first-visit.spec.ts', 'parts.spec.ts', 'set-up.spec.ts', 'theme.spec.ts'],
    },
    { name: 'loading', testMatch: 'loading.spec.ts' },
    { name: 'demonstration', testMatch: 'demo/*.spec.ts', dependencies: ['loading'] },
  ],
  use: {
    ...devices['Pixel 7'],
    viewport: { width: 390, height: 844 },
    locale: 'en-GB',
    timezoneId: 'Europe/London',
    trace: 'retain-on-failure',
    launchOptions: { executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium', args: FLAGS },
  },
})
