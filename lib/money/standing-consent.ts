import { leadOf, ownerOf } from '../record/actor.ts'
import { type Condition, plain } from '../record/condition.ts'
import type { ChangeOrder } from '../record/entities/money.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import type { Minor } from '../record/scalars.ts'
import { must } from '../record/table.ts'
import { minorOf } from '../record/tax.ts'
import { billedBy, changeOrdersOf } from './totals.ts'

/**
 * What a change takes of the owner's standing consent, tax included. A minus gives nothing back: the owner allowed a
 * running total of extras, and only the owner can set off one thing against another.
 */
function taken(record: ProjectRecord, order: ChangeOrder): bigint {
  const gross = BigInt(billedBy(record, order).gross)
  return gross > 0n ? gross : 0n
}

/** How much of the standing consent is used up, tax included. Only the lead's own changes can use it. */
export function standingConsentUsed(record: ProjectRecord): Minor {
  const lead = leadOf(record)
  if (lead === undefined) return minorOf(0n)
  const used = changeOrdersOf(record, lead.id)
    .filter((order) => order.state === 'approved' && order.proof === 'standing consent')
    .map((order) => taken(record, order))
  return minorOf(used.reduce((sum, each) => sum + each, 0n))
}

/** What the lead sees of the standing consent before it uses it: its limits, used before and after, tax included. */
export function standingConsentShown(record: ProjectRecord, order: ChangeOrder) {
  const { standingConsentEach, standingConsentTotal } = must(record.projects, record.id)
  const usedBefore = standingConsentUsed(record)
  return {
    each: standingConsentEach,
    total: standingConsentTotal,
    usedBefore,
    usedAfter: minorOf(BigInt(usedBefore) + taken(record, order)),
  }
}

/** Why a change is not within the owner's standing consent; empty where it is. The owner can still say yes. */
export function standingConsentConditions(record: ProjectRecord, order: ChangeOrder): Condition[] {
  const { each, total, usedBefore } = standingConsentShown(record, order)
  const asked = minorOf(taken(record, order))
  const owner = ownerOf(record)
  const over = (what: 'each' | 'total', allowed: Minor): Condition => ({
    ...plain(order.id),
    rule: 'standing-consent',
    what,
    allowed,
    asked,
    clearedBy: owner === undefined ? [] : [owner.id],
    clearedWith: { command: 'changeOrder.approve', input: { changeOrder: order.id } },
  })
  // Nothing said in advance is nothing allowed, not even a change that costs nothing.
  if (each === null || total === null) return [over('each', minorOf(0n))]
  const left = minorOf(BigInt(total) - BigInt(usedBefore))
  return [
    ...(asked > each ? [over('each', each)] : []),
    ...(asked > left ? [over('total', left)] : []),
  ]
}
