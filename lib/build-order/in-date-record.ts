import * as z from 'zod/mini'
import { managesFor } from '../record/actor.ts'
import { changes, defineCommand, refusal } from '../record/command.ts'
import { type Condition, wrongInput, wrongState } from '../record/condition.ts'
import { DatedThing } from '../record/entities/standing.ts'
import { InDateId, PartyId, PersonId } from '../record/ids.ts'
import { CivilDate, Line } from '../record/scalars.ts'
import { must } from '../record/table.ts'

/**
 * Says that a thing of one's own party, or a person of it, is in date through a day. Of a person it says that and nothing else. A booth's
 * clearance comes with the minutes that were measured.
 */
export const inDateRecord = defineCommand({
  name: 'inDate.record',
  input: z.strictObject({
    party: PartyId,
    thing: DatedThing,
    name: Line,
    person: z.optional(z.nullable(PersonId)),
    minutes: z.optional(z.nullable(z.number().check(z.minimum(0), z.maximum(600)))),
    doneOn: CivilDate,
    until: CivilDate,
  }),
  may: (actor, record, input) => managesFor(actor, must(record.parties, input.party).id),
  decide(record, input, ctx) {
    const party = must(record.parties, input.party)
    const wrong: Condition[] = []
    if (input.until < input.doneOn)
      wrong.push(wrongInput(party.id, 'until', 'not before the day it was done'))
    if (input.thing === 'booth clearance' && (input.minutes ?? null) === null)
      wrong.push(wrongInput(party.id, 'minutes', 'the clearance time that was measured'))
    if (wrong.length > 0) return refusal(...wrong)
    return changes({
      kind: 'inDate',
      id: ctx.newId('ind'),
      project: record.id,
      party: party.id,
      thing: input.thing,
      name: input.name,
      person: input.person ?? null,
      minutes: input.thing === 'booth clearance' ? (input.minutes ?? null) : null,
      doneOn: input.doneOn,
      until: input.until,
      by: ctx.actor.person,
      at: ctx.happenedAt,
      withdrawnAt: null,
    })
  },
})

/** Takes back that something is in date. */
export const inDateWithdraw = defineCommand({
  name: 'inDate.withdraw',
  input: z.strictObject({ inDate: InDateId }),
  may: (actor, record, input) => managesFor(actor, must(record.inDates, input.inDate).party),
  decide(record, input, ctx) {
    const one = must(record.inDates, input.inDate)
    return one.withdrawnAt !== null
      ? refusal(wrongState(one.id, 'withdrawn', 'in date'))
      : changes({ ...one, withdrawnAt: ctx.happenedAt })
  },
})
