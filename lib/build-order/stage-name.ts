import { type Condition, plain } from '../record/condition.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import { isSameName } from '../record/same-name.ts'
import { all } from '../record/table.ts'

/** The condition that another stage has that name: lists and imports go by it. A removed stage's name is free. */
export function stageNameConditions(
  record: ProjectRecord,
  name: string,
  own: string | null,
): Condition[] {
  const same = all(record.stages).find(
    (other) => other.id !== own && other.removedAt === null && isSameName(other.name, name),
  )
  return same === undefined ? [] : [{ ...plain(same.id), rule: 'exists', field: 'name' }]
}
