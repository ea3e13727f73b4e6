import type { Actor, Role } from '../../lib/record/actor.ts'
import { PersonId } from '../../lib/record/ids.ts'
import type { ProjectRecord, ShopRecord } from '../../lib/record/project-record.ts'
import { all } from '../../lib/record/table.ts'
import type { World } from './world.ts'

export const person = (name: string): PersonId => PersonId.parse(`psn_${name}`)

/** Somebody with no part in anything. */
export const stranger: Actor = {
  person: person('stranger'),
  role: 'manager',
  party: null,
  shop: null,
  proof: 'password',
  provedAt: null,
}

/** Everyone who acts in a project: people of its shops by their books, and those of parties without one. */
export function actorsIn(world: World, record: ProjectRecord): Actor[] {
  const actors = all(record.parties)
    .filter(({ leftAt }) => leftAt === null)
    .flatMap((party): Actor[] => {
      const book = party.shop === null ? undefined : world.books.get(party.shop)
      const members = book === undefined ? [] : inForce(book)
      const personal = all(record.participants).filter(
        (one) => one.party === party.id && one.removedAt === null,
      )
      const ownRole: Role = party.role === 'shop' ? 'manager' : party.role
      return [
        ...members.map(({ person, role }) => ({ person, role })),
        ...personal.map(({ person }) => ({ person, role: ownRole })),
      ].map((who) => ({ ...stranger, ...who, party: party.id, shop: party.shop }))
    })
  return [...actors, stranger]
}

const inForce = (book: ShopRecord) =>
  all(book.memberships).filter(({ removedAt }) => removedAt === null)

/** Everyone who acts in a shop book. */
export const actorsInBook = (book: ShopRecord): Actor[] => [
  ...inForce(book).map(({ person, role }) => ({ ...stranger, person, role, shop: book.id })),
  stranger,
]

/** Somebody without an account, who came by the link of a handover to that party. */
export const guestFor = (party: Actor['party']): Actor => ({
  ...stranger,
  person: person('guest'),
  role: 'guest',
  party,
})
