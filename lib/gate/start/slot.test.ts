import { describe, expect, it } from 'vitest'
import {
  anEngine,
  aRecord,
  aShell,
  aStage,
  at,
  engineId,
  lead,
  shellId,
  trimShop,
} from '../../../test/builders.ts'
import { aSlot } from '../../../test/shop-builders.ts'
import type { Stage } from '../../record/entities/work.ts'
import type { Entity } from '../../record/entity.ts'
import { startConditions } from '../start.ts'

const unmet = (stage: Stage, when: number, ...entities: Entity[]) =>
  startConditions(aRecord(aShell(), anEngine(), stage, ...entities), stage, at(when))

describe('a stage that needs a bay', () => {
  const spray = aStage({ name: 'Colour', assemblies: [shellId], needsBay: true })
  const slot = aSlot({ stage: spray.id })

  it('waits for an agreed slot that runs now', () => {
    expect(unmet(spray, 30)).toMatchObject([
      { rule: 'slot', is: 'none', clearedBy: [lead], clearedWith: { command: 'slot.claim' } },
    ])
    expect(unmet(spray, 30, { ...slot, state: 'asked' })).toMatchObject([
      { is: 'asked', slot: slot.id, clearedWith: { command: 'slot.agree' } },
    ])
    expect(unmet(spray, 23, slot)).toMatchObject([{ is: 'outside', from: at(24), to: at(48) }])
    expect(unmet(spray, 48, slot)).toMatchObject([{ is: 'outside' }])
    expect(unmet(spray, 24, slot)).toEqual([])
    expect(unmet(spray, 30, { ...slot, state: 'released' })).toMatchObject([{ is: 'none' }])
  })

  it('offers a claim for what stands in the bay, not for what is fitted to it there', () => {
    const fit = aStage({ assemblies: [engineId], fits: [engineId], host: shellId, needsBay: true })
    const slotOf = unmet(fit, 30).filter(({ rule }) => rule === 'slot')
    expect(slotOf).toMatchObject([{ clearedWith: { input: { assembly: shellId } } }])
  })

  it('takes a slot of its party for the same assembly, and none of another party', () => {
    expect(unmet(spray, 30, { ...slot, stage: null })).toEqual([])
    expect(unmet(spray, 30, { ...slot, stage: null, party: trimShop })).toHaveLength(1)
  })

  it('waits while the work of an earlier slot still stands in the bay', () => {
    const before = aStage({ state: 'in work', assemblies: [engineId], party: trimShop })
    const overrun = aSlot({ stage: before.id, assembly: engineId, from: at(0), to: at(24) })
    expect(unmet(spray, 30, slot, before, { ...overrun, party: trimShop })).toMatchObject([
      { rule: 'slot', is: 'bay taken', root: before.id, clearedBy: [trimShop] },
    ])
  })
})
