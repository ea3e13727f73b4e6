import type { MarkName } from '@/app/_ui/mark.tsx'
import type { ChangeOrder } from '@/lib/record/entities/money.ts'
import type { ProjectRecord } from '@/lib/record/project-record.ts'
import { partyName } from '@/lib/words/names.ts'
import type { Reader } from '@/lib/words/reader.ts'

/** What a change order's state looks like, and its word for this reader. */
export function orderState(
  order: ChangeOrder,
  payer: string | null,
  record: ProjectRecord,
  reader: Reader,
): { readonly mark: MarkName; readonly word: string } {
  switch (order.state) {
    case 'draft':
      return { mark: 'waiting', word: 'Draft, not sent' }
    case 'sent':
      return {
        mark: 'held',
        word:
          payer === reader.view.party
            ? 'Held for your yes'
            : `Held for ${partyName(payer, record)}’s yes`,
      }
    case 'approved':
      return { mark: 'approved', word: 'Approved' }
    case 'declined':
      return { mark: 'declined', word: 'Declined' }
    default:
      return { mark: 'reopened', word: 'Withdrawn' }
  }
}

export const reasons: { readonly [R in ChangeOrder['reason']]: string } = {
  found: 'Found while at work',
  'asked for': 'Asked for',
  mistake: 'A mistake of the shop’s',
  law: 'The law or a standard asks for it',
}

export const bearers: { readonly [B in ChangeOrder['bears']]: string } = {
  owner: 'Who pays the shop',
  shop: 'The shop itself',
  insurer: 'An insurer',
  disputed: 'Not settled yet',
}
