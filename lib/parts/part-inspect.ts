import * as z from 'zod/mini'
import { actsFor } from '../record/actor.ts'
import { changes, defineCommand, refusal } from '../record/command.ts'
import { type Condition, wrongInput } from '../record/condition.ts'
import type { Part } from '../record/entities/things.ts'
import { PartId } from '../record/ids.ts'
import { OptionalText } from '../record/scalars.ts'
import { must } from '../record/table.ts'
import { partStateConditions } from './part-state.ts'

const saysWhy = (remark: string | undefined): boolean => /\S/.test(remark ?? '')

function conditions(part: Part, outcome: string, remark: string | undefined): Condition[] {
  const unmet = partStateConditions(part, 'arrived', 'inspected', 'rejected').map((condition) => ({
    ...condition,
    clearedBy: part.withdrawnAt === null ? [part.party] : [],
    clearedWith:
      part.withdrawnAt === null
        ? ({ command: 'part.arrive', input: { part: part.id } } as const)
        : null,
  }))
  if (unmet.length > 0) return unmet
  const corrects = part.state !== 'arrived'
  if (!saysWhy(remark) && (corrects || outcome === 'rejected'))
    return [wrongInput(part.id, 'remark', corrects ? 'why it is corrected' : 'what is wrong')]
  return []
}

/**
 * Passes or rejects a part that has arrived. A rejection says what is wrong; a mistaken inspection is put right by another
 * that says why.
 */
export const partInspect = defineCommand({
  name: 'part.inspect',
  input: z.strictObject({
    part: PartId,
    outcome: z.enum(['passed', 'rejected']),
    remark: z.optional(OptionalText),
  }),
  may: (actor, record, input) => actsFor(actor, must(record.parts, input.part).party),
  decide(record, input, ctx) {
    const part = must(record.parts, input.part)
    const unmet = conditions(part, input.outcome, input.remark)
    if (unmet.length > 0) return refusal(...unmet)
    return changes({
      ...part,
      state: input.outcome === 'passed' ? 'inspected' : 'rejected',
      inspectedAt: ctx.happenedAt,
      inspectedBy: ctx.actor.person,
      remark: input.remark ?? part.remark,
    })
  },
})
