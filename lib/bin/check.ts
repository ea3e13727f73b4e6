import { say } from './prepare.mjs'
import { CHECKS, DEPENDENCY_RULE, failing } from './steps.ts'

// `npm run check`: everything that can be said of the sources without running them.
const failed = await failing([...CHECKS, DEPENDENCY_RULE])
say(failed.length === 0 ? 'all checks passed.' : `failed: ${failed.join(', ')}.`)
process.exitCode = failed.length === 0 ? 0 : 1
