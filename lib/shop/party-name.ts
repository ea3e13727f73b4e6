import { type Condition, plain } from '../record/condition.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import { isSameName } from '../record/same-name.ts'
import { all } from '../record/table.ts'

/** The condition that another party of the project has that name: lists and imports go by it. */
export function partyNameConditions(
  record: ProjectRecord,
  name: string,
  own: string | null,
): Condition[] {
  const same = all(record.parties).find(
    (other) => other.id !== own && other.leftAt === null && isSameName(other.name, name),
  )
  return same === undefined ? [] : [{ ...plain(same.id), rule: 'exists', field: 'name' }]
}

/** The condition that a shop takes part already: a person of it must know for which party they act. */
export function partyShopConditions(
  record: ProjectRecord,
  shop: string,
  own: string | null,
): Condition[] {
  const same = all(record.parties).find(
    (other) => other.id !== own && other.leftAt === null && other.shop === shop,
  )
  return same === undefined ? [] : [{ ...plain(same.id), rule: 'exists', field: 'shop' }]
}
