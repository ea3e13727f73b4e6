import { describe, expect, it } from 'vitest'
import { handoverRelease } from '../lib/custody/handover-release.ts'
import { startConditions } from '../lib/gate/start.ts'
import type { Actor } from '../lib/record/actor.ts'
import type { Json } from '../lib/record/condition.ts'
import { slotClaim } from '../lib/shop/slot-claim.ts'
import {
  aContext,
  aHandover,
  anActor,
  anAssembly,
  anEngine,
  anId,
  aParty,
  aRecord,
  aShell,
  aStage,
  at,
  engineId,
  lead,
  leadShop,
} from './builders.ts'
import { aBay, aShop, aShopBook } from './shop-builders.ts'

// What the random histories of test/invariants.test.ts found once, told by hand.

const manager: Actor = anActor(lead, { shop: leadShop })

describe('histories that once went wrong', () => {
  it('a handover prepared for a party that left meanwhile is not released to nobody', () => {
    const gone = aParty({ name: 'Hob Lane Blasting', leftAt: at(50) })
    const handover = aHandover({ from: lead, to: gone.id })
    const record = aRecord(anEngine(), gone, handover)
    const input = { handover: handover.id }
    expect(handoverRelease.apply(input, manager, record, aContext(manager))).toMatchObject({
      outcome: 'refusal',
      conditions: [
        {
          rule: 'state',
          entity: gone.id,
          is: 'left',
          clearedWith: { command: 'handover.takeBack' },
        },
      ],
    })
  })

  it('a stage on nothing that needs a bay is offered a claim in which the assembly is still to be said', () => {
    const stage = aStage({ assemblies: [], needsBay: true })
    const offered = startConditions(aRecord(stage), stage, at(100)).map((one) => one.clearedWith)
    expect(offered).toEqual([{ command: 'slot.claim', input: { stage: stage.id } }])
  })

  it('the claim that a stage is offered is one that can be pressed, whatever its hands are on', () => {
    const door = anAssembly({ name: 'Door' })
    const bay = aBay({ id: anId('bay', 'one') })
    const book = aShopBook(leadShop, aShop(), bay)
    const ctx = aContext(manager, { shops: new Map([[book.id, book]]) })
    const worksOn = { assemblies: [], needsBay: true }
    const stages = [
      aStage({ ...worksOn, removes: [door.id] }),
      aStage({ ...worksOn, fits: [engineId], host: door.id }),
    ]
    const record = aRecord(aShell(), anEngine(), door, stages)
    for (const stage of stages) {
      for (const { clearedWith } of startConditions(record, stage, at(100))) {
        const input: { [field: string]: Json } = {
          ...clearedWith?.input,
          bay: bay.id,
          shop: book.id,
          from: at(100),
          to: at(110),
        }
        expect(slotClaim.apply(input, manager, record, ctx).outcome).toBe('changes')
      }
    }
  })
})
