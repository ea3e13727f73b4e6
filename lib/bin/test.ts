import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import * as z from 'zod/mini'
import { chromium } from './chromium.ts'
import { build, Stop, say } from './prepare.mjs'
import { CHECKS, failing, passes } from './steps.ts'

// `npm test`: all checks, then all tests, on a database of their own. The last line has the sum.

type Tally = { readonly passed: number; readonly failed: number }

const VitestReport = z.object({
  numPassedTests: z.int(),
  numFailedTests: z.int(),
  numPendingTests: z.int(),
  numTodoTests: z.int(),
  success: z.boolean(),
})

const PlaywrightReport = z.object({
  stats: z.object({
    expected: z.int(),
    unexpected: z.int(),
    flaky: z.int(),
    skipped: z.int(),
  }),
  errors: z.array(z.unknown()),
})

const reports = mkdtempSync(join(tmpdir(), 'fettleyard-reports-'))
const faults: string[] = []
const tallies: Tally[] = []
try {
  const browser = await chromium()
  faults.push(...(await failing(CHECKS)))
  await build()
  tallies.push(await unitAndIntegration())
  tallies.push(await endToEnd(browser))
} catch (error) {
  if (!(error instanceof Stop)) throw error
  say(error.message)
  faults.push('preparation')
} finally {
  rmSync(reports, { recursive: true, force: true })
}

const passed = tallies.reduce((sum, tally) => sum + tally.passed, 0)
// A check that failed counts as one test that did: the sum must never look better than the run.
const failed = tallies.reduce((sum, tally) => sum + tally.failed, 0) + faults.length
if (faults.length > 0) say(`failed besides tests: ${faults.join(', ')}.`)
process.exitCode = failed === 0 && passed > 0 ? 0 : 1
console.log(`${passed} passed, ${failed} failed`)

async function unitAndIntegration(): Promise<Tally> {
  const file = join(reports, 'vitest.json')
  const args = ['run', '--reporter=dot', '--reporter=json', `--outputFile.json=${file}`]
  const ok = await passes({ name: 'unit and integration tests', command: 'vitest', args })
  const report = read(file, VitestReport)
  if (report === undefined) return noReport('unit and integration tests')
  if (!ok && report.numFailedTests === 0)
    faults.push('unit and integration tests (outside any test)')
  return {
    passed: report.numPassedTests,
    // Nothing is skipped here: what isn't run isn't known to work.
    failed: report.numFailedTests + report.numPendingTests + report.numTodoTests,
  }
}

async function endToEnd(browser: string): Promise<Tally> {
  const file = join(reports, 'playwright.json')
  const step = {
    name: 'end-to-end tests',
    command: 'playwright',
    args: ['test', '--config', 'e2e/playwright.config.ts', '--reporter=list,json'],
  }
  const ok = await passes(step, { CHROMIUM: browser, PLAYWRIGHT_JSON_OUTPUT_NAME: file })
  const report = read(file, PlaywrightReport)
  if (report === undefined) return noReport('end-to-end tests')
  const { expected, unexpected, flaky, skipped } = report.stats
  if (!ok && unexpected + flaky + skipped === 0) faults.push('end-to-end tests (outside any test)')
  return { passed: expected, failed: unexpected + flaky + skipped }
}

function noReport(name: string): Tally {
  faults.push(`${name} (no report)`)
  return { passed: 0, failed: 0 }
}

function read<T extends z.core.$ZodType>(file: string, shape: T): z.output<T> | undefined {
  if (!existsSync(file)) return undefined
  const read = z.safeParse(shape, JSON.parse(readFileSync(file, 'utf8')))
  return read.success ? read.data : undefined
}
