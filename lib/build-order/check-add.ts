import * as z from 'zod/mini'
import { changes, defineCommand, refusal } from '../record/command.ts'
import { type Condition, plain, wrongState } from '../record/condition.ts'
import { type Check, CheckType } from '../record/entities/work.ts'
import { type CheckId, type ProjectId, StageId } from '../record/ids.ts'
import { Line } from '../record/scalars.ts'
import { all, must } from '../record/table.ts'
import { wrongLimits } from './check-limits.ts'
import { maySetUp } from './set-up.ts'

/** A check of which nothing has been recorded yet. */
export const missingCheck = (
  id: CheckId,
  project: ProjectId,
  asked: Pick<Check, 'stage' | 'position' | 'type' | 'name' | 'unit' | 'least' | 'greatest'>,
): Check => ({
  kind: 'check',
  id,
  project,
  stage: asked.stage,
  position: asked.position,
  type: asked.type,
  name: asked.name,
  unit: asked.unit,
  least: asked.least,
  greatest: asked.greatest,
  points: [],
  basis: null,
  limitSource: null,
  limitWanted: false,
  needsInstrument: false,
  state: 'missing',
  value: null,
  firstValue: null,
  text: null,
  files: [],
  by: null,
  at: null,
  removedAt: null,
})

/**
 * Asks for one more piece of evidence of a stage; limits of a reading are inclusive.
 * Refuses once the stage is signed off, and a check that it has already.
 */
export const checkAdd = defineCommand({
  name: 'check.add',
  input: z.object({
    stage: StageId,
    type: CheckType,
    name: Line,
    unit: z.optional(z.nullable(Line)),
    least: z.optional(z.nullable(z.number())),
    greatest: z.optional(z.nullable(z.number())),
  }),
  may: (actor, record, input) => maySetUp(actor, record, must(record.stages, input.stage).party),
  decide(record, input, ctx) {
    const stage = must(record.stages, input.stage)
    const checks = all(record.checks).filter((check) => check.stage === stage.id)
    const check = missingCheck(ctx.newId('chk'), record.id, {
      stage: stage.id,
      position: checks.reduce((last, other) => Math.max(last, other.position), 0) + 1,
      type: input.type,
      name: input.name,
      unit: input.unit ?? null,
      least: input.least ?? null,
      greatest: input.greatest ?? null,
    })
    const wrong: Condition[] = wrongLimits(stage.id, check)
    if (stage.removedAt !== null) wrong.push(wrongState(stage.id, 'removed', 'planned'))
    if (stage.state === 'signed off' || stage.state === 'in doubt')
      wrong.push(wrongState(stage.id, stage.state, 'planned', 'in work', 'ended', 'reopened'))
    const same = checks.find(
      (other) => other.removedAt === null && other.type === check.type && other.name === check.name,
    )
    if (same !== undefined) wrong.push({ ...plain(same.id), rule: 'exists', field: 'name' })
    return wrong.length > 0 ? refusal(...wrong) : changes(check)
  },
})
