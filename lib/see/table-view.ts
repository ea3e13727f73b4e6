import type { EntityByKind, Kind } from '../record/entity.ts'
import { isKind } from '../record/entity.ts'
import type { Table } from '../record/table.ts'
import { isSeen, seeAs } from './see.ts'
import type { Viewer } from './viewer.ts'

type Rows<T> = ReadonlyMap<string, T>
interface Remembered<T> {
  /** Besides the table itself, `see` reads only these: whose it is, and whose part a promise is of. */
  readonly parties: Rows<unknown>
  readonly parts: Rows<unknown>
  readonly seen: Table<T>
}

/** One text per view, for rooms and caches. */
export const keyOf = ({ party, role }: Viewer['view']): string => `${party}:${role}`

/**
 * Makes the look-up `a table as a view may see it` for one kind of entity, remembered per table: a step that leaves the table
 * alone gives the same object again, so that indexes made for it stay good.
 */
export function tableView<K extends Kind>(
  kind: K,
): (viewer: Viewer, table: Table<EntityByKind[K]>) => Table<EntityByKind[K]> {
  const is = isKind(kind)
  const cache = new WeakMap<Rows<EntityByKind[K]>, Map<string, Remembered<EntityByKind[K]>>>()
  return (viewer, table) => {
    const parties = viewer.record.parties.rows
    const parts = viewer.record.parts.rows
    const byView = cache.get(table.rows) ?? new Map<string, Remembered<EntityByKind[K]>>()
    cache.set(table.rows, byView)
    const key = keyOf(viewer.view)
    const last = byView.get(key)
    if (last?.parties === parties && last.parts === parts) return last.seen
    const rows = new Map<string, EntityByKind[K]>()
    const hidden = new Set(table.hidden)
    for (const row of table.rows.values()) {
      const seen = seeAs(viewer, row)
      if (isSeen(seen)) {
        if (is(seen)) rows.set(row.id, seen)
      } else if (seen !== null) hidden.add(row.id)
    }
    const seen = { rows, hidden }
    byView.set(key, { parties, parts, seen })
    return seen
  }
}
