import * as z from 'zod/mini'
import { linksFrom } from '../gate/indexes.ts'
import { actsFor, leadOf } from '../record/actor.ts'
import { changes, defineCommand, refusal } from '../record/command.ts'
import type { Condition } from '../record/condition.ts'
import type { MetalReading } from '../record/entities/evidence.ts'
import { StageId } from '../record/ids.ts'
import { Instant } from '../record/scalars.ts'
import { must } from '../record/table.ts'
import { convert } from '../sums/units.ts'
import { badInput } from './bad-input.ts'
import { notIn } from './stage-state.ts'
import { takenConditions } from './taken-at.ts'

/** In °C: metal in a shop or a booth, baking included. */
const METAL = { least: -40, greatest: 90 }

/**
 * Enters the metal's temperature while what a stage laid on it cures; it holds until the next such reading. It can only lengthen the cure.
 * By who did the work, who waits for it, or the lead: whoever stands beside the car.
 */
export const metalRecord = defineCommand({
  name: 'metal.record',
  input: z.strictObject({
    stage: StageId,
    metal: z.number(),
    degrees: z.optional(z.enum(['°C', '°F'])),
    takenAt: z.optional(Instant),
  }),
  may(actor, record, input) {
    const stage = must(record.stages, input.stage)
    const after = linksFrom(record.links, stage.id).map((link) => must(record.stages, link.to))
    const parties = [stage, ...after].map(({ party }) => party)
    const lead = leadOf(record)
    return [...parties, ...(lead === undefined ? [] : [lead.id])].some((party) =>
      actsFor(actor, party),
    )
  },
  decide(record, input, ctx) {
    const stage = must(record.stages, input.stage)
    const celsius = convert(input.metal, input.degrees ?? '°C', '°C')
    const takenAt = input.takenAt ?? ctx.happenedAt
    const state = notIn(stage, 'in work', 'ended', 'signed off', 'in doubt')
    const wrong: Condition[] = [
      ...(state === null ? [] : [state]),
      ...takenConditions(stage.id, takenAt, ctx),
    ]
    if (celsius < METAL.least || celsius > METAL.greatest)
      wrong.push(badInput(stage.id, 'metal', 'from −40 to 90 °C'))
    if (wrong.length > 0) return refusal(...wrong)
    const reading: MetalReading = {
      kind: 'metalReading',
      id: ctx.newId('mtl'),
      project: record.id,
      stage: stage.id,
      celsius,
      takenAt,
      at: ctx.happenedAt,
      by: ctx.actor.person,
    }
    return changes(reading)
  },
})
