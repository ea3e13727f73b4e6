import { describe, expect, it } from 'vitest'
import {
  aChangeOrder,
  aLink,
  anActor,
  anEngine,
  aRecord,
  aShell,
  aStage,
  at,
  engineId,
  engineShop,
  lead,
  owner,
} from '../../test/builders.ts'
import { press } from '../../test/press.ts'
import { withRows } from '../record/table.ts'
import { stageStart } from './stage-start.ts'

const stage = aStage({ party: engineShop })
const engine = anEngine({ custodian: engineShop })
const wyn = anActor(engineShop, { role: 'hand' })

describe('stage.start', () => {
  it('puts a planned stage in work, when it happened, by who pressed', () => {
    const started = press(
      stageStart,
      wyn,
      aRecord(stage, engine),
      { stage: stage.id },
      { happenedAt: at(99) },
    )
    expect(started).toEqual({
      outcome: 'changes',
      entities: [
        {
          ...stage,
          state: 'in work',
          startedAt: at(99),
          startedBy: wyn.person,
          workedBy: [wyn.person],
        },
      ],
    })
  })

  it("refuses while the engine is in another party's custody, and offers the release", () => {
    expect(press(stageStart, wyn, aRecord(stage, anEngine()), { stage: stage.id })).toMatchObject({
      outcome: 'refusal',
      conditions: [
        { rule: 'custody', clearedBy: [lead], clearedWith: { command: 'handover.prepare' } },
      ],
    })
  })

  it('refuses while cure runs at the time of the press, however late it arrives', () => {
    const coat = aStage({ state: 'signed off', endedAt: at(70), assemblies: [] })
    const cure = aLink({ from: coat.id, to: stage.id, leastLagHours: 24 })
    const record = aRecord(stage, engine, coat, cure)
    expect(
      press(stageStart, wyn, record, { stage: stage.id }, { happenedAt: at(93) }),
    ).toMatchObject({
      outcome: 'refusal',
      conditions: [{ rule: 'least-lag', until: at(94) }],
    })
    expect(
      press(stageStart, wyn, record, { stage: stage.id }, { happenedAt: at(94) }),
    ).toMatchObject({
      outcome: 'changes',
    })
  })

  it('starts a reopened stage anew, under the same gate', () => {
    const reopened = aStage({
      party: engineShop,
      state: 'reopened',
      startedAt: at(1),
      endedAt: at(5),
      doubt: 'It weeps.',
    })
    expect(
      press(stageStart, wyn, aRecord(reopened, anEngine()), { stage: reopened.id }),
    ).toMatchObject({ outcome: 'refusal', conditions: [{ rule: 'custody' }] })
    expect(press(stageStart, wyn, aRecord(reopened, engine), { stage: reopened.id })).toMatchObject(
      {
        entities: [{ state: 'in work', startedAt: at(100), endedAt: null, doubt: 'It weeps.' }],
      },
    )
  })

  it('refuses a stage that is in work already, or removed', () => {
    for (const over of [{ state: 'in work' as const }, { removedAt: at(3) }]) {
      const record = aRecord({ ...stage, ...over }, engine)
      expect(press(stageStart, wyn, record, { stage: stage.id })).toMatchObject({
        outcome: 'refusal',
        conditions: [{ rule: 'state', entity: stage.id, needs: ['planned', 'reopened'] }],
      })
    }
  })

  it('is pressed by its party; the lead enters it when told by phone, and did not do the work', () => {
    const record = aRecord(stage, engine)
    expect(press(stageStart, anActor(owner), record, { stage: stage.id }).outcome).toBe('forbidden')
    expect(press(stageStart, anActor(lead), record, { stage: stage.id }).outcome).toBe('forbidden')
    const told = { stage: stage.id, told: engineShop }
    expect(press(stageStart, anActor(lead, { role: 'hand' }), record, told).outcome).toBe(
      'forbidden',
    )
    expect(press(stageStart, anActor(lead), record, told)).toMatchObject({
      entities: [
        { state: 'in work', startedBy: null },
        { kind: 'told', entity: stage.id, party: engineShop, command: 'stage.start' },
      ],
    })
  })

  it('does not guess where a phone may not see the change order', () => {
    const order = aChangeOrder({ state: 'approved' })
    const extra = { ...stage, changeOrder: order.id }
    const record = aRecord(extra, engine, order)
    const view = { ...record, changeOrders: withRows(record.changeOrders, [], [order.id]) }
    expect(press(stageStart, wyn, view, { stage: stage.id })).toMatchObject({
      outcome: 'unknown',
      conditions: [{ rule: 'unknown', entity: order.id }],
    })
    expect(press(stageStart, wyn, record, { stage: stage.id }).outcome).toBe('changes')
  })

  it('names every condition at once', () => {
    const before = aStage({ assemblies: [engineId] })
    const extra = aStage({ assemblies: [], needsOff: [engineId], needsBay: true })
    const record = aRecord(
      aShell(),
      anEngine({ host: aShell().id }),
      before,
      extra,
      aLink({ from: before.id, to: extra.id }),
    )
    expect(press(stageStart, anActor(lead), record, { stage: extra.id })).toMatchObject({
      conditions: [{ rule: 'predecessor' }, { rule: 'must-be-off' }, { rule: 'slot' }],
    })
  })
})
