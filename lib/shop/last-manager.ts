import { type Condition, plain } from '../record/condition.ts'
import type { Membership } from '../record/entities/people.ts'
import type { ShopRecord } from '../record/project-record.ts'
import { all } from '../record/table.ts'

/** The condition that a shop would be left without a manager if this one were none any more; cleared by another one. */
export function lastManagerConditions(book: ShopRecord, membership: Membership): Condition[] {
  if (membership.role !== 'manager') return []
  const others = all(book.memberships).filter(
    (other) => other.id !== membership.id && other.role === 'manager' && other.removedAt === null,
  )
  if (others.length > 0) return []
  return [
    {
      ...plain(membership.id),
      rule: 'not-alone',
      person: membership.person,
      since: membership.since,
      clearedWith: { command: 'membership.add', input: { role: 'manager' } },
    },
  ]
}
