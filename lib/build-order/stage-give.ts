import * as z from 'zod/mini'
import { concessionsOfNewParty } from '../gate/concessions.ts'
import { slotsForStage } from '../gate/indexes.ts'
import { managesLead } from '../record/actor.ts'
import { changes, defineCommand, refusal } from '../record/command.ts'
import { type Condition, wrongState } from '../record/condition.ts'
import { PartyId, StageId } from '../record/ids.ts'
import { Text } from '../record/scalars.ts'
import { must } from '../record/table.ts'
import { badInput } from './bad-input.ts'
import { wrongInStage } from './stage-fields.ts'
import { notIn } from './stage-state.ts'

/**
 * Gives a stage to another party, with a reason: planned, paused or reopened. Who worked on it so far stays on record. Custody isn't moved by
 * it: that takes a handover. What was conceded so far counts once the new party accepts it too. Refuses while a slot is claimed for it by the party that had it.
 */
export const stageGive = defineCommand({
  name: 'stage.give',
  input: z.strictObject({ stage: StageId, party: PartyId, reason: Text }),
  may(actor, record, input) {
    must(record.stages, input.stage)
    return managesLead(actor, record)
  },
  decide(record, input) {
    const stage = must(record.stages, input.stage)
    const party = must(record.parties, input.party)
    const wrong: Condition[] = []
    const state = notIn(stage, 'planned', 'paused', 'reopened')
    if (state !== null) wrong.push(state)
    if (party.id === stage.party) wrong.push(badInput(stage.id, 'party', 'it is theirs already'))
    if (party.role === 'observer')
      wrong.push(badInput(stage.id, 'party', 'somebody who works on the car'))
    for (const slot of slotsForStage(record.slots, stage.id))
      wrong.push({
        ...wrongState(slot.id, slot.state, 'released'),
        clearedBy: [slot.party],
        clearedWith: { command: 'slot.release', input: { slot: slot.id } },
      })
    const given = {
      ...stage,
      party: party.id,
      handoverTo: stage.handoverTo === party.id ? null : stage.handoverTo,
      countersigns: stage.countersigns.filter((id) => id !== party.id),
    }
    wrong.push(...wrongInStage(record, given))
    return wrong.length > 0
      ? refusal(...wrong)
      : changes(given, ...concessionsOfNewParty(record, given))
  },
})
