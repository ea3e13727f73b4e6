import { type Condition, plain } from '../record/condition.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import { isSameName } from '../record/same-name.ts'
import { all } from '../record/table.ts'

/** The condition that another assembly has that name: tags on a wall and lines of a list go by it. */
export function assemblyNameConditions(
  record: ProjectRecord,
  name: string,
  own: string | null,
): Condition[] {
  const same = all(record.assemblies).find(
    (other) => other.id !== own && isSameName(other.name, name),
  )
  return same === undefined ? [] : [{ ...plain(same.id), rule: 'exists', field: 'name' }]
}
