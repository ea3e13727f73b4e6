import { describe, expect, it } from 'vitest'
import {
  aChangeOrder,
  aContext,
  aDecision,
  aHandover,
  aHold,
  anActor,
  anEngine,
  anId,
  aRecord,
  aShell,
  aStage,
  engineId,
  engineShop,
  lead,
  project,
  shellId,
  theParties,
} from '../../test/builders.ts'
import { aSlot } from '../../test/shop-builders.ts'
import { mayPress } from '../gate/may-press.ts'
import type { Role } from '../record/actor.ts'
import type { ProjectCommandName } from '../record/command-names.ts'
import type { Json } from '../record/condition.ts'
import type { DecisionOption } from '../record/entities/money.ts'
import { projectCommands } from './registry.ts'

const stage = aStage({ party: lead, state: 'in doubt' })
const order = aChangeOrder({ state: 'draft', party: lead })
const decision = aDecision({ chooser: lead })
const option: DecisionOption = {
  kind: 'decisionOption',
  id: anId('opt', 'tan'),
  project,
  decision: decision.id,
  party: lead,
  chooser: lead,
  position: 1,
  text: 'Tan',
  net: null,
}
const handover = aHandover({ from: lead, to: engineShop })
const hold = aHold({ stage: stage.id, party: lead })
const slot = aSlot({ state: 'asked' })
const record = aRecord(
  theParties(),
  aShell(),
  anEngine({ custodian: lead }),
  stage,
  order,
  decision,
  option,
  handover,
  hold,
  slot,
)
const presses: readonly (readonly [ProjectCommandName, Json])[] = [
  ['assembly.fit', { assembly: engineId, host: shellId, reason: 'Went in' }],
  ['assembly.takeOff', { assembly: engineId, reason: 'Came out' }],
  ['changeOrder.send', { changeOrder: order.id }],
  ['changeOrder.withdraw', { changeOrder: order.id, text: 'Priced anew' }],
  ['decision.choose', { decision: decision.id, option: option.id }],
  ['slot.agree', { slot: slot.id }],
  ['stage.confirm', { stage: stage.id }],
  ['stage.reopen', { stage: stage.id, reason: 'Wrong shade' }],
  ['handover.release', { handover: handover.id }],
  ['hold.release', { hold: hold.id }],
  ['stage.start', { stage: stage.id }],
]

describe('a press shown to somebody of the party whose it is', () => {
  const isTaken = (name: ProjectCommandName, input: Json, role: Role): boolean => {
    const actor = anActor(lead, { role })
    const { outcome } = projectCommands[name].apply(input, actor, record, aContext(actor))
    if (outcome === 'invalid') throw new Error(`${name} is given what it does not take.`)
    return outcome !== 'forbidden'
  }

  it.each(presses)('is one that they may press: %s', (name, input) => {
    expect(isTaken(name, input, 'manager')).toBe(true)
    expect(mayPress(name, 'manager')).toBe(true)
    expect(mayPress(name, 'hand')).toBe(isTaken(name, input, 'hand'))
    expect(mayPress(name, 'observer')).toBe(isTaken(name, input, 'observer'))
  })
})
