import * as z from 'zod/mini'
import { actsForOrTold } from '../record/actor.ts'
import { changes, defineCommand, refusal, toldBy } from '../record/command.ts'
import { PartId, PartyId } from '../record/ids.ts'
import { OptionalText } from '../record/scalars.ts'
import { must } from '../record/table.ts'
import { partStateConditions } from './part-state.ts'

/** Notes that a part has come, ordered or not: the owner may bring one. It still has to be inspected. */
export const partArrive = defineCommand({
  name: 'part.arrive',
  input: z.strictObject({
    part: PartId,
    remark: z.optional(OptionalText),
    told: z.optional(PartyId),
  }),
  may: (actor, record, input) =>
    actsForOrTold(actor, record, must(record.parts, input.part).party, input.told),
  decide(record, input, ctx) {
    const part = must(record.parts, input.part)
    const unmet = partStateConditions(part, 'wanted', 'ordered', 'rejected')
    if (unmet.length > 0) return refusal(...unmet)
    return changes(
      {
        ...part,
        state: 'arrived',
        arrivedAt: ctx.happenedAt,
        inspectedAt: null,
        inspectedBy: null,
        remark: input.remark ?? null,
      },
      ...toldBy(ctx, 'part.arrive', part.id, input.told, record.id),
    )
  },
})
