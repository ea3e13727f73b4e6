import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { needsProof } from './needs-proof.ts'

/** Commands whose rules ask for a fresh proof, by their sources. */
const asking = ['shop', 'custody', 'parts', 'money', 'gate', 'build-order'].flatMap((folder) => {
  const here = join(import.meta.dirname, '..', folder)
  return readdirSync(here, { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.ts') && !file.endsWith('.test.ts'))
    .filter((file) => readFileSync(join(here, file), 'utf8').includes('proofConditions('))
})

describe('a yes that wants proof', () => {
  it('is one of those that are never queued', () => {
    expect(asking.toSorted()).toEqual(['change-order-approve.ts', 'project-describe.ts'])
    expect(needsProof('changeOrder.approve', { changeOrder: 'cho_x' })).toBe(true)
    expect(needsProof('project.describe', { standingConsentTotal: null })).toBe(true)
  })

  it('is not what only describes the car', () => {
    expect(needsProof('project.describe', { name: 'Averley' })).toBe(false)
    expect(needsProof('stage.start', { stage: 'stg_x' })).toBe(false)
  })
})
