import * as z from 'zod/mini'
import { checkConditions } from '../gate/sign-off.ts'
import { startConditions } from '../gate/start.ts'
import { managesFor, managesLead } from '../record/actor.ts'
import { changes, defineCommand, refusal } from '../record/command.ts'
import { wrongInput } from '../record/condition.ts'
import { StageId } from '../record/ids.ts'
import { must } from '../record/table.ts'
import { dueHandover } from './due-handover.ts'
import { signature } from './signature.ts'
import { notIn } from './stage-state.ts'

/** What must be so however the work was done; custody, bay and lags were of its own day. */
const standing: ReadonlySet<string> = new Set([
  'predecessor',
  'countersign',
  'hold',
  'change-order',
  'decision',
  'unknown',
])

/**
 * Confirms a stage that is in doubt: it is signed off (again). Its party or the lead confirms.
 * Refuses while something it relied on isn't signed off, a hold point before it isn't released, its change order has no yes,
 * or a check isn't passed.
 */
export const stageConfirm = defineCommand({
  name: 'stage.confirm',
  input: z.strictObject({ stage: StageId }),
  may: (actor, record, input) =>
    managesFor(actor, must(record.stages, input.stage).party) || managesLead(actor, record),
  decide(record, input, ctx) {
    const stage = must(record.stages, input.stage)
    const wrong = notIn(stage, 'in doubt')
    if (wrong !== null) return refusal(wrong)
    const { party } = ctx.actor
    if (party === null) return refusal(wrongInput(stage.id, 'party', 'a party of this project'))
    const unmet = [
      ...startConditions(record, stage, ctx.happenedAt).filter(({ rule }) => standing.has(rule)),
      ...checkConditions(record, stage),
    ]
    if (unmet.length > 0) return refusal(...unmet)
    const first = stage.signedOffAt === null
    return changes(
      {
        ...stage,
        state: 'signed off',
        signedOffAt: stage.signedOffAt ?? ctx.happenedAt,
        doubt: null,
      },
      signature(record, stage, 'confirm', party, ctx),
      ...(first ? dueHandover(record, stage, ctx) : []),
    )
  },
})
