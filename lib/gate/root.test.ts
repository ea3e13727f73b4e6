import { describe, expect, it } from 'vitest'
import {
  aChangeOrder,
  aHandover,
  aHold,
  aLink,
  anEngine,
  aPart,
  aRecord,
  aShell,
  aStage,
  at,
  engineId,
  engineShop,
  lead,
  owner,
  shellId,
} from '../../test/builders.ts'
import { withRows } from '../record/table.ts'
import { whatOpens } from './opens.ts'
import { rootChain } from './root-chain.ts'
import { startConditions } from './start.ts'

/** Engine and gearbox in waits for brackets, the engine and a hold; behind all three is the owner's yes to change order 7. */
const order = aChangeOrder({ number: 7 })
const mounts = aStage({
  name: 'Mounts fitted to engine',
  number: 39,
  party: engineShop,
  changeOrder: order.id,
  handoverTo: lead,
})
const lacquer = aStage({
  name: 'Lacquer',
  assemblies: [shellId],
  state: 'signed off',
  endedAt: at(90),
  signedOffAt: at(95),
})
const engineIn = aStage({ number: 80, assemblies: [engineId, shellId], host: shellId })
const brackets = aPart({
  party: engineShop,
  state: 'ordered',
  orderedAt: at(2),
  stages: [mounts.id, engineIn.id],
})
const seen = aHold({ stage: mounts.id, party: engineShop })
const links = [
  aLink({ from: mounts.id, to: engineIn.id }),
  aLink({ from: lacquer.id, to: engineIn.id, leastLagHours: 24 }),
]
const car = [aShell(), anEngine({ custodian: engineShop }), order, mounts, lacquer, engineIn]
const record = aRecord(car, [brackets, seen], links)

describe('the root behind a condition', () => {
  it('is the yes that nobody gave, for the part, the stage before, its hold point and the engine', () => {
    const roots = startConditions(record, engineIn, at(100)).map(({ rule, root }) => [rule, root])
    expect(roots).toEqual([
      ['part', order.id],
      ['predecessor', order.id],
      ['hold', order.id],
      ['least-lag', links[1]?.id],
      ['custody', order.id],
    ])
  })

  it('holds four of the five, by a way that can be read step by step', () => {
    const [first, second] = rootChain(record, engineIn, at(100))
    expect(first).toMatchObject({ root: order.id, holds: { length: 4 } })
    expect(first?.chain.map(({ stage, condition }) => [stage, condition.rule])).toEqual([
      [engineIn.id, 'predecessor'],
      [mounts.id, 'change-order'],
    ])
    expect(second).toMatchObject({ holds: [{ rule: 'least-lag' }] })
  })

  it('is the work itself once that is going on', () => {
    const going = aRecord(
      car,
      [{ ...mounts, changeOrder: null, state: 'in work', startedAt: at(50) }],
      seen,
      links,
    )
    expect(startConditions(going, engineIn, at(200))).toMatchObject([
      { rule: 'predecessor', root: mounts.id },
      { rule: 'hold', root: mounts.id },
      { rule: 'custody', root: mounts.id },
      { rule: 'exclusive-use', root: mounts.id },
    ])
  })

  it('is the hold point itself once the work before it is over', () => {
    const over = { ...mounts, changeOrder: null, state: 'ended' as const, endedAt: at(60) }
    expect(startConditions(aRecord(car, over, seen, links), engineIn, at(200))).toMatchObject([
      { rule: 'predecessor', root: mounts.id },
      { rule: 'hold', root: seen.id },
      { rule: 'custody' },
    ])
  })

  it('is the handover that is under way', () => {
    const signed = { ...mounts, state: 'signed off' as const, endedAt: at(60), signedOffAt: at(61) }
    const handover = aHandover({ state: 'released' })
    const released = { ...seen, state: 'released' as const }
    const later = aRecord(car, signed, released, handover, links)
    expect(startConditions(later, engineIn, at(200))).toMatchObject([
      { rule: 'custody', root: handover.id },
    ])
  })

  it('is the stage that was reopened, behind everything in doubt', () => {
    const first = aStage({ state: 'reopened', assemblies: [] })
    const second = aStage({ state: 'in doubt', assemblies: [] })
    const third = aStage({ state: 'in doubt', assemblies: [] })
    const last = aStage({ assemblies: [] })
    const chain = [first, second, third, last]
    const chained = aRecord(
      chain,
      aLink({ from: first.id, to: second.id }),
      aLink({ from: second.id, to: third.id }),
      aLink({ from: third.id, to: last.id }),
    )
    expect(startConditions(chained, last, at(100))).toMatchObject([
      { rule: 'predecessor', entity: third.id, root: first.id },
    ])
  })

  it('ends even where custody and links run in a ring', () => {
    const mine = aStage({ party: lead, assemblies: [engineId] })
    const theirs = aStage({ party: engineShop, assemblies: [engineId], handoverTo: lead })
    const ring = aRecord(
      anEngine({ custodian: engineShop }),
      mine,
      theirs,
      aLink({ from: mine.id, to: theirs.id }),
    )
    expect(startConditions(ring, mine, at(100))).toHaveLength(1)
    expect(startConditions(ring, theirs, at(100))).toHaveLength(1)
    expect(rootChain(ring, mine, at(100))[0]?.chain.length).toBeLessThanOrEqual(2)
  })

  it('never names a change order that this view may not see', () => {
    const view = { ...record, changeOrders: withRows(record.changeOrders, [], [order.id]) }
    const roots = startConditions(view, engineIn, at(100)).map(({ root }) => root)
    expect(roots).not.toContain(order.id)
    expect(roots[1]).toBe(brackets.id)
  })

  it('is found at the end of a chain of five thousand stages', () => {
    const many = Array.from({ length: 5000 }, () => aStage({ assemblies: [] }))
    const chain = many.slice(1).flatMap((stage, n) => {
      const before = many[n]
      return before === undefined ? [] : aLink({ from: before.id, to: stage.id })
    })
    const last = many.at(-1) ?? engineIn
    expect(startConditions(aRecord(many, chain), last, at(100))).toMatchObject([
      { rule: 'predecessor', root: many[0]?.id },
    ])
  })
})

describe('what a thing would open', () => {
  it('names what starts at once, and what hangs on nothing else', () => {
    const curedLong = { ...lacquer, endedAt: at(10) }
    const cured = aRecord(car, curedLong, [brackets, seen], links)
    expect(whatOpens(cured, order.id, at(100))).toEqual({
      atOnce: [],
      afterwards: [mounts.id, engineIn.id],
    })
    const noPart = aRecord(car, curedLong, seen, links)
    expect(whatOpens(noPart, order.id, at(100))).toEqual({
      atOnce: [mounts.id],
      afterwards: [engineIn.id],
    })
  })

  it('opens nothing that waits for something else too', () => {
    expect(whatOpens(record, order.id, at(100)).afterwards).toEqual([mounts.id])
    expect(whatOpens(record, owner, at(100))).toEqual({ atOnce: [], afterwards: [] })
  })

  it('counts cure as time in between', () => {
    const coat = aStage({ assemblies: [], state: 'in work', startedAt: at(1) })
    const next = aStage({ assemblies: [] })
    const curing = (leastLagHours: number) =>
      aRecord(coat, next, aLink({ from: coat.id, to: next.id, leastLagHours }))
    expect(whatOpens(curing(0), coat.id, at(100))).toEqual({ atOnce: [next.id], afterwards: [] })
    expect(whatOpens(curing(8), coat.id, at(100))).toEqual({ atOnce: [], afterwards: [next.id] })
  })
})
