import { describe, expect, it } from 'vitest'
import {
  aChangeOrder,
  aCheck,
  aHold,
  aLink,
  anActor,
  anEngine,
  aRecord,
  aStage,
  at,
  engineShop,
  lead,
  owner,
  trimShop,
} from '../../test/builders.ts'
import { press, pressed } from '../../test/press.ts'
import type { Concession } from '../record/entities/work.ts'
import { Sha256 } from '../record/scalars.ts'
import { must } from '../record/table.ts'
import { concessionWithdraw } from './concession-withdraw.ts'
import { conditionConcede } from './condition-concede.ts'
import { startConditions } from './start.ts'

const coat = aStage({
  assemblies: [],
  state: 'signed off',
  startedAt: at(80),
  endedAt: at(90),
  signedOffAt: at(91),
})
const stage = aStage({ party: engineShop, assemblies: [] })
const cure = aLink({ from: coat.id, to: stage.id, leastLagHours: 48 })
const record = aRecord(coat, stage, cure)
const reason = 'Touch dry, and nothing leans on it.'
const input = { stage: stage.id, rule: 'least-lag', entity: cure.id, reason }
const wyn = anActor(engineShop)
const ada = anActor(lead)
const only = (of: typeof record): Concession => {
  const [concession, ...more] = [...of.concessions.rows.values()]
  if (concession === undefined || more.length > 0) throw new Error('not one concession')
  return concession
}

describe('condition.concede', () => {
  it('counts once the party of the stage and the lead have both agreed, and stays visible', () => {
    const half = pressed(conditionConcede, wyn, record, input)
    expect(only(half)).toMatchObject({
      needs: [engineShop, lead],
      parties: [engineShop],
      reason,
      person: wyn.person,
    })
    expect(startConditions(half, stage, at(100))).toHaveLength(1)
    const whole = pressed(conditionConcede, ada, half, { ...input, reason: 'Agreed by telephone.' })
    expect(only(whole)).toMatchObject({
      parties: [engineShop, lead],
      reason: `${reason}\nAgreed by telephone.`,
    })
    expect(startConditions(whole, stage, at(100))).toEqual([])
  })

  it('is the lead’s alone on its own stage', () => {
    const own = { ...stage, party: lead }
    const conceded = pressed(conditionConcede, ada, aRecord(coat, own, cure), input)
    expect(startConditions(conceded, own, at(100))).toEqual([])
  })

  it('is for managers of those two, never for the owner, a hand or another shop', () => {
    for (const other of [anActor(owner), anActor(trimShop), anActor(lead, { role: 'hand' })])
      expect(press(conditionConcede, other, record, input).outcome).toBe('forbidden')
  })

  it('never lets safety work pass, on either side of a link', () => {
    for (const all of [
      aRecord({ ...coat, safety: true }, stage, cure),
      aRecord(coat, { ...stage, safety: true }, cure),
    ])
      expect(press(conditionConcede, ada, all, input)).toMatchObject({
        outcome: 'refusal',
        conditions: [{ rule: 'least-lag', concedable: false }],
      })
  })

  it('never stands for custody, a hold point or a missing yes', () => {
    const order = aChangeOrder()
    const hold = aHold({ stage: coat.id })
    const held = { ...stage, assemblies: [anEngine().id], changeOrder: order.id }
    const all = aRecord(coat, held, cure, hold, order, anEngine())
    for (const [rule, entity] of [
      ['custody', anEngine().id],
      ['hold', hold.id],
      ['change-order', order.id],
    ])
      expect(press(conditionConcede, ada, all, { ...input, rule, entity })).toMatchObject({
        outcome: 'refusal',
        conditions: [{ rule, entity, concedable: false }],
      })
  })

  it('stands for a recoat window that ran out only with the maker’s data sheet', () => {
    const window = aLink({ from: coat.id, to: stage.id, greatestLagHours: 2 })
    const all = aRecord(coat, stage, window)
    const past = { ...input, rule: 'greatest-lag', entity: window.id }
    expect(press(conditionConcede, ada, all, past)).toMatchObject({
      conditions: [{ rule: 'input', field: 'file' }],
    })
    const file = Sha256.parse('a'.repeat(64))
    const arrived = { files: new Set([file]) }
    expect(press(conditionConcede, ada, all, { ...past, file })).toMatchObject({
      conditions: [{ rule: 'file' }],
    })
    expect(press(conditionConcede, ada, all, { ...past, file }, arrived)).toMatchObject({
      entities: [{ rule: 'greatest-lag', file }],
    })
  })

  it('refuses what is met, and a second yes of the same party', () => {
    expect(press(conditionConcede, wyn, record, input, { happenedAt: at(138) })).toMatchObject({
      conditions: [{ rule: 'state', is: 'met' }],
    })
    const half = pressed(conditionConcede, wyn, record, input)
    expect(press(conditionConcede, wyn, half, input)).toMatchObject({
      conditions: [{ rule: 'exists' }],
    })
  })

  it('accepts a reading out of limits', () => {
    const reading = aCheck({ stage: stage.id, type: 'reading', state: 'out of limits', value: 9 })
    const atWork = { ...stage, state: 'in work' as const }
    const conceded = press(conditionConcede, ada, aRecord(atWork, reading), {
      ...input,
      rule: 'check',
      entity: reading.id,
    })
    expect(conceded).toMatchObject({ entities: [{ rule: 'check', parties: [lead] }] })
  })
})

describe('concession.withdraw', () => {
  const conceded = pressed(conditionConcede, wyn, record, input)
  const withdraw = { concession: only(conceded).id, reason: 'It rained in.' }

  it('brings the condition back, and keeps what was agreed', () => {
    const back = pressed(concessionWithdraw, wyn, conceded, withdraw)
    expect(only(back)).toEqual({ ...only(conceded), withdrawnAt: at(100) })
    expect(press(concessionWithdraw, wyn, back, withdraw)).toMatchObject({
      conditions: [{ rule: 'state', is: 'withdrawn' }],
    })
    expect(only(pressed(conditionConcede, wyn, aRecord(coat, stage, cure), input)).parties).toEqual(
      [engineShop],
    )
  })

  it('is for who agreed, and not once the stage has gone on by it', () => {
    expect(press(concessionWithdraw, ada, conceded, withdraw).outcome).toBe('forbidden')
    const begun = aRecord(coat, { ...stage, state: 'in work' }, cure, only(conceded))
    expect(press(concessionWithdraw, wyn, begun, withdraw)).toMatchObject({
      conditions: [{ rule: 'state', entity: stage.id, is: 'in work' }],
    })
    expect(must(begun.concessions, only(conceded).id).withdrawnAt).toBeNull()
  })
})
