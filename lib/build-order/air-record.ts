import * as z from 'zod/mini'
import { actsFor } from '../record/actor.ts'
import { changes, defineCommand, refusal } from '../record/command.ts'
import { type Condition, plain, wrongInput } from '../record/condition.ts'
import { BayId, StageId } from '../record/ids.ts'
import { Instant } from '../record/scalars.ts'
import { must } from '../record/table.ts'
import { notIn } from './stage-state.ts'

const celsius = z.number().check(z.minimum(-40), z.maximum(80))

/**
 * Records air and surface temperature in °C and relative humidity in % as read at the panel, before or while a stage is worked on. `takenAt`: when,
 * where it is typed in later. A humidity of 1 % or less is refused: it was meant as a share.
 */
export const airRecord = defineCommand({
  name: 'air.record',
  input: z.strictObject({
    stage: StageId,
    air: celsius,
    surface: celsius,
    humidity: z.number().check(z.minimum(0), z.maximum(100)),
    takenAt: z.optional(Instant),
    bay: z.optional(z.nullable(BayId)),
  }),
  may: (actor, record, input) => actsFor(actor, must(record.stages, input.stage).party),
  decide(record, input, ctx) {
    const stage = must(record.stages, input.stage)
    const takenAt = input.takenAt ?? ctx.happenedAt
    const wrong: Condition[] = []
    const state = notIn(stage, 'planned', 'in work', 'paused', 'reopened')
    if (state !== null) wrong.push(state)
    if (input.humidity <= 1)
      wrong.push(wrongInput(stage.id, 'humidity', 'per cent, such as 60, not a share'))
    if (takenAt > ctx.happenedAt)
      wrong.push({
        ...plain(stage.id),
        rule: 'time',
        field: 'takenAt',
        why: 'in the future',
        limit: ctx.happenedAt,
      })
    if (wrong.length > 0) return refusal(...wrong)
    return changes({
      kind: 'airReading',
      id: ctx.newId('air'),
      project: record.id,
      stage: stage.id,
      party: stage.party,
      bay: input.bay ?? null,
      air: input.air,
      surface: input.surface,
      humidity: input.humidity,
      takenAt,
      at: ctx.happenedAt,
      by: ctx.actor.person,
    })
  },
})
