import * as z from 'zod/mini'
import { actsFor, managesLead } from '../record/actor.ts'
import { changes, defineCommand, refusal } from '../record/command.ts'
import { wrongInput, wrongState } from '../record/condition.ts'
import { PartyId, StageId } from '../record/ids.ts'
import { Line } from '../record/scalars.ts'
import { must } from '../record/table.ts'

/** Notes that a part is needed, by which stages, and who gets it: a hand of that party, or the lead. */
export const partWant = defineCommand({
  name: 'part.want',
  input: z.strictObject({
    party: PartyId,
    name: Line,
    number: z.optional(Line),
    supplier: z.optional(PartyId),
    stages: z
      .array(StageId)
      .check(z.maxLength(100))
      .check(z.refine((ids) => new Set(ids).size === ids.length, 'each stage once')),
  }),
  may: (actor, record, input) => actsFor(actor, input.party) || managesLead(actor, record),
  decide(record, input, ctx) {
    const party = must(record.parties, input.party)
    if (party.leftAt !== null) return refusal(wrongState(party.id, 'left', 'in the project'))
    if (party.role === 'observer')
      return refusal(wrongInput(party.id, 'party', 'somebody who works on the car'))
    const removed = input.stages
      .map((id) => must(record.stages, id))
      .filter((stage) => stage.removedAt !== null)
    if (removed.length > 0)
      return refusal(...removed.map((stage) => wrongState(stage.id, 'removed', 'planned')))
    return changes({
      kind: 'part',
      id: ctx.newId('prt'),
      project: record.id,
      name: input.name,
      number: input.number ?? null,
      party: party.id,
      supplier: input.supplier === undefined ? null : must(record.parties, input.supplier).id,
      stages: input.stages,
      state: 'wanted',
      price: null,
      wantedAt: ctx.happenedAt,
      orderedAt: null,
      arrivedAt: null,
      inspectedAt: null,
      inspectedBy: null,
      remark: null,
      withdrawnAt: null,
    })
  },
})
