import { against, type Bench, median } from '../../lib/bin/figure.ts'
import { wallOf } from '../../lib/plan/drawn/wall.ts'
import { layOut } from '../../lib/plan/lay-out.ts'
import { entitiesOf } from '../../lib/record/any-entity.ts'
import type { ProjectRecord } from '../../lib/record/project-record.ts'
import { all } from '../../lib/record/table.ts'
import { aCarOfStages } from '../a-car-of-stages.ts'
import { at, engineShop, lead, trimShop } from '../builders.ts'

/** Stages of a car, and how often it is drawn. */
const CARS = [
  { name: 'build-order/draw-120', stages: 120, runs: 51 },
  { name: 'build-order/draw-1000', stages: 1_000, runs: 11 },
]

/**
 * How long a build order takes from the record to places on the wall, in ms, nothing remembered: gate, critical path, rows and
 * names. Beside it, by turns, what the machine takes to read the same record out of its JSON.
 */
export const bench: Bench = {
  names: CARS.map(({ name }) => name),
  async *run(isWanted) {
    for (const { name, stages, runs } of CARS) {
      if (!isWanted(name)) continue
      const car = aCarOfStages(stages)
      const text = JSON.stringify(entitiesOf(car))
      const took: { draw: number[]; json: number[] } = { draw: [], json: [] }
      for (let run = 0; run < runs; run++) {
        const fresh = { ...car }
        took.draw.push(msOf(() => draw(fresh)))
        took.json.push(msOf(() => JSON.parse(text)))
      }
      yield against(name, 'ms', 'lower', median(took.draw), median(took.json))
    }
  },
}

/** @throws where not every stage is on the wall */
function draw(car: ProjectRecord): void {
  const stages = all(car.stages)
  const place = { zoom: 'week', now: at(0), zone: 'Europe/London' } as const
  const laidOut = layOut(car, [], at(0))
  const wall = wallOf(stages, all(car.links), laidOut, [lead, engineShop, trimShop], place)
  if (wall.tiles.size !== stages.length)
    throw new Error(`Of ${stages.length} stages ${wall.tiles.size} are drawn.`)
}

function msOf(work: () => unknown): number {
  const began = performance.now()
  work()
  return performance.now() - began
}
