import * as z from 'zod/mini'
import { leadOf, managesFor, managesLead } from '../record/actor.ts'
import { changes, defineCommand, refusal } from '../record/command.ts'
import { type Condition, plain, wrongInput, wrongState } from '../record/condition.ts'
import type { Party } from '../record/entities/people.ts'
import { PartyId } from '../record/ids.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import { all, must } from '../record/table.ts'

/** The assemblies a party still answers for; each goes to the lead by a handover. */
function custodyConditions(record: ProjectRecord, party: Party): Condition[] {
  const lead = leadOf(record)
  return all(record.assemblies)
    .filter((assembly) => assembly.custodian === party.id)
    .map(({ id, custodian, since }) => ({
      ...plain(id),
      rule: 'custody',
      custodian,
      handover: null,
      since,
      clearedBy: [party.id],
      clearedWith:
        lead === undefined
          ? null
          : { command: 'handover.prepare', input: { assemblies: [id], to: lead.id } },
    }))
}

/** Its work that has begun and isn't signed off. */
const workConditions = (record: ProjectRecord, party: Party): Condition[] =>
  all(record.stages)
    .filter((stage) => stage.party === party.id && stage.removedAt === null)
    .filter((stage) => !['planned', 'signed off'].includes(stage.state))
    .map((stage) => ({
      ...wrongState(stage.id, stage.state, 'planned', 'signed off'),
      since: stage.startedAt,
      clearedBy: [party.id],
    }))

/** Handovers to it that are on their way. */
const comingConditions = (record: ProjectRecord, party: Party): Condition[] =>
  all(record.handovers)
    .filter((handover) => handover.to === party.id && handover.state === 'released')
    .map((handover) => ({
      ...wrongState(handover.id, handover.state, 'received', 'refused', 'taken back'),
      since: handover.releasedAt,
      clearedBy: [party.id],
      clearedWith: { command: 'handover.receive', input: { handover: handover.id } },
    }))

/** A party leaves; what it did stays. Refuses the lead, and one that has things, begun work or something coming. */
export const partyLeave = defineCommand({
  name: 'party.leave',
  input: z.strictObject({ party: PartyId }),
  may: (actor, record, input) => managesLead(actor, record) || managesFor(actor, input.party),
  decide(record, input, ctx) {
    const party = must(record.parties, input.party)
    if (party.leftAt !== null) return refusal(wrongState(party.id, 'left', 'in the project'))
    if (party.lead) return refusal(wrongInput(party.id, 'party', 'the lead stays'))
    if (party.role === 'owner') return refusal(wrongInput(party.id, 'party', 'the owner stays'))
    const unmet = [
      ...custodyConditions(record, party),
      ...workConditions(record, party),
      ...comingConditions(record, party),
    ]
    return unmet.length > 0 ? refusal(...unmet) : changes({ ...party, leftAt: ctx.happenedAt })
  },
})
