import { describe, expect, it } from 'vitest'
import {
  aCheck,
  aContext,
  aHold,
  aLink,
  anActor,
  anId,
  aRecord,
  aStage,
  at,
  engineShop,
  lead,
  owner,
  trimShop,
} from '../../test/builders.ts'
import { aMembership, aShopBook } from '../../test/shop-builders.ts'
import type { Actor } from '../record/actor.ts'
import type { ProjectCommand } from '../record/command.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import { checkAdd } from './check-add.ts'
import { checkRemove } from './check-remove.ts'
import { holdSet } from './hold-set.ts'
import { linkDraw } from './link-draw.ts'
import { linkRemove } from './link-remove.ts'

const press = (
  command: ProjectCommand,
  record: ProjectRecord,
  input: unknown,
  actor: Actor = anActor(lead),
) => command.apply(input, actor, record, aContext(actor))

const prime = aStage({ name: 'Prime' })
const paint = aStage({ name: 'Paint' })
const wings = aStage({ name: 'Hang the wings', party: engineShop })

describe('link.draw', () => {
  it('makes a stage wait for another, with its cure and its window', () => {
    const input = { from: prime.id, to: paint.id, leastLagHours: 16, greatestLagHours: 72 }
    expect(press(linkDraw, aRecord(prime, paint), input)).toMatchObject({
      outcome: 'changes',
      entities: [{ kind: 'link', ...input, removedAt: null }],
    })
  })

  it('refuses a circle and names it', () => {
    const record = aRecord(
      prime,
      paint,
      wings,
      aLink({ from: prime.id, to: paint.id }),
      aLink({ from: paint.id, to: wings.id }),
    )
    expect(press(linkDraw, record, { from: wings.id, to: prime.id })).toMatchObject({
      outcome: 'refusal',
      conditions: [{ rule: 'circle', stages: [wings.id, prime.id, paint.id] }],
    })
    expect(press(linkDraw, record, { from: prime.id, to: prime.id })).toMatchObject({
      conditions: [{ rule: 'circle', stages: [prime.id] }],
    })
  })

  it('draws where a removed link would have closed a circle', () => {
    const gone = aLink({ from: prime.id, to: paint.id, removedAt: at(1) })
    const record = aRecord(prime, paint, gone)
    expect(press(linkDraw, record, { from: paint.id, to: prime.id }).outcome).toBe('changes')
  })

  it('refuses a link that is there, offering its removal, and a window shorter than the cure', () => {
    const there = aLink({ from: prime.id, to: paint.id })
    const input = { from: prime.id, to: paint.id, leastLagHours: 16, greatestLagHours: 4 }
    expect(press(linkDraw, aRecord(prime, paint, there), input)).toMatchObject({
      outcome: 'refusal',
      conditions: [
        { rule: 'input', field: 'greatestLagHours' },
        { rule: 'exists', entity: there.id, clearedWith: { command: 'link.remove' } },
      ],
    })
  })

  it('refuses a link into a stage that has begun, and from one that is removed', () => {
    const record = aRecord({ ...prime, removedAt: at(1) }, { ...paint, state: 'in work' })
    expect(press(linkDraw, record, { from: prime.id, to: paint.id })).toMatchObject({
      outcome: 'refusal',
      conditions: [
        { rule: 'state', entity: paint.id, is: 'in work' },
        { rule: 'state', entity: prime.id, is: 'removed' },
      ],
    })
  })

  it('lets a shop link its own stages only', () => {
    const own = aStage({ party: engineShop })
    const record = aRecord(prime, wings, own)
    const by = anActor(engineShop)
    expect(press(linkDraw, record, { from: wings.id, to: own.id }, by).outcome).toBe('changes')
    expect(press(linkDraw, record, { from: prime.id, to: own.id }, by).outcome).toBe('forbidden')
  })
})

describe('link.remove', () => {
  const link = aLink({ from: prime.id, to: paint.id })
  const input = { link: link.id, reason: 'wrong stage' }

  it('takes a link away while what waits is planned', () => {
    expect(press(linkRemove, aRecord(prime, paint, link), input)).toEqual({
      outcome: 'changes',
      entities: [{ ...link, removedAt: at(100) }],
    })
  })

  it('refuses once the stage that waited has begun: its start relied on it', () => {
    const record = aRecord(prime, { ...paint, state: 'signed off' }, link)
    expect(press(linkRemove, record, input)).toMatchObject({
      outcome: 'refusal',
      conditions: [{ rule: 'state', entity: paint.id }],
    })
  })
})

describe('check.add', () => {
  const input = {
    stage: wings.id,
    type: 'reading',
    name: 'gap',
    unit: 'mm',
    least: 3,
    greatest: 5,
  } as const

  it('asks for a reading within limits, after the checks that are there', () => {
    const record = aRecord(wings, aCheck({ stage: wings.id, position: 4 }))
    expect(press(checkAdd, record, input, anActor(engineShop))).toMatchObject({
      outcome: 'changes',
      entities: [{ kind: 'check', ...input, position: 5, state: 'missing' }],
    })
  })

  it('refuses limits that cross, limits of a photo, a unit that is a lost limit', () => {
    const record = aRecord(wings)
    for (const [over, field] of [
      [{ least: 6 }, 'least'],
      [{ type: 'photo' }, 'type'],
      [{ unit: '5 mm' }, 'unit'],
    ] as const) {
      expect(press(checkAdd, record, { ...input, ...over })).toMatchObject({
        outcome: 'refusal',
        conditions: [{ rule: 'input', field }],
      })
    }
  })

  it('refuses once the stage is signed off, and a check that it has already', () => {
    const there = aCheck({ stage: wings.id, type: 'reading', name: 'gap' })
    const record = aRecord({ ...wings, state: 'signed off' }, there)
    expect(press(checkAdd, record, input)).toMatchObject({
      outcome: 'refusal',
      conditions: [
        { rule: 'state', is: 'signed off' },
        { rule: 'exists', entity: there.id },
      ],
    })
  })
})

describe('check.remove', () => {
  const check = aCheck({ stage: wings.id })
  const input = { check: check.id, reason: 'asked twice' }

  it('no longer asks for it while nothing has begun', () => {
    expect(press(checkRemove, aRecord(wings, check), input)).toMatchObject({
      outcome: 'changes',
      entities: [{ id: check.id, removedAt: at(100) }],
    })
  })

  it('keeps evidence, and the checks of work that has begun', () => {
    const record = aRecord({ ...wings, state: 'in work' }, { ...check, state: 'passed' })
    expect(press(checkRemove, record, input)).toMatchObject({
      outcome: 'refusal',
      conditions: [
        { rule: 'state', entity: wings.id, is: 'in work' },
        { rule: 'state', entity: check.id, is: 'passed' },
      ],
    })
  })

  it('is not for the shop whose work it checks', () => {
    const record = aRecord(wings, check)
    expect(press(checkRemove, record, input, anActor(engineShop)).outcome).toBe('forbidden')
  })
})

describe('hold.set', () => {
  const input = { stage: prime.id, point: 'hold', name: 'Metal seen bare', party: owner } as const

  it('stops what follows until its party releases it', () => {
    expect(press(holdSet, aRecord(prime), input)).toMatchObject({
      outcome: 'changes',
      entities: [{ kind: 'hold', ...input, person: null, state: 'set', setAt: at(100) }],
    })
  })

  it('refuses once something that follows has begun', () => {
    const record = aRecord(
      prime,
      { ...paint, state: 'in work' },
      aLink({ from: prime.id, to: paint.id }),
    )
    expect(press(holdSet, record, input)).toMatchObject({
      outcome: 'refusal',
      conditions: [{ rule: 'state', entity: paint.id }],
    })
  })

  it('refuses the same point twice, until the first is cleared', () => {
    const there = aHold({ stage: prime.id })
    expect(press(holdSet, aRecord(prime, there), input)).toMatchObject({
      outcome: 'refusal',
      conditions: [{ rule: 'exists', entity: there.id }],
    })
    const cleared = aHold({ stage: prime.id, state: 'released', clearedAt: at(2) })
    expect(press(holdSet, aRecord(prime, cleared), input).outcome).toBe('changes')
  })

  it("names a person only who acts for that party, by the shop's book", () => {
    const welt = anId('psn', 'welt')
    const named = { ...input, party: trimShop, person: welt }
    const record = aRecord(prime)
    const actor = anActor(lead)
    const shop = anId('shp', 'trim')
    const withBook = (...members: Parameters<typeof aMembership>) =>
      holdSet.apply(named, actor, record, {
        ...aContext(actor),
        shops: new Map([[shop, aShopBook(shop, aMembership(...members))]]),
      })
    expect(holdSet.needs(named, record).shops).toEqual([shop])
    expect(withBook({ shop, person: welt }).outcome).toBe('changes')
    expect(withBook({ shop })).toMatchObject({
      outcome: 'refusal',
      conditions: [{ rule: 'input', field: 'person' }],
    })
    expect(press(holdSet, record, named).outcome).toBe('unknown')
  })

  it("is the lead's to set", () => {
    expect(press(holdSet, aRecord(prime), input, anActor(engineShop)).outcome).toBe('forbidden')
  })
})
