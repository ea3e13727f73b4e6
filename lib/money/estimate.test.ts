import { describe, expect, it } from 'vitest'
import {
  aChangeOrder,
  aContext,
  anActor,
  anEstimateLine,
  aRecord,
  at,
  engineShop,
  lead,
  owner,
} from '../../test/builders.ts'
import type { Actor } from '../record/actor.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import { estimateAdd } from './estimate-add.ts'
import { estimateWithdraw } from './estimate-withdraw.ts'

const engines = anActor(engineShop)
const rebuild = { text: 'Rebuild', type: 'fixed', net: 400_000, taxRate: 2000 }
const add = (record: ProjectRecord, actor: Actor = engines, lines: object[] = [rebuild]) =>
  estimateAdd.apply({ party: engineShop, lines }, actor, record, aContext(actor))

describe('estimate.add', () => {
  it('puts lines after those that are there, withdrawn ones counted', () => {
    const record = aRecord(
      anEstimateLine({ party: engineShop, position: 4, withdrawnAt: at(1) }),
      anEstimateLine({ party: lead, position: 9 }),
    )
    const allowance = { ...rebuild, text: 'Liners', type: 'allowance' }
    expect(add(record, engines, [rebuild, allowance])).toMatchObject({
      entities: [
        { kind: 'estimateLine', party: engineShop, position: 5, type: 'fixed', net: 400_000 },
        { position: 6, type: 'allowance' },
      ],
    })
  })

  it('refuses a line that is neither fixed nor an allowance', () => {
    const { type: _, ...neither } = rebuild
    expect(add(aRecord(), engines, [neither])).toMatchObject({
      outcome: 'invalid',
      issues: [{ field: 'lines.0.type' }],
    })
  })

  it("is for the shop's own managers", () => {
    for (const actor of [anActor(lead), anActor(owner), anActor(engineShop, { role: 'hand' })])
      expect(add(aRecord(), actor)).toEqual({ outcome: 'forbidden' })
  })

  it('refuses once a change was approved on it, and offers a change order', () => {
    const approved = aChangeOrder({ state: 'approved', answeredAt: at(50) })
    expect(add(aRecord(approved))).toMatchObject({
      outcome: 'refusal',
      conditions: [
        {
          rule: 'state',
          entity: approved.id,
          since: at(50),
          clearedBy: [engineShop],
          clearedWith: { command: 'changeOrder.raise', input: { party: engineShop } },
        },
      ],
    })
    expect(add(aRecord(aChangeOrder({ state: 'approved', party: lead })))).toMatchObject({
      outcome: 'changes',
    })
  })
})

describe('estimate.withdraw', () => {
  const line = anEstimateLine({ party: engineShop })
  const withdraw = (record: ProjectRecord, actor: Actor = engines) =>
    estimateWithdraw.apply({ estimateLine: line.id }, actor, record, aContext(actor))

  it('keeps the line, marked when', () => {
    expect(withdraw(aRecord(line))).toEqual({
      outcome: 'changes',
      entities: [{ ...line, withdrawnAt: at(100) }],
    })
  })

  it('refuses a line withdrawn before, and one under an approved change', () => {
    expect(withdraw(aRecord({ ...line, withdrawnAt: at(1) }))).toMatchObject({
      conditions: [{ rule: 'state', is: 'withdrawn' }],
    })
    expect(withdraw(aRecord(line, aChangeOrder({ state: 'approved' })))).toMatchObject({
      conditions: [{ rule: 'state', is: 'approved' }],
    })
    expect(withdraw(aRecord(line), anActor(lead))).toEqual({ outcome: 'forbidden' })
  })
})
