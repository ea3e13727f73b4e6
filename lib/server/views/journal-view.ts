import type { JournalPage } from '../../command/wire.ts'
import type { JournalEntry } from '../../journal/journal-entry.ts'
import { joinParts } from '../../journal/parts.ts'
import { readScopeKey, type ScopeKey } from '../../journal/scope-key.ts'
import type { View } from '../../record/actor.ts'
import { type DeviceId, PartyId, ProjectId } from '../../record/ids.ts'
import type { ProjectRecord } from '../../record/project-record.ts'
import { isSeen, seeAs } from '../../see/see.ts'
import { type Viewer, viewerOf } from '../../see/viewer.ts'
import type { JournalFilter } from '../for-pages.ts'
import type { PrismaClient } from '../generated/client.ts'
import type { Looker } from '../lane/actor.ts'
import { journalEntryOf } from '../load.ts'
import type { Devices } from '../people/devices.ts'
import type { Names } from '../people/names.ts'
import { personsIn } from './changed-for.ts'
import type { Reading } from './reading.ts'

/** Entries of a page, unless less is asked for, and at most. */
const PAGE = 50
const PAGE_MOST = 200
/** Entries read at once while those that fit are looked for. */
const BATCH = 200

/** What a page of a journal is read with. */
export interface JournalDesk {
  readonly prisma: PrismaClient
  readonly reading: Reading
  readonly names: Names
  readonly devices: Pick<Devices, 'namesOf'>
}

/** An entry but for the name of the phone that it came through. */
type Seen = Omit<JournalPage['entries'][number], 'device'>

/** A page of a project's journal as this person may see it; null where they may not see the project. */
export async function journalPage(
  desk: JournalDesk,
  who: Looker,
  id: string,
  filter: JournalFilter,
): Promise<JournalPage | null> {
  const project = ProjectId.safeParse(id)
  const { reading } = desk
  const record = project.success ? await reading.project(project.data) : null
  const view = record === null ? null : await reading.viewOf(who, record)
  if (record === null || view === null) return null
  return readPage(desk, view, record, filter)
}

/** Newest first: entries of which this view sees something, that fit the filter. */
async function readPage(
  { prisma, names, devices }: JournalDesk,
  view: View,
  record: ProjectRecord,
  filter: JournalFilter,
): Promise<JournalPage> {
  const limit = Math.min(filter.limit ?? PAGE, PAGE_MOST)
  const viewer = viewerOf(view, record)
  const found: (Seen & { readonly through: DeviceId | undefined })[] = []
  let before = Math.min(filter.before ?? Number.POSITIVE_INFINITY, record.version + 1)
  while (before > 1 && found.length < limit) {
    const entries = await readEntriesBefore(prisma, record.id, before)
    for (const entry of entries) {
      before = entry.sequence
      const seen = seenEntry(viewer, entry)
      if (seen !== null && fits(seen, filter)) found.push({ ...seen, through: entry.device })
      if (found.length === limit) break
    }
    if (entries.length < BATCH && found.length < limit) before = 1
  }
  const persons = personsIn(
    found.flatMap(({ entities }) => entities),
    found,
  )
  const phones = new Set(found.flatMap(({ through }) => through ?? []))
  const phoneNames = await devices.namesOf(phones)
  const entries = found.map(({ through, ...seen }) => ({
    ...seen,
    device: through === undefined ? null : (phoneNames.get(through) ?? null),
  }))
  return { entries, people: await names(persons), next: before > 1 ? before : null }
}

/** The newest entries before a sequence, newest first. */
async function readEntriesBefore(
  prisma: PrismaClient,
  record: ProjectId,
  before: number,
): Promise<JournalEntry[]> {
  const rows = await prisma.journalEntry.findMany({
    where: { record, sequence: { lt: before } },
    orderBy: { sequence: 'desc' },
    take: BATCH,
  })
  return rows.map(({ at, happenedAt, ...row }) =>
    journalEntryOf({ ...row, at: at.toISOString(), happenedAt: happenedAt.toISOString() }),
  )
}

const fits = ({ person, command, entities }: Seen, filter: JournalFilter): boolean =>
  (filter.person === undefined || filter.person === person) &&
  (filter.command === undefined || filter.command === command) &&
  (filter.entity === undefined || entities.some(({ id }) => id === filter.entity))

/** An entry as a view may see it; null where it sees none of what was changed. */
function seenEntry(viewer: Viewer, entry: JournalEntry): Seen | null {
  const entities = joinParts(entry.parts)
    .entities.map((entity) => seeAs(viewer, entity))
    .filter(isSeen)
  if (entities.length === 0) return null
  const { sequence, at, happenedAt, person, party, role, command, hash, parts } = entry
  const hidden = parts.filter(({ scope }) => !mayRead(viewer, scope)).map(({ scope }) => scope)
  // Which scope is hidden tells nothing; whose it is would.
  const hiddenParts = [...new Set(hidden.map((scope) => readScopeKey(scope).scope))]
  return { sequence, at, happenedAt, person, party, role, command, entities, hiddenParts, hash }
}

/** Whether a view may read a part of an entry as a whole. */
export function mayRead(viewer: Viewer, key: ScopeKey): boolean {
  const { scope, whose, also } = readScopeKey(key)
  const { party, role } = viewer.view
  if (role === 'supplier' || role === 'guest') return false
  const of = PartyId.safeParse(whose)
  const own = of.success ? of.data : null
  switch (scope) {
    case 'open':
    case 'personal':
      return true
    case 'business':
      return viewer.business(own) || (role !== 'observer' && also.includes(party))
    case 'money':
      return viewer.money(own) || (role !== 'observer' && role !== 'hand' && also.includes(party))
    case 'private':
      return own !== null && viewer.private(own)
    case 'managers':
      return own !== null && viewer.managers(own)
  }
}
