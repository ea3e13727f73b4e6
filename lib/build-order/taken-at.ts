import type { Context } from '../record/command.ts'
import { type Condition, plain } from '../record/condition.ts'
import type { Instant } from '../record/scalars.ts'

/** Why a reading can't have been taken then: nobody reads in the future. */
export const takenConditions = (entity: string, takenAt: Instant, ctx: Context): Condition[] =>
  takenAt <= ctx.now
    ? []
    : [
        {
          ...plain(entity),
          rule: 'time',
          field: 'takenAt',
          why: 'in the future',
          limit: ctx.now,
        },
      ]
