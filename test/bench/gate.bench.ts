import { type Bench, median, rounded } from '../../lib/bin/figure.ts'
import { stageGate } from '../../lib/gate/status.ts'
import type { Entity } from '../../lib/record/entity.ts'
import { type ProjectRecord, projectAfter } from '../../lib/record/project-record.ts'
import { all } from '../../lib/record/table.ts'
import {
  aHold,
  aLink,
  anAssembly,
  anId,
  aPart,
  aRecord,
  aStage,
  at,
  engineShop,
  lead,
  owner,
  trimShop,
} from '../builders.ts'

const STAGES = 120
const RUNS = 101
const NAME = 'gate/120-stages'

/** How long the answer for every stage of a car takes after a change, in ms: nothing is remembered from before it. */
export const bench: Bench = {
  names: [NAME],
  async *run(isWanted) {
    if (!isWanted(NAME)) return
    const car = aCar()
    const took = Array.from({ length: RUNS }, (_, run) => {
      const changed = touched(car, run)
      const began = performance.now()
      let conditions = 0
      for (const stage of all(changed.stages)) {
        conditions += stageGate(changed, stage, at(200)).conditions.length
      }
      const ms = performance.now() - began
      if (conditions < STAGES) throw new Error(`The gate asked for ${conditions} things only.`)
      return ms
    })
    yield { name: NAME, value: rounded(median(took)), unit: 'ms', better: 'lower' }
  },
}

/** 120 stages of three shops, two links each, with parts, hold points and assemblies in other hands. */
function aCar(): ProjectRecord {
  const parties = [lead, engineShop, trimShop]
  const id = (n: number) => anId('stg', `n${n}`)
  const assemblies = Array.from({ length: 40 }, (_, n) =>
    anAssembly({ id: anId('asm', `n${n}`), custodian: parties[n % 3] ?? lead }),
  )
  const stages = Array.from({ length: STAGES }, (_, n) =>
    aStage({
      id: id(n),
      number: n + 1,
      party: parties[n % 3] ?? lead,
      assemblies: [anId('asm', `n${n % 40}`), anId('asm', `n${(n * 7) % 40}`)],
      needsOff: [anId('asm', `n${(n * 3) % 40}`)],
      state: n < 40 ? 'signed off' : 'planned',
      endedAt: n < 40 ? at(n) : null,
      signedOffAt: n < 40 ? at(n) : null,
    }),
  )
  const links: Entity[] = stages.flatMap((stage, n) =>
    [n - 1, n - 9]
      .filter((before) => before >= 0)
      .map((before) => aLink({ from: id(before), to: stage.id, leastLagHours: n % 5 })),
  )
  const holds = stages
    .filter((_, n) => n % 6 === 0)
    .map(({ id: stage }) => aHold({ stage, party: owner }))
  const parts = stages
    .filter((_, n) => n % 4 === 0)
    .map(({ id: stage }) => aPart({ stages: [stage] }))
  return aRecord(assemblies, stages, links, holds, parts)
}

/** The record after one stage and one assembly changed. */
function touched(record: ProjectRecord, run: number): ProjectRecord {
  const stage = all(record.stages)[60 + (run % 50)]
  const assembly = all(record.assemblies)[run % 40]
  if (stage === undefined || assembly === undefined) throw new Error('The car is too small.')
  const entities = [
    { ...stage, name: `Run ${run}` },
    { ...assembly, pieces: 1 + run },
  ]
  return projectAfter(record, { version: record.version + 1, entities })
}
