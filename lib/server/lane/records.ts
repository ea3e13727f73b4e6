import type { RecordId } from '../../journal/journal-entry.ts'
import { type Current, loadRecord, type Queryable } from '../load.ts'

/** Memory that records may take before those unused for longest are let go. */
export const CACHE_BYTES = 256 * 2 ** 20

/** The records that this node holds, least recently used let go by bytes. */
export interface Records {
  /** The record as this node knows it. Never waits; undefined where it isn't held. */
  readonly peek: (id: RecordId) => Current | undefined
  /** The record, read where it isn't held; undefined where there is none. */
  readonly get: (id: RecordId) => Promise<Current | undefined>
  /** Keeps what came of a save or of catching up; never an older version over a newer one. */
  readonly put: (current: Current) => void
  /** Forgets it, so that it is read anew. */
  readonly drop: (id: RecordId) => void
  readonly ids: () => readonly RecordId[]
}

/** A cache on `db` of at most `most` bytes. */
export function openRecords(db: Queryable, most: number = CACHE_BYTES): Records {
  // A Map keeps its order: what was used last is at its end.
  const held = new Map<RecordId, Current>()
  const loading = new Map<RecordId, Promise<Current | undefined>>()
  let bytes = 0

  function drop(id: RecordId): void {
    bytes -= held.get(id)?.bytes ?? 0
    held.delete(id)
  }
  function put(current: Current): void {
    const { id, version } = current.record
    const known = held.get(id)
    if (known !== undefined && known.record.version > version) return
    drop(id)
    held.set(id, current)
    bytes += current.bytes
    for (const oldest of held.keys()) {
      if (bytes <= most || oldest === id) break
      drop(oldest)
    }
  }
  async function load(id: RecordId): Promise<Current | undefined> {
    const found = await loadRecord(db, id)
    if (found !== null) put(found)
    return held.get(id) ?? found ?? undefined
  }
  return {
    peek: (id) => held.get(id),
    async get(id) {
      const known = held.get(id)
      if (known !== undefined) {
        held.delete(id)
        held.set(id, known)
        return known
      }
      const underWay = loading.get(id) ?? load(id).finally(() => loading.delete(id))
      loading.set(id, underWay)
      return underWay
    },
    put,
    drop,
    ids: () => [...held.keys()],
  }
}
