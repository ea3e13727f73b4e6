import * as z from 'zod/mini'
import { leadOf, managesLead } from '../record/actor.ts'
import { changes, defineCommand, refusal } from '../record/command.ts'
import { type Condition, wrongState } from '../record/condition.ts'
import type { Link } from '../record/entities/work.ts'
import { StageId } from '../record/ids.ts'
import { Text } from '../record/scalars.ts'
import { all, must } from '../record/table.ts'
import { notOpen } from './hold-state.ts'
import { handedOn } from './links-handed-on.ts'
import { notPlanned } from './set-up.ts'

/**
 * Takes a planned stage out of the build order, with a reason. What it waited for is handed on, lags and all, to what
 * waited for it, so that nothing starts earlier by a removal; where both were linked already, the longer least lag and
 * the shorter greatest lag hold. Refuses while a slot is claimed for it or a hold point stands on it.
 */
export const stageRemove = defineCommand({
  name: 'stage.remove',
  input: z.object({ stage: StageId, reason: Text }),
  may(actor, record, input) {
    must(record.stages, input.stage)
    return managesLead(actor, record)
  },
  decide(record, input, ctx) {
    const stage = must(record.stages, input.stage)
    const slots = all(record.slots)
      .filter((slot) => slot.stage === stage.id && slot.state !== 'released')
      .map(
        (slot): Condition => ({
          ...wrongState(slot.id, slot.state, 'released'),
          clearedBy: [slot.party],
          clearedWith: { command: 'slot.release', input: { slot: slot.id } },
        }),
      )
    const lead = leadOf(record)
    const holds = all(record.holds)
      .filter((hold) => hold.stage === stage.id && notOpen(hold) === null)
      .map(
        (hold): Condition => ({
          ...wrongState(hold.id, hold.state, 'released', 'waived', 'removed'),
          clearedBy: lead === undefined ? [] : [lead.id],
          clearedWith: { command: 'hold.remove', input: { hold: hold.id } },
        }),
      )
    const wrong = [...notPlanned(stage), ...slots, ...holds]
    if (wrong.length > 0) return refusal(...wrong)

    const links = all(record.links).filter((link) => link.removedAt === null)
    const gone = links
      .filter((link) => link.to === stage.id || link.from === stage.id)
      .map((link): Link => ({ ...link, removedAt: ctx.happenedAt }))
    return changes(
      { ...stage, removedAt: ctx.happenedAt },
      ...gone,
      ...handedOn(links, stage.id, ctx.newId, stage.keys),
    )
  },
})
