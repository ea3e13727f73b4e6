import { leadOf, ownerOf } from '../../record/actor.ts'
import type { Clearing } from '../../record/condition.ts'
import type { ChangeOrder } from '../../record/entities/money.ts'
import type { PartyId } from '../../record/ids.ts'
import type { ProjectRecord } from '../../record/project-record.ts'
import { must } from '../../record/table.ts'
import { type GateRule, met, unmet } from '../rule.ts'

/** Gate rule 6: the change order that brought it is approved, or within a standing consent. Never conceded. */
export const changeOrder: GateRule = (record, stage) => {
  if (stage.changeOrder === null) return []
  const order = must(record.changeOrders, stage.changeOrder)
  if (order.state === 'approved') return [met('change-order', order.id)]
  return [
    unmet({
      rule: 'change-order',
      entity: order.id,
      root: order.id,
      since: order.answeredAt ?? order.sentAt ?? order.raisedAt,
      concedable: false,
      ...cleared(record, order),
      is: order.state,
      number: order.number,
    }),
  ]
}

function cleared(
  record: ProjectRecord,
  order: ChangeOrder,
): { clearedBy: PartyId[]; clearedWith: Clearing | null } {
  const input = { changeOrder: order.id }
  if (order.state === 'sent')
    return {
      clearedBy: approvers(record, order),
      clearedWith: { command: 'changeOrder.approve', input },
    }
  if (order.state === 'draft')
    return { clearedBy: [order.party], clearedWith: { command: 'changeOrder.send', input } }
  // Declined or withdrawn: only a new one, priced anew, brings the work back.
  return { clearedBy: [order.party], clearedWith: { command: 'changeOrder.raise', input: {} } }
}

/** Who pays gives the yes: the owner, or the lead for a party that bills the lead. */
function approvers(record: ProjectRecord, order: ChangeOrder): PartyId[] {
  const bills = must(record.parties, order.party).bills
  const approver = bills === 'owner' ? ownerOf(record) : leadOf(record)
  return approver === undefined ? [] : [approver.id]
}
