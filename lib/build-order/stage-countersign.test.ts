import { describe, expect, it } from 'vitest'
import {
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
import { press, pressed } from '../../test/press.ts'
import { aMembership, aShopBook } from '../../test/shop-builders.ts'
import { startConditions } from '../gate/start.ts'
import { stageCountersign } from './stage-countersign.ts'

const wyn = anActor(engineShop, { person: anId('psn', 'wyn') })
const stage = aStage({
  party: engineShop,
  countersigns: [lead, engineShop],
  state: 'signed off',
  startedAt: at(1),
  startedBy: wyn.person,
  endedAt: at(9),
  endedBy: wyn.person,
  signedOffAt: at(10),
})
const next = aStage({ assemblies: [] })
const record = aRecord(stage, next, aLink({ from: stage.id, to: next.id }))
const input = { stage: stage.id }
const one = anId('shp', 'engines')
const shops = { shops: new Map([[one, aShopBook(one, aMembership({ shop: one }))]]) }

describe('stage.countersign', () => {
  it('lets what follows go on once every party asked has signed', () => {
    const byLead = pressed(stageCountersign, anActor(lead), record, input)
    expect(startConditions(byLead, next, at(100))).toMatchObject([
      { rule: 'countersign', party: engineShop },
    ])
    const pru = anActor(engineShop, { person: anId('psn', 'pru') })
    expect(startConditions(pressed(stageCountersign, pru, byLead, input), next, at(100))).toEqual(
      [],
    )
  })

  it('is never of one’s own work', () => {
    expect(press(stageCountersign, wyn, record, input)).toMatchObject({
      outcome: 'refusal',
      conditions: [{ rule: 'own-work', clearedBy: [engineShop, lead] }],
    })
  })

  it('is signed by the lead for a one-hand shop, beside its own', () => {
    const forShop = { stage: stage.id, for: engineShop }
    const signed = pressed(stageCountersign, anActor(lead), record, forShop, shops)
    expect([...signed.signOffs.rows.values()]).toMatchObject([
      { type: 'countersign', party: engineShop, person: anActor(lead).person },
    ])
    expect(startConditions(signed, next, at(100))).toMatchObject([
      { rule: 'countersign', party: lead },
    ])
  })

  it('is asked of a party, once, on work that is signed off', () => {
    for (const other of [anActor(owner), anActor(trimShop)])
      expect(press(stageCountersign, other, record, input).outcome).toBe('forbidden')
    const signed = pressed(stageCountersign, anActor(lead), record, input)
    expect(press(stageCountersign, anActor(lead), signed, input)).toMatchObject({
      conditions: [{ rule: 'exists' }],
    })
    const ended = aRecord({ ...stage, state: 'ended' })
    expect(press(stageCountersign, anActor(lead), ended, input)).toMatchObject({
      conditions: [{ rule: 'state', is: 'ended' }],
    })
  })
})
