import type { Changed } from '../command/wire.ts'
import type { Entity } from '../record/entity.ts'
import type { ProjectRecord, ShopRecord } from '../record/project-record.ts'
import { changedFor, type Move, personsIn, shopChangedFor } from './changed-for.ts'
import type { Names } from './names.ts'
import { type Rooms, roomOf } from './rooms.ts'
import type { Io } from './sockets.ts'

/** Changes of one record wait for each other at most this long, in ms. */
const COALESCE_MS = 20

export type ProjectMove = { readonly kind: 'project' } & Move<ProjectRecord>
export type ShopMove = { readonly kind: 'shop' } & Move<ShopRecord>

/** Tells those who follow a record, on this node, where it has come to. Moves of one record come in order. */
export type Publish = (move: ProjectMove | ShopMove) => void

interface Waiting {
  move: ProjectMove | ShopMove
  timer: NodeJS.Timeout
}

/** Publishes to the rooms that have somebody in them, each as its view may see it. */
export function openPublish(io: Io, rooms: Rooms, names: Names): Publish {
  const waiting = new Map<string, Waiting>()
  const lastAt = new Map<string, number>()
  /** One after another for a record, so that no message overtakes another while names are read. */
  const tails = new Map<string, Promise<void>>()

  function flush(record: string): void {
    const ready = waiting.get(record)
    if (ready === undefined) return
    waiting.delete(record)
    lastAt.set(record, performance.now())
    const tail = (tails.get(record) ?? Promise.resolve())
      .then(() => tell(ready.move))
      // What is lost here is noticed as a gap, and fetched.
      .catch((error: unknown) => console.error('fettleyard: a change was not published:', error))
    tails.set(record, tail)
    void tail.then(() => {
      if (tails.get(record) !== tail) return
      tails.delete(record)
      lastAt.delete(record)
    })
  }

  async function tell(move: ProjectMove | ShopMove): Promise<void> {
    const known = await names(personsIn(move.entities, move.doings))
    for (const watched of rooms.of(move.record.id)) {
      const changed = seenBy(watched, move, known)
      if (changed !== null) io.local.to(roomOf(watched)).emit('changed', changed)
    }
  }

  return (move) => {
    const record = move.record.id
    // Nobody is there; who comes later reads the record as it is then.
    if (rooms.of(record).length === 0 && !waiting.has(record)) return
    const before = waiting.get(record)
    if (before !== undefined) {
      before.move = joined(before.move, move)
      return
    }
    const since = performance.now() - (lastAt.get(record) ?? Number.NEGATIVE_INFINITY)
    const timer = setTimeout(flush, Math.max(0, COALESCE_MS - since), record)
    waiting.set(record, { move, timer })
  }
}

function seenBy(
  watched: ReturnType<Rooms['of']>[number],
  move: ProjectMove | ShopMove,
  names: Awaited<ReturnType<Names>>,
): Changed | null {
  if (move.kind === 'project')
    return 'view' in watched ? changedFor(watched.view, move, names) : null
  return 'role' in watched ? shopChangedFor(watched.role, move, names) : null
}

/** Two moves of a record as one: the later record, each entity as it was last. */
function joined(
  before: ProjectMove | ShopMove,
  after: ProjectMove | ShopMove,
): ProjectMove | ShopMove {
  const entities = new Map<string, Entity>()
  for (const entity of [...before.entities, ...after.entities]) entities.set(entity.id, entity)
  return {
    ...after,
    from: before.from,
    entities: [...entities.values()],
    doings: [...before.doings, ...after.doings],
  }
}
