import type { AssemblyId } from '../record/ids.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import { must } from '../record/table.ts'

/** How many pieces travel, where a lot is among them; null where nothing needs counting. */
export function countOf(record: ProjectRecord, assemblies: readonly AssemblyId[]): number | null {
  const pieces = assemblies.map((id) => must(record.assemblies, id).pieces)
  if (pieces.every((count) => count === 1)) return null
  return pieces.reduce((sum, count) => sum + count, 0)
}
