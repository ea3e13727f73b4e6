import { spawnSync } from 'node:child_process'
import { existsSync } from 'node:fs'
import { run, Stop, say } from './prepare.mjs'

const USUAL = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/usr/bin/google-chrome-stable',
  '/snap/bin/chromium',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
]

/**
 * Finds the browser for the end-to-end tests: CHROMIUM, else an installed one, else Debian's, which it installs.
 * @throws {Stop} saying what to do when there is none to be had
 */
export async function chromium(): Promise<string> {
  const asked = process.env.CHROMIUM
  if (asked) {
    if (existsSync(asked)) return asked
    throw new Stop(
      `CHROMIUM names ${asked}, which is not there. Set it to the path of a Chromium, or leave it out.`,
    )
  }
  const found = USUAL.find(existsSync)
  if (found !== undefined) return found
  if (process.getuid?.() === 0 && spawnSync('apt-get', ['--version']).status === 0) {
    say('installing Chromium by apt-get (a minute or two) …')
    const quiet = { DEBIAN_FRONTEND: 'noninteractive' }
    await run('apt-get', ['update', '-qq'], quiet)
    await run('apt-get', ['install', '-y', '-qq', '--no-install-recommends', 'chromium'], quiet)
    const installed = USUAL.find(existsSync)
    if (installed !== undefined) return installed
  }
  throw new Stop(
    'The end-to-end tests need a Chromium, and there is none in the usual places. Install one ' +
      '(Debian: `sudo apt-get install chromium`), or set CHROMIUM to the path of yours, then run `npm test` again.',
  )
}
