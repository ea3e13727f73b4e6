import * as z from 'zod/mini'
import { concessionsOfNewParty } from '../gate/concessions.ts'
import { managesLead } from '../record/actor.ts'
import { changes, defineCommand, refusal } from '../record/command.ts'
import { type Condition, wrongState } from '../record/condition.ts'
import type { Stage } from '../record/entities/work.ts'
import { PartyId, StageId } from '../record/ids.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import { Line } from '../record/scalars.ts'
import { must } from '../record/table.ts'
import { maySetUp, notPlanned } from './set-up.ts'
import { describedStage, stageFields, wrongInStage } from './stage-fields.ts'
import { stageNameConditions } from './stage-name.ts'

const Input = z.object({
  stage: StageId,
  name: z.optional(Line),
  party: z.optional(PartyId),
  ...stageFields,
})
type Input = z.infer<typeof Input>

/** Said at any time: no sign-off rests on them. */
const notEssential: ReadonlySet<string> = new Set([
  'stage',
  'group',
  'hoursLeast',
  'hoursLikely',
  'hoursMost',
])

const changesEssentials = (input: Input): boolean =>
  Object.entries(input).some(([field, value]) => value !== undefined && !notEssential.has(field))

/** What a shop may not do to its own stage: give it away, or free it of what others rely on. */
const leadOnly = (input: Input): boolean =>
  input.party !== undefined ||
  input.safety === false ||
  input.countersigns !== undefined ||
  input.changeOrder === null ||
  input.decision === null

/** A stage that a change order brought stays bound to it, or the work could begin without the yes. */
function stillBound(record: ProjectRecord, before: Stage, after: Stage): Condition[] {
  if (before.changeOrder === null || before.changeOrder === after.changeOrder) return []
  const order = must(record.changeOrders, before.changeOrder)
  return order.state === 'draft' || order.state === 'withdrawn'
    ? []
    : [wrongState(order.id, order.state, 'draft', 'withdrawn')]
}

/**
 * Changes what is said of a stage. Once it is no longer planned only its group and its hours can change.
 * Refuses with `state`, or with everything that would be wrong.
 */
export const stageDescribe = defineCommand({
  name: 'stage.describe',
  input: Input,
  may(actor, record, input) {
    const stage = must(record.stages, input.stage)
    return leadOnly(input) ? managesLead(actor, record) : maySetUp(actor, record, stage.party)
  },
  decide(record, input) {
    const stage = must(record.stages, input.stage)
    const late = changesEssentials(input) || stage.removedAt !== null ? notPlanned(stage) : []
    if (late.length > 0) return refusal(...late)
    const described = describedStage(stage, input)
    const wrong = [
      ...(described.name === stage.name
        ? []
        : stageNameConditions(record, described.name, stage.id)),
      ...wrongInStage(record, described),
      ...stillBound(record, stage, described),
    ]
    if (wrong.length > 0) return refusal(...wrong)
    return described.party === stage.party
      ? changes(described)
      : changes(described, ...concessionsOfNewParty(record, described))
  },
})
