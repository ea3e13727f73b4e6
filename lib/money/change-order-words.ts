import type { Context } from '../record/command.ts'
import type { ChangeOrder } from '../record/entities/money.ts'
import type { Note } from '../record/entities/things.ts'
import type { PartyId } from '../record/ids.ts'

/** A question or an answer on a change order: the business of its party, so of no other shop. */
export const changeOrderNote = (
  order: ChangeOrder,
  type: 'question' | 'answer',
  party: PartyId,
  text: string,
  ctx: Context,
): Note => ({
  kind: 'note',
  id: ctx.newId('nte'),
  project: order.project,
  on: order.id,
  type,
  sharing: 'shared',
  business: order.party,
  text,
  party,
  person: ctx.actor.person,
  at: ctx.happenedAt,
  withdrawnAt: null,
})
