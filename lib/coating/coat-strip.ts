import * as z from 'zod/mini'
import { actsFor } from '../record/actor.ts'
import { changes, defineCommand, refusal } from '../record/command.ts'
import { plain, wrongInput, wrongState } from '../record/condition.ts'
import { AssemblyId, CoatId } from '../record/ids.ts'
import { Instant, Line, Text } from '../record/scalars.ts'
import { must } from '../record/table.ts'
import { stackOf } from './stack.ts'

/**
 * Records that coats were taken off an assembly again, down to a layer that stays or to bare metal (`downTo` null). With `place` it was sanded
 * through there only: the stack stays, and that place goes back to its own primer before anything else is laid.
 * The coats themselves stay in the record.
 */
export const coatStrip = defineCommand({
  name: 'coat.strip',
  input: z.strictObject({
    assembly: AssemblyId,
    downTo: z.nullable(CoatId),
    place: z.optional(Line),
    at: z.optional(Instant),
    reason: Text,
  }),
  may: (actor, record, input) =>
    actsFor(actor, must(record.assemblies, input.assembly).custodian) ||
    stackOf(record, input.assembly).some(({ party }) => actsFor(actor, party)),
  decide(record, input, ctx) {
    const stack = stackOf(record, input.assembly)
    const stays = input.downTo === null ? null : must(record.coats, input.downTo)
    if (stays !== null && !stack.some(({ id }) => id === stays.id))
      return refusal(wrongInput(stays.id, 'downTo', 'a coat that lies on this assembly'))
    const from = stays === null ? 0 : stack.findIndex(({ id }) => id === stays.id) + 1
    const off = stack.slice(from)
    const top = off.at(-1)
    if (top === undefined) return refusal(wrongState(input.assembly, 'bare to there', 'coated'))
    const at = input.at ?? ctx.happenedAt
    const time = { ...plain(input.assembly), rule: 'time', field: 'at' } as const
    if (at > ctx.now) return refusal({ ...time, why: 'in the future', limit: ctx.now })
    if (at < top.endedAt) return refusal({ ...time, why: 'before the start', limit: top.endedAt })
    if (input.place === undefined) return changes(...off.map((coat) => ({ ...coat, offAt: at })))
    return changes({
      ...top,
      sandedAt: at,
      sandedTo: stays?.product ?? 'bare metal',
      sandedPlace: input.place,
    })
  },
})
