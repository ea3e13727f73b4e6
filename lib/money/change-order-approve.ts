import * as z from 'zod/mini'
import { type Actor, leadOf, managesFor } from '../record/actor.ts'
import { changes, defineCommand, refusal } from '../record/command.ts'
import { type Condition, plain, wrongState } from '../record/condition.ts'
import type { ChangeOrder } from '../record/entities/money.ts'
import { proofConditions } from '../record/fresh-proof.ts'
import { ChangeOrderId } from '../record/ids.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import { type Instant, OptionalText, Sha256 } from '../record/scalars.ts'
import { must } from '../record/table.ts'
import { answeredAt } from './answered-at.ts'
import { type Authority, payerOf, shownForApproval, shownText } from './approval.ts'
import { standingConsentConditions } from './standing-consent.ts'

/** On whose authority this actor may say yes; undefined where on nobody's. */
export function authorityOf(
  actor: Actor,
  record: ProjectRecord,
  order: ChangeOrder,
): Authority | undefined {
  const payer = payerOf(record, must(record.parties, order.party))
  if (payer !== undefined && managesFor(actor, payer.id)) return 'payer'
  // Others' prices are not the lead's business where they bill the owner, so it can't agree to them either.
  const lead = leadOf(record)
  if (lead?.id === order.party && managesFor(actor, lead.id)) return 'standing consent'
  return undefined
}

function authorityConditions(
  record: ProjectRecord,
  order: ChangeOrder,
  authority: Authority,
  actor: Actor,
  now: Instant,
): Condition[] {
  return authority === 'payer'
    ? proofConditions(order.id, actor, now)
    : standingConsentConditions(record, order)
}

/**
 * Says yes to a change order: by who pays, with fresh proof of who they are, or by the lead within the owner's standing
 * consent. Keeps exactly what was shown. Refuses when that has changed since (`shown-changed`). A yes never changes.
 */
export const changeOrderApprove = defineCommand({
  name: 'changeOrder.approve',
  input: z.strictObject({
    changeOrder: ChangeOrderId,
    /** SHA-256 of what the approver saw (lib/money/approval.ts). */
    shownHash: Sha256,
    text: z.optional(OptionalText),
  }),
  may: (actor, record, input) =>
    authorityOf(actor, record, must(record.changeOrders, input.changeOrder)) !== undefined,
  decide(record, input, ctx) {
    const order = must(record.changeOrders, input.changeOrder)
    const authority = authorityOf(ctx.actor, record, order)
    if (order.state !== 'sent' || authority === undefined)
      return refusal(wrongState(order.id, order.state, 'sent'))
    const { text, hash } = shownText(shownForApproval(record, order.id, authority))
    const changed: Condition[] =
      hash === input.shownHash
        ? []
        : [{ ...plain(order.id), rule: 'shown-changed', shown: input.shownHash, now: hash }]
    const unmet = [...changed, ...authorityConditions(record, order, authority, ctx.actor, ctx.now)]
    if (unmet.length > 0) return refusal(...unmet)
    return changes({
      ...order,
      state: 'approved',
      answeredAt: answeredAt(order, ctx.happenedAt),
      answeredBy: ctx.actor.person,
      proof: authority === 'payer' ? ctx.actor.proof : 'standing consent',
      shown: text,
      shownHash: hash,
      answer: input.text ?? null,
    })
  },
})
