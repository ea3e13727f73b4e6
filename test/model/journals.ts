import { replayProject, replayShop } from '../../lib/journal/replay.ts'
import { verifyJournal } from '../../lib/journal/verify.ts'
import { withhold } from '../../lib/journal/withhold.ts'
import { canonicalJson } from '../../lib/record/canonical-json.ts'
import type { ProjectRecord, ShopRecord } from '../../lib/record/project-record.ts'
import type { World } from './world.ts'

/** Every journal holds, whole and with all but its open parts withheld, and gives its record back. */
export function wrongInJournals(world: World): string[] {
  const wrong: string[] = []
  for (const [id, entries] of world.journals) {
    const verified = verifyJournal(entries)
    if (!verified.holds) wrong.push(`${id}: entry ${verified.sequence}: ${verified.why}`)
    const open = entries.map((entry) => withhold(entry, (scope) => scope === 'open'))
    if (!verifyJournal(open).holds) wrong.push(`${id} doesn’t hold once parts are withheld`)
    const project = world.projects.get(id)
    const book = world.books.get(id)
    if (project !== undefined && asText(replayProject(project.id, entries)) !== asText(project))
      wrong.push(`${id} isn’t what its journal says`)
    if (book !== undefined && asText(replayShop(book.id, entries)) !== asText(book))
      wrong.push(`${id} isn’t what its journal says`)
  }
  return wrong
}

/** A record in one form: every row of every table and its version, by id. */
function asText(record: ProjectRecord | ShopRecord): string {
  const { id, version, versions, ...tables } = record
  const rows = Object.values(tables).flatMap((table) => [...table.rows.values()])
  const byId = rows.map((row) => ({ ...row, at: versions.get(row.id) }))
  byId.sort((a, b) => (a.id < b.id ? -1 : 1))
  return canonicalJson({ id, version, count: versions.size, byId })
}
