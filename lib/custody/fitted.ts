import type { Assembly } from '../record/entities/things.ts'
import type { AssemblyId } from '../record/ids.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import { indexBy } from '../record/table.ts'

const byHost = indexBy<Assembly>((assembly) => (assembly.host === null ? [] : [assembly.host]))

/** Those assemblies and all that is fitted to them, through every level, each once. */
export function withFitted(
  record: ProjectRecord,
  assemblies: readonly AssemblyId[],
): readonly AssemblyId[] {
  const found = new Set(assemblies)
  // A set goes on to what is added while it is walked, so this ends when nothing new is fitted.
  for (const id of found) {
    for (const fitted of byHost(record.assemblies, id)) found.add(fitted.id)
  }
  return [...found]
}
