import type pg from 'pg'
import type { Entity } from '../lib/record/entity.ts'
import { aDatabase } from './a-database.ts'
import { aYard, type TestYard } from './a-yard.ts'
import { aPool, plant } from './plant.ts'
import { cast } from './see-cast.ts'
import { samples } from './see-samples.ts'

/** A yard whose database holds the samples and the cast of `see-samples.ts`, and what else a test needs. */
export type PlantedYard = {
  readonly databaseUrl: string
  readonly pool: pg.Pool
  readonly yard: TestYard
  readonly close: () => Promise<void>
}

/** Opens one. Close it in `afterAll`. */
export async function aPlantedYard(...further: Entity[]): Promise<PlantedYard> {
  const database = await aDatabase()
  const pool = aPool(database.url)
  await plant(pool, [...Object.values(samples), ...cast, ...further])
  const yard = await aYard(database.url)
  return {
    databaseUrl: database.url,
    pool,
    yard,
    async close() {
      await yard.close()
      await pool.end()
      await database.drop()
    },
  }
}
