/** The entities of one kind by id. `hidden` are those that this view knows of and may not see. */
export interface Table<T> {
  readonly rows: ReadonlyMap<string, T>
  readonly hidden: ReadonlySet<string>
}

/** Thrown where a command or a rule names something that isn't there; the door answers 404. */
export class NoSuchEntity extends Error {
  override name = 'NoSuchEntity'
  readonly entity: string
  constructor(entity: string) {
    super(`There is no ${entity} in this record.`)
    this.entity = entity
  }
}

/** Thrown where a rule meets something that this view may not see: then the answer is *unknown*. */
export class Hidden extends Error {
  override name = 'Hidden'
  readonly entity: string
  constructor(entity: string) {
    super(`${entity} is hidden from this view.`)
    this.entity = entity
  }
}

const nothing: ReadonlySet<string> = new Set()

/** A table without rows. */
export const emptyTable = <T>(): Table<T> => ({ rows: new Map<string, T>(), hidden: nothing })

/**
 * The entity with that id.
 * @throws {Hidden} where the view may not see it. @throws {NoSuchEntity} where there is none.
 */
export function must<T>(table: Table<T>, id: string): T {
  const row = table.rows.get(id)
  if (row !== undefined) return row
  if (table.hidden.has(id)) throw new Hidden(id)
  throw new NoSuchEntity(id)
}

/** All entities of a table that this view sees, in the order they were made. */
export const all = <T>(table: Table<T>): T[] => [...table.rows.values()]

/**
 * All entities of a table, for a rule that must know every one.
 * @throws {Hidden} where the view may not see some
 */
export function allOrHidden<T>(table: Table<T>): T[] {
  const [hidden] = table.hidden
  if (hidden !== undefined) throw new Hidden(hidden)
  return all(table)
}

/** The table with those rows put in; the same table when there are none. */
export function withRows<T extends { readonly id: string }>(
  table: Table<T>,
  rows: readonly T[],
  stubs: readonly string[] = [],
): Table<T> {
  if (rows.length === 0 && stubs.length === 0) return table
  const merged = new Map(table.rows)
  const hidden = new Set(table.hidden)
  for (const row of rows) {
    merged.set(row.id, row)
    hidden.delete(row.id)
  }
  for (const id of stubs) {
    merged.delete(id)
    hidden.add(id)
  }
  return { rows: merged, hidden }
}

/**
 * Makes a look-up `rows of a table by a key` that is computed once per version of the table.
 * `keys` gives the keys under which a row is found; none leaves it out.
 */
export function indexBy<T>(
  keys: (row: T) => readonly string[],
): (table: Table<T>, key: string) => readonly T[] {
  const cache = new WeakMap<ReadonlyMap<string, T>, Map<string, T[]>>()
  const none: readonly T[] = []
  return (table, key) => {
    let index = cache.get(table.rows)
    if (index === undefined) {
      index = new Map()
      for (const row of table.rows.values()) {
        for (const k of keys(row)) {
          const group = index.get(k)
          if (group === undefined) index.set(k, [row])
          else group.push(row)
        }
      }
      cache.set(table.rows, index)
    }
    return index.get(key) ?? none
  }
}
