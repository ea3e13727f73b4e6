'use client'
import { type Desk, useDesk } from '@/app/_ui/use-desk.ts'
import { payerOf } from '@/lib/money/approval.ts'
import { leadOf } from '@/lib/record/actor.ts'
import type { ChangeOrder } from '@/lib/record/entities/money.ts'
import { money, moneyChange } from '@/lib/words/money.ts'

/** What a change order is to this reader. */
export interface OrderStanding {
  /** Who pays the shop, and so answers; null where the project has none yet. */
  readonly payer: string | null
  readonly isOwn: boolean
  /** The answer is this reader's: as payer, or as lead within the owner's standing consent. */
  readonly authority: 'payer' | 'standing consent' | null
  /** Sees its lines and sums. */
  readonly seesLines: boolean
}

/** The desk, with sums in the reader's words and what they are to each change order. */
export function useMoneyView(): Desk & {
  readonly sum: (minor: number) => string
  readonly change: (minor: number) => string
  readonly standingOf: (order: ChangeOrder) => OrderStanding
} {
  const desk = useDesk()
  const { record, reader, standing } = desk
  return {
    ...desk,
    sum: (minor) => money(minor, reader.currency, reader.locale),
    change: (minor) => moneyChange(minor, reader.currency, reader.locale),
    standingOf: (order) => {
      const party = record.parties.rows.get(order.party)
      const payer = (party === undefined ? undefined : payerOf(record, party))?.id ?? null
      const isOwn = standing.managesFor(order.party)
      const pays = payer !== null && standing.managesFor(payer)
      const lead = isOwn && leadOf(record)?.id === order.party
      const { standingConsentEach } = record.projects.rows.get(record.id) ?? {}
      const consents = lead && typeof standingConsentEach === 'number'
      return {
        payer,
        isOwn,
        authority: pays ? 'payer' : consents ? 'standing consent' : null,
        seesLines: isOwn || pays,
      }
    },
  }
}
