import type { RecordId } from '../../journal/journal-entry.ts'
import type { Json } from '../../record/condition.ts'
import { type Queryable, recordIdOf } from '../load.ts'

/** Tables of what is in a project, and in a shop book, by prefix of its id. */
const PROJECT_TABLES: { readonly [prefix: string]: string } = {
  pty: 'Party',
  ptc: 'Participant',
  asm: 'Assembly',
  stg: 'Stage',
  lnk: 'Link',
  chk: 'Check',
  sgn: 'SignOff',
  hld: 'Hold',
  hnd: 'Handover',
  cho: 'ChangeOrder',
  chl: 'ChangeLine',
  esl: 'EstimateLine',
  prt: 'Part',
  prm: 'PartPromise',
  dcs: 'Decision',
  opt: 'DecisionOption',
  win: 'OpenWindow',
  slt: 'Slot',
  nte: 'Note',
  con: 'Concession',
  ask: 'Ask',
  tld: 'Told',
}
const SHOP_TABLES: { readonly [prefix: string]: string } = { mbr: 'Membership', bay: 'Bay' }

const KNOWN_MOST = 50_000

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
    const before = known.get(id)
    if (before !== undefined) return before
    const table = (root === 'prj' ? PROJECT_TABLES : SHOP_TABLES)[id.slice(0, 3)]
    if (table === undefined) return undefined
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
      for (const id of idsIn(input)) {
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
