import { chromium } from './chromium.ts'
import { Stop, say } from './prepare.mjs'
import { passes } from './steps.ts'

// `npm run shots`: a picture of every screen, phone and desk, in `shots/`; `-- --readme`: the README's pictures.

try {
  const readme = process.argv.includes('--readme')
  const step = {
    name: 'pictures of every screen',
    command: 'playwright',
    args: ['test', '--config', 'e2e/shots.config.ts'],
  }
  const ok = await passes(step, {
    CHROMIUM: await chromium(),
    FETTLEYARD_SHOTS: readme ? 'readme' : 'all',
  })
  if (ok) say(`the pictures are in ${readme ? 'e2e/pictures/' : 'shots/'}.`)
  process.exitCode = ok ? 0 : 1
} catch (error) {
  if (!(error instanceof Stop)) throw error
  say(error.message)
  process.exitCode = 1
}
