'use client'
import { Head } from '@/app/_ui/paper.tsx'
import { Photos } from '@/app/_ui/photos.tsx'
import { checksOf, stagesOn } from '@/lib/gate/indexes.ts'
import { useProject } from '@/lib/live/project-provider.tsx'
import type { Assembly } from '@/lib/record/entities/things.ts'
import { all } from '@/lib/record/table.ts'
import { day } from '@/lib/words/dates.ts'

/** How many groups stand open: the newest; the rest folds away. */
const OPEN = 4

interface Group {
  readonly at: string
  readonly title: string
  readonly files: readonly string[]
}

/** Every picture of an assembly, the newest first: from its handovers and from the checks of its stages. */
export function AssemblyPhotos({ assembly }: { readonly assembly: Assembly }) {
  const { record, reader } = useProject()
  const groups: Group[] = []
  for (const handover of all(record.handovers)) {
    if (!handover.assemblies.includes(assembly.id)) continue
    const { releasedAt, receivedAt, files, receivedFiles } = handover
    if (releasedAt !== null)
      groups.push({ at: releasedAt, title: `Released, ${day(releasedAt, reader)}`, files })
    if (receivedAt !== null)
      groups.push({
        at: receivedAt,
        title: `Received, ${day(receivedAt, reader)}`,
        files: receivedFiles,
      })
  }
  for (const stage of stagesOn(record.stages, assembly.id)) {
    for (const { type, name, at, files } of checksOf(record.checks, stage.id)) {
      if (type === 'photo' && at !== null)
        groups.push({ at, title: `${name}, ${day(at, reader)}`, files })
    }
  }
  const shown = groups
    .filter(({ files }) => files.length > 0)
    .toSorted((a, b) => b.at.localeCompare(a.at))
  if (shown.length === 0) return null
  const older = shown.slice(OPEN)
  return (
    <section className="sheet stack">
      <Head title="Photos" />
      <Photos project={record.id} groups={shown.slice(0, OPEN)} />
      {older.length > 0 && (
        <details>
          <summary>Older ones</summary>
          <Photos project={record.id} groups={older} />
        </details>
      )}
    </section>
  )
}
