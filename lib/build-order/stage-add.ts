import * as z from 'zod/mini'
import { changes, defineCommand, refusal } from '../record/command.ts'
import { plain } from '../record/condition.ts'
import { PartyId } from '../record/ids.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import { Line } from '../record/scalars.ts'
import { all, must } from '../record/table.ts'
import { maySetUp } from './set-up.ts'
import { describedStage, plannedStage, stageFields, wrongInStage } from './stage-fields.ts'
import { stageNameConditions } from './stage-name.ts'

/** The number of the next stage. A removed stage keeps its number: papers may name it. */
export const nextNumber = (record: ProjectRecord): number =>
  all(record.stages).reduce((highest, stage) => Math.max(highest, stage.number), 0) + 1

/**
 * Adds a planned stage, numbered after the highest unless a number is given.
 * Refuses a number that another stage has or had, a name that another has, a party that has left, hours that go down, an assembly named twice.
 */
export const stageAdd = defineCommand({
  name: 'stage.add',
  input: z.object({
    name: Line,
    party: PartyId,
    number: z.optional(z.int().check(z.minimum(1), z.maximum(1_000_000))),
    ...stageFields,
  }),
  may: (actor, record, input) => maySetUp(actor, record, must(record.parties, input.party).id),
  decide(record, input, ctx) {
    const number = input.number ?? nextNumber(record)
    const id = ctx.newId('stg')
    const stage = describedStage(
      plannedStage(id, record.id, number, input.name, input.party),
      input,
    )
    const taken = all(record.stages).filter((other) => other.number === number)
    const wrong = [
      ...taken.map((other) => ({
        ...plain(other.id),
        rule: 'exists' as const,
        field: 'number',
      })),
      ...stageNameConditions(record, input.name, null),
      ...wrongInStage(record, stage),
    ]
    return wrong.length > 0 ? refusal(...wrong) : changes(stage)
  },
})
