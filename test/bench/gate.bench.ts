import { against, type Bench, median } from '../../lib/bin/figure.ts'
import { stageGate } from '../../lib/gate/status.ts'
import { entitiesOf } from '../../lib/record/any-entity.ts'
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

/** Stages of a car, and how often the answer is taken. */
const CARS = [
  { name: 'gate/120-stages', stages: 120, runs: 101 },
  { name: 'gate/10000-stages-one-change', stages: 10_000, runs: 7 },
]

/**
 * How long the answer for every stage of a car takes after a change, in ms: nothing is remembered from before it. Beside it,
 * by turns, what the machine takes to read the same record out of its JSON.
 */
export const bench: Bench = {
  names: CARS.map(({ name }) => name),
  async *run(isWanted) {
    for (const { name, stages, runs } of CARS) {
      if (!isWanted(name)) continue
      const car = aCar(stages)
      const text = JSON.stringify(entitiesOf(car))
      const took: { gate: number[]; json: number[] } = { gate: [], json: [] }
      for (let run = 0; run < runs; run++) {
        const changed = touched(car, run)
        took.gate.push(msOf(() => answerFor(changed)))
        took.json.push(msOf(() => JSON.parse(text)))
      }
      yield against(name, 'ms', 'lower', median(took.gate), median(took.json))
    }
  },
}

/** @throws where the gate asks for too little to be believed */
function answerFor(record: ProjectRecord): void {
  let conditions = 0
  for (const stage of all(record.stages)) {
    conditions += stageGate(record, stage, at(200)).conditions.length
  }
  const stages = record.stages.rows.size
  if (conditions < stages) throw new Error(`The gate asked ${stages} stages for ${conditions}.`)
}

function msOf(work: () => unknown): number {
  const began = performance.now()
  work()
  return performance.now() - began
}

/** Stages of three shops, two links each, with parts, hold points and assemblies in other hands; a third are done. */
function aCar(count: number): ProjectRecord {
  const finished = count / 3
  const parties = [lead, engineShop, trimShop]
  const id = (n: number) => anId('stg', `n${n}`)
  const assemblies = Array.from({ length: 40 }, (_, n) =>
    anAssembly({ id: anId('asm', `n${n}`), custodian: parties[n % 3] ?? lead }),
  )
  const stages = Array.from({ length: count }, (_, n) =>
    aStage({
      id: id(n),
      number: n + 1,
      party: parties[n % 3] ?? lead,
      assemblies: [anId('asm', `n${n % 40}`), anId('asm', `n${(n * 7) % 40}`)],
      needsOff: [anId('asm', `n${(n * 3) % 40}`)],
      state: n < finished ? 'signed off' : 'planned',
      endedAt: n < finished ? at(n) : null,
      signedOffAt: n < finished ? at(n) : null,
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
