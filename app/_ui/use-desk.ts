'use client'
import { useMemo } from 'react'
import { useProject } from '@/lib/live/project-provider.tsx'
import { actsFor, leadOf, managesFor, managesLead, ownerOf } from '@/lib/record/actor.ts'
import type { PartyId } from '@/lib/record/ids.ts'
import type { ProjectRecord } from '@/lib/record/project-record.ts'
import type { Reader } from '@/lib/words/reader.ts'
import { actorOf } from './actor-of.ts'

/** What the reader is entitled to press here. The server judges again. */
export interface Standing {
  readonly party: PartyId
  readonly actsFor: (party: PartyId) => boolean
  readonly managesFor: (party: PartyId) => boolean
  readonly managesLead: boolean
  readonly isOwner: boolean
  /** Sees sums of the own shop at least. */
  readonly seesMoney: boolean
}

export interface Desk {
  readonly record: ProjectRecord
  readonly reader: Reader
  readonly standing: Standing
}

/** The project on this screen, its reader, and what they may press. */
export function useDesk(): Desk {
  const { record, reader } = useProject()
  return useMemo(() => {
    const { view } = reader
    const actor = actorOf(reader)
    const standing: Standing = {
      party: view.party,
      actsFor: (party) => actsFor(actor, party),
      managesFor: (party) => managesFor(actor, party),
      managesLead: managesLead(actor, record),
      isOwner: ownerOf(record)?.id === view.party && view.role === 'owner',
      seesMoney: view.role === 'owner' || view.role === 'manager',
    }
    return { record, reader, standing }
  }, [record, reader])
}

/** Parties still taking part, the lead first, then by name. */
export function partiesHere(record: ProjectRecord) {
  const lead = leadOf(record)?.id
  return [...record.parties.rows.values()]
    .filter((party) => party.leftAt === null)
    .toSorted((a, b) => {
      if (a.id === lead || b.id === lead) return a.id === lead ? -1 : 1
      return a.name.localeCompare(b.name)
    })
}
