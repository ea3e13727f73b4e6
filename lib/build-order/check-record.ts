import * as z from 'zod/mini'
import { actsForOrTold } from '../record/actor.ts'
import { changes, defineCommand, refusal, toldBy } from '../record/command.ts'
import { type Condition, wrongInput, wrongState } from '../record/condition.ts'
import type { Check } from '../record/entities/work.ts'
import { CheckId, PartyId } from '../record/ids.ts'
import { OptionalText, Sha256 } from '../record/scalars.ts'
import { must } from '../record/table.ts'
import { notIn } from './stage-state.ts'
import { isWithin } from './within-limits.ts'

/**
 * Records the evidence of a check: a reading, a tick, photos, documents. A reading is judged on its full precision, limits
 * included; one out of limits is kept and needs a repeat or a concession. A repeat keeps the first.
 * Refuses a reading without a number, and a photo or document whose file has not arrived.
 */
export const checkRecord = defineCommand({
  name: 'check.record',
  input: z.strictObject({
    check: CheckId,
    value: z.optional(z.number()),
    text: z.optional(OptionalText),
    files: z.optional(z.array(Sha256).check(z.maxLength(50))),
    told: z.optional(PartyId),
  }),
  files: (input) => input.files ?? [],
  may(actor, record, input) {
    const stage = must(record.stages, must(record.checks, input.check).stage)
    return actsForOrTold(actor, record, stage.party, input.told)
  },
  decide(record, input, ctx) {
    const check = must(record.checks, input.check)
    if (check.removedAt !== null) return refusal(wrongState(check.id, 'removed', 'missing'))
    const wrong = notIn(must(record.stages, check.stage), 'in work', 'paused', 'ended', 'in doubt')
    if (wrong !== null) return refusal(wrong)
    const files = input.files ?? []
    const amiss = evidenceAmiss(check, input.value, files)
    if (amiss.length > 0) return refusal(...amiss)
    const value = input.value ?? null
    const recorded: Check = {
      ...check,
      state: value === null || isWithin(check, value) ? 'passed' : 'out of limits',
      value,
      firstValue: check.firstValue ?? check.value,
      text: input.text ?? null,
      files,
      by: input.told === undefined ? ctx.actor.person : null,
      at: ctx.happenedAt,
    }
    return changes(recorded, ...toldBy(ctx, 'check.record', check.id, input.told, record.id))
  },
})

function evidenceAmiss(
  check: Check,
  value: number | undefined,
  files: readonly Sha256[],
): Condition[] {
  if (check.type === 'reading')
    return value === undefined ? [wrongInput(check.id, 'value', 'a reading needs its number')] : []
  if (value !== undefined) return [wrongInput(check.id, 'value', 'only a reading has a number')]
  if (check.type === 'tick' || files.length > 0) return []
  return [
    wrongInput(
      check.id,
      'files',
      check.type === 'photo' ? 'a photo is needed' : 'a document is needed',
    ),
  ]
}
