import { describe, expect, it } from 'vitest'
import { shownForApproval, shownText } from '../lib/money/approval.ts'
import type { ChangeOrderId } from '../lib/record/ids.ts'
import type { ProjectRecord } from '../lib/record/project-record.ts'
import { Minor } from '../lib/record/scalars.ts'
import { viewOf } from '../lib/see/view-of.ts'
import {
  aChangeLine,
  aChangeOrder,
  anEstimateLine,
  aParty,
  aProject,
  aRecord,
  engineShop,
  lead,
  owner,
  trimShop,
} from './builders.ts'

const castings = aParty({ bills: 'lead', name: 'Sallow Street Castings' })
const spindles = aChangeOrder({ number: 1 })
const liners = aChangeOrder({ number: 2, party: castings.id })
const loom = aChangeOrder({ number: 3, party: lead })
const record = aRecord(
  castings,
  aProject({ standingConsentEach: Minor.parse(250_00), standingConsentTotal: Minor.parse(900_00) }),
  [spindles, liners, loom].flatMap((order) => [
    order,
    aChangeLine({ changeOrder: order.id, party: order.party }),
  ]),
  [lead, engineShop, trimShop, castings.id].map((party) =>
    anEstimateLine({ party, type: 'allowance' }),
  ),
)
const asOwner = viewOf(record, { party: owner, role: 'owner' })
const asLead = viewOf(record, { party: lead, role: 'manager' })

const hashOf = (record: ProjectRecord, id: ChangeOrderId, authority?: 'standing consent') =>
  shownText(shownForApproval(record, id, authority)).hash

describe('what is shown before a yes, on the phone of who may give it', () => {
  it('is for the owner what the record says, of every shop that bills the owner', () => {
    expect(hashOf(asOwner, spindles.id)).toBe(hashOf(record, spindles.id))
    expect(hashOf(asOwner, loom.id)).toBe(hashOf(record, loom.id))
  })

  it('is for the lead what the record says, of a shop behind it and within a standing consent', () => {
    expect(hashOf(asLead, liners.id)).toBe(hashOf(record, liners.id))
    expect(hashOf(asLead, loom.id, 'standing consent')).toBe(
      hashOf(record, loom.id, 'standing consent'),
    )
  })

  it("tells the owner nothing of the prices behind the lead, and the lead nothing of the others'", () => {
    expect(() => shownForApproval(asOwner, liners.id)).toThrow('hidden')
    const { project } = shownForApproval(asLead, spindles.id)
    expect(project?.first.net).toBe(100_000)
    expect(shownForApproval(record, spindles.id).project?.first.net).toBe(300_000)
  })
})
