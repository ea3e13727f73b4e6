import { type Condition, plain } from '../record/condition.ts'
import type { ShopRecord } from '../record/project-record.ts'
import { isSameName } from '../record/same-name.ts'
import { all } from '../record/table.ts'

/** The condition that another bay in use has that name. */
export function bayNameConditions(book: ShopRecord, name: string, own: string | null): Condition[] {
  const same = all(book.bays).find(
    (other) => other.id !== own && other.retiredAt === null && isSameName(other.name, name),
  )
  return same === undefined ? [] : [{ ...plain(same.id), rule: 'exists', field: 'name' }]
}
