import { describe, expect, it } from 'vitest'
import {
  aChangeOrder,
  aContext,
  aHold,
  aLink,
  anActor,
  anEngine,
  anId,
  aRecord,
  aShell,
  aStage,
  at,
  engineId,
  engineShop,
  lead,
  owner,
  shellId,
  trimShop,
} from '../../test/builders.ts'
import { aSlot } from '../../test/shop-builders.ts'
import type { Actor } from '../record/actor.ts'
import type { ProjectCommand } from '../record/command.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import { stageAdd } from './stage-add.ts'
import { stageDescribe } from './stage-describe.ts'
import { stageRemove } from './stage-remove.ts'

const press = (
  command: ProjectCommand,
  record: ProjectRecord,
  input: unknown,
  actor: Actor = anActor(lead),
) => command.apply(input, actor, record, aContext(actor))

describe('stage.add', () => {
  const record = aRecord(anEngine(), aShell(), aStage({ number: 41, removedAt: at(1) }))

  it('plans a stage and numbers it after the highest, removed ones too', () => {
    const input = { name: 'Bore the block', party: engineShop, assemblies: [engineId] }
    expect(press(stageAdd, record, input)).toMatchObject({
      outcome: 'changes',
      entities: [{ kind: 'stage', number: 42, state: 'planned', exclusive: true, ...input }],
    })
  })

  it('refuses a stage that needs a bay for nothing: no slot could be claimed for it', () => {
    const refused = { conditions: [{ rule: 'input', field: 'assemblies' }] }
    const bare = { name: 'Prime', party: lead, needsBay: true }
    expect(press(stageAdd, record, bare)).toMatchObject(refused)
    expect(press(stageAdd, record, { ...bare, removes: [engineId] }).outcome).toBe('changes')
    const stage = aStage({ assemblies: [engineId], needsBay: true })
    const planned = aRecord(anEngine(), stage)
    const none = { stage: stage.id, assemblies: [] }
    expect(press(stageDescribe, planned, none)).toMatchObject(refused)
    expect(press(stageDescribe, planned, { ...none, needsBay: false }).outcome).toBe('changes')
  })

  it('refuses the name of another stage, which lists and imports go by; not a removed one’s', () => {
    const exists = { outcome: 'refusal', conditions: [{ rule: 'exists', field: 'name' }] }
    const stage = aStage({ name: 'Prime and block', assemblies: [] })
    const bore = aStage({ name: 'Bore', assemblies: [] })
    const named = aRecord(stage, bore, aStage({ name: 'Strip', removedAt: at(1) }))
    const same = { name: ' prime  and Block ', party: lead }
    expect(press(stageAdd, named, same)).toMatchObject(exists)
    expect(press(stageAdd, named, { ...same, name: 'strip' }).outcome).toBe('changes')
    const rename = { stage: bore.id, name: 'PRIME AND BLOCK' }
    expect(press(stageDescribe, named, rename)).toMatchObject(exists)
    const cased = { stage: bore.id, name: 'BORE' }
    expect(press(stageDescribe, named, cased).outcome).toBe('changes')
  })

  it('refuses the number of another stage', () => {
    expect(press(stageAdd, record, { name: 'Prime', party: lead, number: 41 })).toMatchObject({
      outcome: 'refusal',
      conditions: [{ rule: 'exists', field: 'number' }],
    })
  })

  it("lets a shop's manager add to their own stages only, and a hand to none", () => {
    const manager = anActor(engineShop)
    const own = { name: 'Bore the block', party: engineShop }
    expect(press(stageAdd, record, own, manager).outcome).toBe('changes')
    expect(press(stageAdd, record, { ...own, party: trimShop }, manager).outcome).toBe('forbidden')
    const hand = anActor(engineShop, { role: 'hand' })
    expect(press(stageAdd, record, own, hand).outcome).toBe('forbidden')
    expect(press(stageAdd, record, { ...own, party: owner }, anActor(owner)).outcome).toBe(
      'forbidden',
    )
  })

  it('knows nothing of an assembly that is not in the record', () => {
    const input = { name: 'Prime', party: lead, assemblies: [anId('asm', 'none')] }
    expect(() => press(stageAdd, record, input)).toThrow('asm_none')
  })

  it('says everything that is wrong at once', () => {
    const input = {
      name: 'Engine in',
      party: lead,
      assemblies: [engineId, engineId],
      fits: [engineId],
      removes: [engineId],
      hoursLeast: 4,
      hoursMost: 2,
      handoverTo: lead,
    }
    expect(press(stageAdd, record, input)).toMatchObject({
      outcome: 'refusal',
      conditions: [
        { rule: 'input', field: 'assemblies' },
        { rule: 'input', field: 'host' },
        { rule: 'input', field: 'removes' },
        { rule: 'input', field: 'hours' },
        { rule: 'input', field: 'handoverTo' },
      ],
    })
  })
})

describe('stage.describe', () => {
  it('changes what is given and leaves the rest', () => {
    const stage = aStage({ name: 'Prime', group: 'paint', hoursLikely: 3 })
    expect(
      press(stageDescribe, aRecord(stage, anEngine()), { stage: stage.id, group: null }),
    ).toEqual({ outcome: 'changes', entities: [{ ...stage, group: null }] })
  })

  it('leaves the essentials of a stage that has begun as they were, but not its group and hours', () => {
    for (const state of ['in work', 'ended', 'signed off', 'in doubt', 'reopened'] as const) {
      const stage = aStage({ state })
      const record = aRecord(stage, anEngine())
      expect(press(stageDescribe, record, { stage: stage.id, name: 'Other' })).toMatchObject({
        outcome: 'refusal',
        conditions: [{ rule: 'state', is: state, needs: ['planned'] }],
      })
      expect(press(stageDescribe, record, { stage: stage.id, hoursMost: 9 }).outcome).toBe(
        'changes',
      )
    }
  })

  it('lets a shop describe its own stage, but not free it of what others rely on', () => {
    const stage = aStage({ party: engineShop, safety: true, countersigns: [lead] })
    const record = aRecord(stage, anEngine())
    const manager = anActor(engineShop)
    const by = (input: object) =>
      press(stageDescribe, record, { stage: stage.id, ...input }, manager).outcome
    expect(by({ name: 'Bore and hone' })).toBe('changes')
    expect(by({ safety: false })).toBe('forbidden')
    expect(by({ countersigns: [] })).toBe('forbidden')
    expect(by({ changeOrder: null })).toBe('forbidden')
    expect(by({ party: trimShop })).toBe('forbidden')
  })

  it('keeps a stage bound to its change order, or work would begin without the yes', () => {
    const order = aChangeOrder({ state: 'declined' })
    const stage = aStage({ changeOrder: order.id })
    const input = { stage: stage.id, changeOrder: null }
    expect(press(stageDescribe, aRecord(stage, order, anEngine()), input)).toMatchObject({
      outcome: 'refusal',
      conditions: [{ rule: 'state', entity: order.id, is: 'declined' }],
    })
    const draft = aRecord(stage, { ...order, state: 'draft' }, anEngine())
    expect(press(stageDescribe, draft, input).outcome).toBe('changes')
  })
})

describe('stage.remove', () => {
  const [prime, sand, paint] = [1, 2, 3].map((number) => aStage({ number, name: `Coat ${number}` }))
  if (prime === undefined || sand === undefined || paint === undefined) throw new Error('no stages')
  const input = { stage: sand.id, reason: 'not needed' }
  const first = aLink({ from: prime.id, to: sand.id, leastLagHours: 16, greatestLagHours: 72 })
  const second = aLink({ from: sand.id, to: paint.id })

  it('hands on what it waited for, so that nothing starts earlier', () => {
    const record = aRecord(prime, sand, paint, first, second)
    expect(press(stageRemove, record, input)).toMatchObject({
      outcome: 'changes',
      entities: [
        { id: sand.id, removedAt: at(100) },
        { id: first.id, removedAt: at(100) },
        { id: second.id, removedAt: at(100) },
        {
          kind: 'link',
          from: prime.id,
          to: paint.id,
          leastLagHours: 16,
          greatestLagHours: 72,
          removedAt: null,
        },
      ],
    })
  })

  it('tightens a direct link instead of doubling it', () => {
    const direct = aLink({ from: prime.id, to: paint.id, leastLagHours: 4, greatestLagHours: 48 })
    const record = aRecord(prime, sand, paint, first, second, direct)
    expect(press(stageRemove, record, input)).toMatchObject({
      outcome: 'changes',
      entities: [{}, {}, {}, { id: direct.id, leastLagHours: 16, greatestLagHours: 48 }],
    })
  })

  it('refuses once work has begun', () => {
    const record = aRecord({ ...sand, state: 'signed off' })
    expect(press(stageRemove, record, input)).toMatchObject({
      outcome: 'refusal',
      conditions: [{ rule: 'state', is: 'signed off' }],
    })
  })

  it('refuses while a slot is claimed for it or a hold point stands on it, and offers the way out', () => {
    const record = aRecord(sand, aSlot({ stage: sand.id }), aHold({ stage: sand.id }))
    expect(press(stageRemove, record, input)).toMatchObject({
      outcome: 'refusal',
      conditions: [
        { rule: 'state', is: 'agreed', clearedWith: { command: 'slot.release' } },
        { rule: 'state', is: 'set', clearedBy: [lead], clearedWith: { command: 'hold.remove' } },
      ],
    })
  })

  it("is the lead's to do", () => {
    const record = aRecord({ ...sand, party: engineShop }, aShell({ id: shellId }))
    expect(press(stageRemove, record, input, anActor(engineShop)).outcome).toBe('forbidden')
  })
})
