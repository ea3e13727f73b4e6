import * as z from 'zod/mini'
import { type Actor, actsFor, actsForOrTold } from '../record/actor.ts'
import { changes, defineCommand, refusal, toldBy } from '../record/command.ts'
import { PartId, PartyId } from '../record/ids.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import { CivilDate, OptionalText } from '../record/scalars.ts'
import { must } from '../record/table.ts'
import { newPromise } from './new-promise.ts'
import { partStateConditions } from './part-state.ts'

interface Promised {
  readonly part: PartId
  readonly told?: PartyId | undefined
}

/** Who gives their word: the supplier or the buyer, themselves or by the lead as told by telephone. */
function mayPromise(actor: Actor, record: ProjectRecord, { part: id, told }: Promised): boolean {
  const { party, supplier } = must(record.parts, id)
  const givers = supplier === null ? [party] : [party, supplier]
  return told === undefined
    ? givers.some((giver) => actsFor(actor, giver))
    : givers.some((giver) => actsForOrTold(actor, record, giver, told))
}

/** Promises an ordered part for a day. Each promise is kept: how often one has slipped is a fact of its own. */
export const partPromise = defineCommand({
  name: 'part.promise',
  input: z.strictObject({
    part: PartId,
    date: CivilDate,
    remark: z.optional(OptionalText),
    told: z.optional(PartyId),
  }),
  may: mayPromise,
  decide(record, input, ctx) {
    const part = must(record.parts, input.part)
    const unmet = partStateConditions(part, 'ordered')
    if (unmet.length > 0) return refusal(...unmet)
    const by = input.told ?? ctx.actor.party ?? part.party
    const promise = newPromise(part, input.date, by, input.remark ?? '', ctx)
    return changes(promise, ...toldBy(ctx, 'part.promise', promise.id, input.told, record.id))
  },
})
