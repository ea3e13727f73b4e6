import * as z from 'zod/mini'
import { managesFor } from '../record/actor.ts'
import { changes, defineCommand, refusal } from '../record/command.ts'
import { wrongState } from '../record/condition.ts'
import type { Concession, Stage } from '../record/entities/work.ts'
import { ConcessionId } from '../record/ids.ts'
import { Text } from '../record/scalars.ts'
import { must } from '../record/table.ts'

/** Withdraws a concession, with a reason; any party that agreed to it may. Refuses once the stage has gone on by it. */
export const concessionWithdraw = defineCommand({
  name: 'concession.withdraw',
  input: z.strictObject({ concession: ConcessionId, reason: Text }),
  may: (actor, record, input) =>
    must(record.concessions, input.concession).parties.some((party) => managesFor(actor, party)),
  decide(record, input, ctx) {
    const concession = must(record.concessions, input.concession)
    if (concession.withdrawnAt !== null)
      return refusal({
        ...wrongState(concession.id, 'withdrawn', 'standing'),
        since: concession.withdrawnAt,
      })
    const stage = must(record.stages, concession.stage)
    if (isUsed(concession, stage))
      return refusal({
        ...wrongState(stage.id, stage.state, ...usableIn(concession)),
        since: stage.startedAt,
      })
    return changes({ ...concession, withdrawnAt: ctx.happenedAt })
  },
})

const usableIn = (concession: Concession): Stage['state'][] =>
  concession.rule === 'check'
    ? ['planned', 'in work', 'paused', 'ended', 'in doubt', 'reopened']
    : ['planned', 'paused', 'in doubt', 'reopened']

const isUsed = (concession: Concession, stage: Stage): boolean =>
  !usableIn(concession).includes(stage.state)
