import type { ChangeOrder } from '../record/entities/money.ts'
import type { Instant } from '../record/scalars.ts'

/** When a change order was answered: two phones' clocks may differ, but nobody answers what they were not yet sent. */
export const answeredAt = ({ sentAt }: ChangeOrder, happenedAt: Instant): Instant =>
  sentAt !== null && happenedAt < sentAt ? sentAt : happenedAt
