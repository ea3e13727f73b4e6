import type { Context } from '../record/command.ts'
import type { Condition } from '../record/condition.ts'
import type { Party } from '../record/entities/people.ts'
import type { PersonId, ShopId } from '../record/ids.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import { all, Hidden } from '../record/table.ts'
import { badInput } from './bad-input.ts'

/** The shop book that tells who belongs to a party; a party without a shop has its participants in the project. */
export const bookOf = (party: Party | undefined): ShopId[] =>
  party === undefined || party.shop === null ? [] : [party.shop]

/**
 * Refuses a person who doesn't act for that party: a hold in a stranger's name could never be released.
 * @throws {Hidden} where the shop book is not at hand.
 */
export function notOfParty(
  record: ProjectRecord,
  party: Party,
  person: PersonId,
  entity: string,
  ctx: Context,
  field = 'person',
): Condition[] {
  const stranger = [badInput(entity, field, 'this person doesn’t act for that party')]
  const participates = all(record.participants).some(
    (one) => one.party === party.id && one.person === person && one.removedAt === null,
  )
  if (participates) return []
  if (party.shop === null) return stranger
  const book = ctx.shops.get(party.shop)
  if (book === undefined) throw new Hidden(party.shop)
  const belongs = all(book.memberships).some(
    (one) => one.person === person && one.removedAt === null,
  )
  return belongs ? [] : stranger
}
