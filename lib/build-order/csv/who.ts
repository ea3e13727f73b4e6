import { leadOf } from '../../record/actor.ts'
import type { PartyId, PersonId } from '../../record/ids.ts'
import type { ProjectRecord } from '../../record/project-record.ts'
import { folded } from '../../record/same-name.ts'
import { all } from '../../record/table.ts'
import { grouped } from './by-name.ts'

/** A person who acts for a party, by name: names lie outside the records, so the caller brings them. */
export interface NamedPerson {
  readonly person: PersonId
  readonly party: PartyId
  readonly name: string
}

/** Who holds: a party, or a person of it. */
export interface Who {
  readonly party: PartyId
  readonly person: PersonId | null
}

/** Whom a name means: one, none, or several. */
export interface WhoIsWho {
  readonly find: (name: string) => readonly Who[]
  readonly names: readonly string[]
  /** What `find` takes for that party or person again; a person without a name is said by the party. */
  readonly say: (who: Who) => string
}

/**
 * Looks up parties, persons and roles (`owner`, `lead`, `shop`, `supplier`, `observer`) by name, in that order: as it is
 * written first, then in any case. `Name (Party)` says which of several persons, or a person called as a party is.
 */
export function whoIsWho(record: ProjectRecord, people: readonly NamedPerson[]): WhoIsWho {
  const parties = all(record.parties).filter((party) => party.leftAt === null)
  const nameOf = new Map(parties.map((party) => [party.id, party.name]))
  const lead = leadOf(record)
  const asParty = parties.map((party) => [party.name, { party: party.id, person: null }] as const)
  const present = people.filter((one) => nameOf.has(one.party))
  const asPerson = present.map(({ name, party, person }) => [name, { party, person }] as const)
  const asPersonOf = present.map(
    ({ name, party, person }) => [`${name} (${nameOf.get(party)})`, { party, person }] as const,
  )
  const asRole = parties.map((party) => [party.role, { party: party.id, person: null }] as const)
  const asLead = lead === undefined ? [] : [['lead', { party: lead.id, person: null }] as const]
  const exactly = [asParty, asPerson, asPersonOf].map((pairs) => grouped<Who>(pairs))
  const inAnyCase = [asParty, asPerson, asPersonOf, asLead, asRole].map((pairs) =>
    grouped<Who>(pairs.map(([name, who]) => [folded(name), who] as const)),
  )
  const find = (name: string): readonly Who[] => {
    for (const names of exactly) {
      const found = names.get(name)
      if (found !== undefined) return found
    }
    for (const names of inAnyCase) {
      const found = names.get(folded(name))
      if (found !== undefined) return found
    }
    return []
  }
  const say = ({ party, person }: Who): string => {
    const named = present.filter((one) => one.party === party && one.person === person)
    const ways = named.flatMap((one) => [one.name, `${one.name} (${nameOf.get(party)})`])
    const clear = ways.find((name) => {
      const found = find(name)
      return found.length === 1 && found[0]?.party === party && found[0].person === person
    })
    return clear ?? nameOf.get(party) ?? record.parties.rows.get(party)?.name ?? ''
  }
  const names = [...asParty, ...asPerson, ...asLead, ...asRole].map(([name]) => name)
  return { find, names: [...new Set(names)], say }
}
