import base from './playwright.config.ts'

/** Pictures of every screen, not tests: `npm run shots`. */
const shots: typeof base = {
  ...base,
  reporter: 'list',
  projects: [
    { name: 'loading', testMatch: 'loading.spec.ts' },
    { name: 'shots', testMatch: 'demo/shots.ts', dependencies: ['loading'] },
  ],
}
export default shots
