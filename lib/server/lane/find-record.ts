import type { RecordId } from '../../journal/journal-entry.ts'
import { isProjectKind } from '../../record/any-entity.ts'
import type { Json } from '../../record/condition.ts'
import { kindOf } from '../../record/kind-of.ts'
import { tableOf } from '../database/tables.ts'
import { type Queryable, recordIdOf } from '../load.ts'

const KNOWN_MOST = 50_000
/** So many ids of an input are looked up: a command names what it is about among its first. */
const LOOKED_UP_MOST = 20

/** Finds the record that a command is for. */
export interface RecordFinder {
  /** By the records that the person looked at, else by the first thing that the input names; undefined where neither helps. */
  readonly find: (
    root: 'prj' | 'shp',
    expected: readonly string[],
    input: Json,
  ) => Promise<RecordId | undefined>
  readonly forget: () => void
}

/** A finder that remembers where things are: nothing ever moves from one record to another. */
export function openRecordFinder(db: Queryable): RecordFinder {
  const known = new Map<string, RecordId>()

  async function lookUp(root: 'prj' | 'shp', id: string): Promise<RecordId | undefined> {
    const kind = kindOf(id)
    if (kind === undefined || isProjectKind(kind) !== (root === 'prj')) return undefined
    const before = known.get(id)
    if (before !== undefined) return before
    const table = tableOf[kind]
    const owner = root === 'prj' ? 'project' : 'shop'
    const { rows } = await db.query<{ record: string }>({
      name: `record-of-${table}`,
      text: `select "${owner}" as record from "${table}" where "id" = $1`,
      values: [id],
    })
    const record = rows[0] === undefined ? undefined : recordIdOf(rows[0].record)
    if (record === undefined) return undefined
    if (known.size >= KNOWN_MOST) known.clear()
    known.set(id, record)
    return record
  }
  return {
    async find(root, expected, input) {
      const looked = expected.filter((id) => id.startsWith(`${root}_`))
      const [only] = looked
      if (only !== undefined && looked.length === 1) return recordIdOf(only)
      for (const id of new Set(idsIn(input).slice(0, LOOKED_UP_MOST))) {
        const record = id.startsWith(`${root}_`) ? recordIdOf(id) : await lookUp(root, id)
        if (record !== undefined) return record
      }
      return undefined
    },
    forget: () => known.clear(),
  }
}

/** Every text in an input that is an id, in the order in which it stands there. */
function idsIn(input: Json): string[] {
  if (typeof input === 'string') return /^[a-z]{3}_[0-9a-z]{1,48}$/.test(input) ? [input] : []
  if (typeof input !== 'object' || input === null) return []
  return Object.values(input).flatMap(idsIn)
}
