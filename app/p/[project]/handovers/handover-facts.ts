import type { Handover } from '@/lib/record/entities/things.ts'
import type { ProjectRecord } from '@/lib/record/project-record.ts'
import { all } from '@/lib/record/table.ts'
import { assemblyName, listed } from '@/lib/words/names.ts'

/** All handovers in the order they were prepared: a handover's number is its place here, and stays. */
export const inOrder = (record: ProjectRecord): readonly Handover[] =>
  all(record.handovers).toSorted(
    (a, b) => a.preparedAt.localeCompare(b.preparedAt) || a.id.localeCompare(b.id),
  )

/** The number that is stencilled on a handover. */
export const handoverNumber = (handover: Handover, record: ProjectRecord): number =>
  inOrder(record).findIndex(({ id }) => id === handover.id) + 1

/** How many assemblies a handover is called by, where it has more. */
const NAMED = 2

/** What a handover is called by: its assemblies, or the first of them and how many more. */
export function whatMoves(handover: Handover, record: ProjectRecord, locale: string): string {
  const names = assembliesOf(handover, record)
  if (names.length <= NAMED + 1) return listed(names, locale)
  return listed([...names.slice(0, NAMED), `${names.length - NAMED} more`], locale)
}

/** The names of all that moves. */
export const assembliesOf = (handover: Handover, record: ProjectRecord): readonly string[] =>
  handover.assemblies.map((id) => assemblyName(id, record))

/** Pieces that are to be counted, where any of it is a lot. */
export function piecesIn(handover: Handover, record: ProjectRecord): number {
  if (handover.pieces !== null) return handover.pieces
  return handover.assemblies.reduce(
    (sum, id) => sum + (record.assemblies.rows.get(id)?.pieces ?? 1),
    0,
  )
}

/** Open: someone still has to press. */
export const isOpen = ({ state }: Handover): boolean => state === 'prepared' || state === 'released'
