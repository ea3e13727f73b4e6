import * as z from 'zod/mini'
import { managesFor, managesLead } from '../record/actor.ts'
import { changes, defineCommand, refusal } from '../record/command.ts'
import { type Condition, wrongInput, wrongState } from '../record/condition.ts'
import { MilestoneId, PartyId, StageId } from '../record/ids.ts'
import { Line, Minor, OptionalText } from '../record/scalars.ts'
import { must } from '../record/table.ts'
import { notPlanned, partiesLeft } from './set-up.ts'

/** Agrees that a payment comes before a planned stage starts: entered by who is to be paid, the lead's own by the lead. */
export const milestoneAgree = defineCommand({
  name: 'milestone.agree',
  input: z.strictObject({
    stage: StageId,
    payer: PartyId,
    name: Line,
    net: z.optional(z.nullable(Minor)),
  }),
  may: (actor, record, input) => managesFor(actor, must(record.stages, input.stage).party),
  decide(record, input, ctx) {
    const stage = must(record.stages, input.stage)
    const payer = must(record.parties, input.payer)
    const wrong: Condition[] = [...notPlanned(stage), ...partiesLeft(record, [payer.id])]
    if (payer.id === stage.party) wrong.push(wrongInput(stage.id, 'payer', 'another party pays'))
    if (wrong.length > 0) return refusal(...wrong)
    return changes({
      kind: 'milestone',
      id: ctx.newId('mst'),
      project: record.id,
      stage: stage.id,
      party: stage.party,
      payer: payer.id,
      name: input.name,
      net: input.net ?? null,
      agreedAt: ctx.happenedAt,
      agreedBy: ctx.actor.person,
      metAt: null,
      metBy: null,
      remark: '',
      removedAt: null,
    })
  },
})

/** Says that an agreed payment has come: who is paid says it, for the money is theirs. */
export const milestoneMeet = defineCommand({
  name: 'milestone.meet',
  input: z.strictObject({ milestone: MilestoneId, remark: z.optional(OptionalText) }),
  may: (actor, record, input) => managesFor(actor, must(record.milestones, input.milestone).party),
  decide(record, input, ctx) {
    const one = must(record.milestones, input.milestone)
    if (one.removedAt !== null) return refusal(wrongState(one.id, 'withdrawn', 'agreed'))
    if (one.metAt !== null) return refusal(wrongState(one.id, 'met', 'agreed'))
    return changes({
      ...one,
      metAt: ctx.happenedAt,
      metBy: ctx.actor.person,
      remark: input.remark ?? one.remark,
    })
  },
})

/** Withdraws an agreed payment as a condition; who is to be paid, or the lead. */
export const milestoneWithdraw = defineCommand({
  name: 'milestone.withdraw',
  input: z.strictObject({ milestone: MilestoneId }),
  may: (actor, record, input) =>
    managesLead(actor, record) || managesFor(actor, must(record.milestones, input.milestone).party),
  decide(record, input, ctx) {
    const one = must(record.milestones, input.milestone)
    return one.removedAt !== null
      ? refusal(wrongState(one.id, 'withdrawn', 'agreed'))
      : changes({ ...one, removedAt: ctx.happenedAt })
  },
})
