import { describe, expect, it } from 'vitest'
import {
  aChangeOrder,
  anActor,
  anEngine,
  anId,
  aRecord,
  aStage,
  at,
  engineId,
  engineShop,
  lead,
  owner,
  project,
  trimShop,
} from '../../test/builders.ts'
import { press, pressed } from '../../test/press.ts'
import { withRows } from '../record/table.ts'
import { askClose } from './ask-close.ts'
import { conditionAsk } from './condition-ask.ts'
import { conditionConcede } from './condition-concede.ts'
import { toldConfirm } from './told-confirm.ts'

const stage = aStage()
const record = aRecord(stage, anEngine({ custodian: engineShop }))
const ada = anActor(lead)
const wyn = anActor(engineShop)
const input = {
  stage: stage.id,
  rule: 'custody',
  entity: engineId,
  to: engineShop,
  text: 'We could collect it on Thursday.',
}

describe('condition.ask', () => {
  it('puts an unmet condition before the party that can clear it', () => {
    expect(press(conditionAsk, ada, record, input)).toMatchObject({
      entities: [{ kind: 'ask', from: lead, to: engineShop, text: input.text, closedAt: null }],
    })
  })

  it('refuses a party that can do nothing about it, and names those who can', () => {
    for (const to of [owner, trimShop])
      expect(press(conditionAsk, ada, record, { ...input, to })).toMatchObject({
        conditions: [{ rule: 'input', field: 'to', clearedBy: [engineShop] }],
      })
    expect(press(conditionAsk, wyn, record, input)).toMatchObject({
      conditions: [{ rule: 'input', field: 'to' }],
    })
  })

  it('refuses what is met already, and the same ask twice', () => {
    expect(press(conditionAsk, ada, aRecord(stage, anEngine()), input)).toMatchObject({
      conditions: [{ rule: 'state', is: 'met' }],
    })
    const asked = pressed(conditionAsk, ada, record, input)
    expect(press(conditionAsk, ada, asked, input)).toMatchObject({
      conditions: [{ rule: 'exists', since: at(100) }],
    })
  })

  it('does not guess where a phone may not see the change order that is asked about', () => {
    const order = aChangeOrder({ party: engineShop })
    const extra = { ...stage, changeOrder: order.id }
    const all = aRecord(extra, anEngine(), order)
    const about = { stage: stage.id, rule: 'change-order', entity: order.id, to: owner }
    expect(press(conditionAsk, ada, all, about).outcome).toBe('changes')
    const view = { ...all, changeOrders: withRows(all.changeOrders, [], [order.id]) }
    expect(press(conditionAsk, ada, view, about).outcome).toBe('unknown')
    const concede = { stage: stage.id, rule: 'change-order', entity: order.id, reason: 'No.' }
    expect(press(conditionConcede, ada, view, concede).outcome).toBe('unknown')
  })

  it('is for those who take part, not for who only looks on', () => {
    expect(press(conditionAsk, anActor(owner), record, input).outcome).toBe('changes')
    const watcher = anActor(trimShop, { role: 'observer' })
    expect(press(conditionAsk, watcher, record, input).outcome).toBe('forbidden')
  })
})

describe('ask.close', () => {
  const asked = pressed(conditionAsk, ada, record, input)
  const ask = { ask: [...asked.asks.rows.keys()][0] }

  it('is closed by who asked or who was asked, once', () => {
    for (const actor of [ada, wyn])
      expect(press(askClose, actor, asked, ask)).toMatchObject({
        entities: [{ closedAt: at(100) }],
      })
    expect(press(askClose, anActor(owner), asked, ask).outcome).toBe('forbidden')
    const closed = pressed(askClose, wyn, asked, ask)
    expect(press(askClose, wyn, closed, ask)).toMatchObject({
      conditions: [{ rule: 'state', is: 'closed' }],
    })
    expect(press(conditionAsk, ada, closed, input).outcome).toBe('changes')
  })
})

describe('told.confirm', () => {
  const told = {
    kind: 'told' as const,
    id: anId('tld', 'one'),
    project,
    entity: stage.id,
    party: engineShop,
    command: 'stage.start',
    person: ada.person,
    at: at(20),
    confirmedAt: null,
    confirmedBy: null,
  }

  it('is confirmed by the party it was entered for, and never by the lead', () => {
    const all = aRecord(stage, told)
    expect(press(toldConfirm, wyn, all, { told: told.id })).toMatchObject({
      entities: [{ confirmedAt: at(100), confirmedBy: wyn.person }],
    })
    expect(press(toldConfirm, ada, all, { told: told.id }).outcome).toBe('forbidden')
    const done = aRecord(stage, { ...told, confirmedAt: at(30) })
    expect(press(toldConfirm, wyn, done, { told: told.id })).toMatchObject({
      conditions: [{ rule: 'state', is: 'confirmed' }],
    })
  })
})
