import type pg from 'pg'
import type { Entity } from '../lib/record/entity.ts'
import { Instant } from '../lib/record/scalars.ts'
import { anId, aParty, aProject, aShell } from './builders.ts'
import { aShopWithBay, plant } from './plant.ts'
import { anOpenWindow } from './shop-builders.ts'

const RIVALS = 50

/** Shops that all want the one shell, each for its own bay. */
export const rivals = Array.from({ length: RIVALS }, (_, n) => aShopWithBay(`rival${n}`))
/** The shop whose one bay all the cars want. */
export const host = aShopWithBay('host')
/** What all of them want it for. */
export const span = {
  from: Instant.parse('2031-05-05T08:00:00.000Z'),
  to: Instant.parse('2031-05-09T18:00:00.000Z'),
}

/** The project whose shell is wanted, in an open window. */
export const contested = anId('prj', 'contested')
/** A project that many press on at once. */
export const busy = anId('prj', 'busy')
/** Names of cars that all want the host's bay. */
export const cars = Array.from({ length: RIVALS }, (_, n) => `car${n}`)

/** A car of the host's shop, with its shell. */
const aCar = (name: string): Entity[] => {
  const project = anId('prj', name)
  const lead = anId('pty', name)
  return [
    aProject({ id: project, name }),
    aParty({ id: lead, project, lead: true, shop: host.shop }),
    aShell({ id: anId('asm', name), project, custodian: lead }),
  ]
}

/** Puts the shops and the cars into an empty database. */
export async function plantGround(db: Pick<pg.Pool, 'query'>): Promise<void> {
  await plant(db, host.entities)
  for (const { entities } of rivals) await plant(db, entities)
  await plant(db, [
    ...aCar('contested'),
    anOpenWindow({ project: contested, assembly: anId('asm', 'contested'), ...span }),
    ...rivals.map(({ shop }, n) =>
      aParty({ id: anId('pty', `rival${n}`), project: contested, shop }),
    ),
  ])
  await plant(db, aCar('busy'))
  for (const car of cars) await plant(db, aCar(car))
}
