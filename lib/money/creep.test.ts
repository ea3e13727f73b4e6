import { describe, expect, it } from 'vitest'
import {
  aChangeLine,
  aChangeOrder,
  anEstimateLine,
  anId,
  aParty,
  aRecord,
  at,
  engineShop,
  lead,
} from '../../test/builders.ts'
import { Minor } from '../record/scalars.ts'
import { creepOf } from './creep.ts'

const shops = [
  aParty({ id: lead, role: 'shop', lead: true, bills: 'owner' }),
  aParty({ id: engineShop, role: 'shop', lead: false, bills: 'owner' }),
]
const yes = (name: string, hours: number, net: number, over = {}) => {
  const order = aChangeOrder({
    id: anId('cho', name),
    state: 'approved',
    answeredAt: at(hours),
    ...over,
  })
  return [order, aChangeLine({ changeOrder: order.id, party: order.party, net: Minor.parse(net) })]
}

describe('creepOf', () => {
  const estimate = anEstimateLine({ party: lead, net: Minor.parse(100_000) })

  it('adds the yeses up in the order in which they were given, over all shops', () => {
    const record = aRecord(
      shops,
      estimate,
      yes('later', 20, 5_000, { party: lead }),
      yes('first', 10, 2_500),
    )
    expect(creepOf(record, 'owner')).toEqual([250, 750])
  })

  it('goes down again with a yes to less work, and stands still where the shop bears it', () => {
    const record = aRecord(
      shops,
      estimate,
      yes('more', 1, 2_000),
      yes('less', 2, -500),
      yes('own', 3, 9_000, { bears: 'shop' }),
    )
    expect(creepOf(record, 'owner')).toEqual([200, 150, 150])
  })

  it('counts nothing that is not answered, and nothing where there was no estimate', () => {
    const sent = yes('sent', 1, 2_000, { state: 'sent', answeredAt: null })
    expect(creepOf(aRecord(shops, estimate, sent), 'owner')).toEqual([])
    expect(creepOf(aRecord(shops, yes('yes', 1, 2_000)), 'owner')).toEqual([])
  })
})
