import type { PartyId, PersonId } from '../record/ids.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import { all } from '../record/table.ts'
import type { NamedPerson } from './csv/who.ts'

/** A person of a shop's book who by it acts for a party. */
export interface Member {
  readonly person: PersonId
  readonly party: PartyId
}

/** Everyone who acts for a party of this project and whose name is known, by its participants and by its shops' books; each once. */
export function namedPersons(
  record: ProjectRecord,
  members: readonly Member[],
  names: { readonly [person: string]: string },
): NamedPerson[] {
  const participants = all(record.participants).filter(({ removedAt }) => removedAt === null)
  const known = new Map<string, NamedPerson>()
  for (const { person, party } of [...participants, ...members]) {
    const name = names[person]
    if (name !== undefined) known.set(`${party} ${person}`, { person, party, name })
  }
  return [...known.values()]
}
