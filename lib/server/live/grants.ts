import type { PersonId } from '../../record/ids.ts'
import type { AnyMove } from '../lane/outcome.ts'
import type { Sessions } from '../people/session.ts'
import type { Follow } from './follow.ts'

/** Whose access a move changed. */
interface Grants {
  /** Who was let in, or has another role. */
  readonly changed: ReadonlySet<PersonId>
  readonly removed: ReadonlySet<PersonId>
  /** A party came, left or pays somebody else: all who follow the record are looked at again. */
  readonly everybody: boolean
}

/** Makes a grant or a removal felt at once on this node: what was remembered of it, sockets, sessions. Others see it by `follow`. */
export function openGrants(
  sessions: Sessions,
  memberships: { readonly forget: (person: PersonId) => void },
  follow: Follow,
): (move: AnyMove) => void {
  return (any) => {
    const { changed, removed, everybody } = grantsIn(any)
    if (changed.size === 0 && removed.size === 0 && !everybody) return
    const record = any.move.record.id
    const persons = [...changed, ...removed]
    for (const person of persons) memberships.forget(person)
    const work = async () => {
      for (const person of removed) await sessions.end(person)
      if (persons.length > 0) await follow.regrant(persons, record)
      if (everybody) await follow.regrantRecord(record)
    }
    work().catch((error: unknown) =>
      console.error('fettleyard: a change of access took effect late:', error),
    )
  }
}

function grantsIn({ move }: AnyMove): Grants {
  const changed = new Set<PersonId>()
  const removed = new Set<PersonId>()
  let everybody = false
  for (const entity of move.entities) {
    if (entity.kind === 'party') everybody = true
    if (entity.kind !== 'membership' && entity.kind !== 'participant') continue
    if (entity.removedAt === null) changed.add(entity.person)
    else removed.add(entity.person)
  }
  return { changed, removed, everybody }
}
