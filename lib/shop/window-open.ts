import * as z from 'zod/mini'
import { leadOf, managesLead } from '../record/actor.ts'
import { changes, defineCommand, refusal } from '../record/command.ts'
import { wrongInput, wrongState } from '../record/condition.ts'
import { AssemblyId, BayId } from '../record/ids.ts'
import { Instant } from '../record/scalars.ts'
import { must } from '../record/table.ts'
import { bayOf } from './diary.ts'
import { spanConditions } from './span.ts'

/** Publishes a span in which claims for an assembly are agreed at once; at one bay of the lead's own where one is named. */
export const windowOpen = defineCommand({
  name: 'window.open',
  input: z.strictObject({
    assembly: AssemblyId,
    bay: z.optional(BayId),
    from: Instant,
    to: Instant,
  }),
  shops(record, { bay }) {
    const shop = leadOf(record)?.shop
    return bay === undefined || shop === undefined || shop === null ? [] : [shop]
  },
  may: (actor, record) => managesLead(actor, record),
  decide(record, input, ctx) {
    const assembly = must(record.assemblies, input.assembly)
    const wrongSpan = spanConditions(assembly.id, input)
    if (wrongSpan.length > 0) return refusal(...wrongSpan)
    const shop = leadOf(record)?.shop
    if (input.bay !== undefined) {
      if (shop === undefined || shop === null)
        return refusal(wrongInput(input.bay, 'bay', 'the lead has no bays here'))
      const bay = bayOf(ctx, shop, input.bay)
      if (bay.retiredAt !== null) return refusal(wrongState(bay.id, 'retired', 'in use'))
    }
    return changes({
      kind: 'openWindow',
      id: ctx.newId('win'),
      project: record.id,
      assembly: assembly.id,
      bay: input.bay ?? null,
      from: input.from,
      to: input.to,
      openedAt: ctx.happenedAt,
      closedAt: null,
    })
  },
})
