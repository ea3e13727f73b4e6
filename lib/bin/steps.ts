import { spawn } from 'node:child_process'
import { environment, root, say } from './prepare.mjs'

/** One check of the sources: a tool, its arguments, and what it looks at. */
export type Step = {
  readonly name: string
  readonly command: string
  readonly args: readonly string[]
}

/** Makes the types that Next derives from the pages; the compiler needs them. */
const PAGE_TYPES: Step = { name: 'types of the pages', command: 'next', args: ['typegen'] }

/** What tools say of the sources without running them. */
export const CHECKS: readonly Step[] = [
  PAGE_TYPES,
  { name: 'type check', command: 'tsc', args: ['--noEmit'] },
  { name: 'lint and format', command: 'biome', args: ['check', '--error-on-warnings', '.'] },
  {
    name: 'unused code and packages',
    command: 'knip',
    args: ['--config', '.knip.json', '--no-progress'],
  },
]

/** A test, and so among all tests too. */
export const DEPENDENCY_RULE: Step = {
  name: 'dependency rule',
  command: 'vitest',
  args: ['run', 'test/imports.test.ts'],
}

/**
 * Runs a step to its end, its output on ours.
 * @returns whether it passed
 */
export function passes(step: Step, extra: Readonly<Record<string, string>> = {}): Promise<boolean> {
  say(`── ${step.name}`)
  return new Promise((resolve) => {
    const child = spawn(step.command, step.args, {
      cwd: root,
      env: { ...environment(), NEXT_TELEMETRY_DISABLED: '1', ...extra },
      stdio: ['ignore', 'inherit', 'inherit'],
    })
    child.once('error', (error) => {
      say(`${step.command} could not be run: ${error.message}`)
      resolve(false)
    })
    child.once('exit', (code) => resolve(code === 0))
  })
}

/** Runs the steps one after another. @returns the names of those that failed */
export async function failing(steps: readonly Step[]): Promise<readonly string[]> {
  const failed: string[] = []
  for (const step of steps) if (!(await passes(step))) failed.push(step.name)
  return failed
}
