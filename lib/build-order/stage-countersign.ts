import * as z from 'zod/mini'
import { isCountersigned } from '../gate/start/predecessor.ts'
import { actsFor } from '../record/actor.ts'
import { changes, defineCommand, refusal } from '../record/command.ts'
import { plain, wrongInput } from '../record/condition.ts'
import { PartyId, StageId } from '../record/ids.ts'
import { must } from '../record/table.ts'
import { bookOfHands, ownWorkConditions, standsIn } from './own-work.ts'
import { signature } from './signature.ts'
import { notIn } from './stage-state.ts'

/**
 * Countersigns a stage that is signed off, for a party of which it was asked. Nobody countersigns their own work:
 * in a one-hand shop the lead does (`for` names that shop), or the owner where that shop is the lead.
 */
export const stageCountersign = defineCommand({
  name: 'stage.countersign',
  input: z.strictObject({ stage: StageId, for: z.optional(PartyId) }),
  may(actor, record, input) {
    const stage = must(record.stages, input.stage)
    const party = input.for ?? actor.party
    if (party === null || !stage.countersigns.includes(party)) return false
    return actsFor(actor, party) || standsIn(actor, record, stage, party)
  },
  shops: (record, input) =>
    input.for === undefined ? [] : bookOfHands(record, must(record.stages, input.stage), input.for),
  decide(record, input, ctx) {
    const stage = must(record.stages, input.stage)
    const party = input.for ?? ctx.actor.party
    if (party === null) return refusal(wrongInput(stage.id, 'for', 'a party of this project'))
    const wrong = notIn(stage, 'signed off')
    if (wrong !== null) return refusal(wrong)
    if (isCountersigned(record, stage, party))
      return refusal({ ...plain(stage.id), rule: 'exists', field: 'for' })
    const press = {
      command: 'stage.countersign',
      input: { stage: stage.id, for: party },
    } as const
    const own = ownWorkConditions(record, stage, party, press, ctx)
    if (own.length > 0) return refusal(...own)
    return changes(signature(record, stage, 'countersign', party, ctx))
  },
})
