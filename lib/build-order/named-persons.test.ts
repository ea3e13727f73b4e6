import { describe, expect, it } from 'vitest'
import { anEngine, anId, aRecord, at, engineShop, owner, project } from '../../test/builders.ts'
import { readBuildOrder } from './csv/read-build-order.ts'
import { namedPersons } from './named-persons.ts'

const odile = anId('psn', 'odile')
const ines = anId('psn', 'ines')
const record = aRecord(anEngine(), {
  kind: 'participant',
  id: anId('ptc', 'ines'),
  project,
  party: owner,
  person: ines,
  since: at(0),
  removedAt: null,
})

describe('who a build order may name', () => {
  const names = { [odile]: 'Odile Marsh', [ines]: 'Ines Halloran' }
  const members = [
    { person: odile, party: engineShop },
    { person: anId('psn', 'erased'), party: engineShop },
    { person: ines, party: owner },
  ]

  it('is everyone of the project and of its shops’ books whose name is known, once', () => {
    expect(namedPersons(record, members, names)).toEqual([
      { person: ines, party: owner, name: 'Ines Halloran' },
      { person: odile, party: engineShop, name: 'Odile Marsh' },
    ])
  })

  it('holds by a hand of a shop, named in the sheet', () => {
    const sheet = 'stage,shop,assembly,hold\nRun it in,Bexwater Engines,Engine,hold: Odile Marsh\n'
    const people = namedPersons(record, members, names)
    const { faults, input } = readBuildOrder(sheet, { record, people })
    expect(faults).toEqual([])
    expect(input?.holds).toMatchObject([{ party: engineShop, person: odile }])
  })
})
