import * as z from 'zod/mini'
import { actsFor } from '../record/actor.ts'
import { changes, defineCommand, refusal } from '../record/command.ts'
import { wrongState } from '../record/condition.ts'
import { ToldId } from '../record/ids.ts'
import { must } from '../record/table.ts'

/** A party confirms what the lead entered for it by telephone. */
export const toldConfirm = defineCommand({
  name: 'told.confirm',
  input: z.strictObject({ told: ToldId }),
  may: (actor, record, input) => actsFor(actor, must(record.told, input.told).party),
  decide(record, input, ctx) {
    const told = must(record.told, input.told)
    if (told.confirmedAt !== null)
      return refusal({
        ...wrongState(told.id, 'confirmed', 'told by phone'),
        since: told.confirmedAt,
      })
    return changes({ ...told, confirmedAt: ctx.happenedAt, confirmedBy: ctx.actor.person })
  },
})
