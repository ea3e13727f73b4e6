import type { Entity } from '../lib/record/entity.ts'
import type { ProjectRecord } from '../lib/record/project-record.ts'
import {
  aLink,
  anEngine,
  anId,
  aRecord,
  aStage,
  at,
  engineShop,
  lead,
  trimShop,
} from './builders.ts'

/**
 * A car of so many stages at three shops, half of them the lead's, each with one or two before it. A third is over, two are in work;
 * a working week at a time goes by between their numbers.
 */
export function aCarOfStages(count: number): ProjectRecord {
  const over = Math.floor(count / 3)
  const parties = [lead, engineShop, lead, trimShop]
  const id = (n: number) => anId('stg', `n${n}`)
  const stages = Array.from({ length: count }, (_, n) => {
    const begun = n === over || n === over + 1
    return aStage({
      id: id(n),
      number: n + 1,
      name: NAMES[n % NAMES.length] ?? 'A stage',
      party: parties[n % 4] ?? lead,
      hoursLikely: n % 11 === 7 ? null : 2 + ((n * 7) % 38),
      state: n < over ? 'signed off' : begun ? 'in work' : 'planned',
      startedAt: n < over + 2 ? at((n - over) * 56) : null,
      endedAt: n < over ? at((n - over) * 56 + 10 + (n % 50)) : null,
      signedOffAt: n < over ? at((n - over) * 56 + 70) : null,
    })
  })
  const links: Entity[] = stages.flatMap((stage, n) =>
    [n - 1 - (n % 5), n - 4 - (n % 7)]
      .filter((before) => before >= 0)
      .map((before) =>
        aLink({ from: id(before), to: stage.id, leastLagHours: n % 6 === 0 ? 72 : 0 }),
      ),
  )
  return aRecord(anEngine(), stages, links)
}

const NAMES = [
  'Strip the shell',
  'Sills cut out and let in, both sides',
  'Epoxy',
  'Carburettors re-bushed and set up on the bench',
  'Headlining in the empty shell',
  'Front wings, bonnet and boot lid: colour and lacquer',
  'Loom in',
  'Engine and gearbox into the bay',
  'Brakes',
]
