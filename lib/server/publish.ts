import type { Changed, People } from '../command/wire.ts'
import type { Entity } from '../record/entity.ts'
import { type AnyMove, anyMove } from './lane/outcome.ts'
import { type Rooms, roomOf, type Watched } from './live/rooms.ts'
import type { Io } from './live/sockets.ts'
import type { Names } from './people/names.ts'
import { changedFor, personsOf, shopChangedFor } from './views/changed-for.ts'

/** Changes of one record wait for each other at most this long, in ms. */
const COALESCE_MS = 20

/** Tells those who follow a record, on this node, where it has come to. Moves of one record come in order. */
export type Publish = (move: AnyMove) => void

/** Publishes to the rooms that have somebody in them, each as its view may see it. */
export function openPublish(io: Io, rooms: Rooms, names: Names): Publish {
  const waiting = new Map<string, AnyMove>()
  const lastAt = new Map<string, number>()
  /** One after another for a record, so that no message overtakes another while names are read. */
  const tails = new Map<string, Promise<void>>()

  function flush(record: string): void {
    const ready = waiting.get(record)
    if (ready === undefined) return
    waiting.delete(record)
    lastAt.set(record, performance.now())
    const tail = (tails.get(record) ?? Promise.resolve())
      .then(() => tell(ready))
      // What is lost here is noticed as a gap, and fetched.
      .catch((error: unknown) => console.error('fettleyard: a change was not published:', error))
    tails.set(record, tail)
    void tail.then(() => {
      if (tails.get(record) !== tail) return
      tails.delete(record)
      lastAt.delete(record)
    })
  }

  async function tell(any: AnyMove): Promise<void> {
    const known = await names(personsOf(any.move))
    for (const watched of rooms.of(any.move.record.id)) {
      const changed = seenBy(watched, any, known)
      if (changed !== null) io.local.to(roomOf(watched)).emit('changed', changed)
    }
  }

  return (any) => {
    const record = any.move.record.id
    const before = waiting.get(record)
    if (before !== undefined) {
      waiting.set(record, joined(before, any))
      return
    }
    // Nobody is there; who comes later reads the record as it is then.
    if (rooms.of(record).length === 0) return
    const since = performance.now() - (lastAt.get(record) ?? Number.NEGATIVE_INFINITY)
    waiting.set(record, any)
    setTimeout(flush, Math.max(0, COALESCE_MS - since), record)
  }
}

function seenBy(watched: Watched, any: AnyMove, names: People): Changed | null {
  if (any.of === 'project')
    return 'view' in watched ? changedFor(watched.view, any.move, names) : null
  return 'role' in watched ? shopChangedFor(watched.role, any.move, names) : null
}

/** Two moves of a record as one: the later record, each entity as it was last. */
function joined(before: AnyMove, after: AnyMove): AnyMove {
  const entities = new Map<string, Entity>()
  for (const entity of [...before.move.entities, ...after.move.entities]) {
    // As it was last, where it changed last.
    entities.delete(entity.id)
    entities.set(entity.id, entity)
  }
  return anyMove(after.move.record, {
    from: before.move.from,
    to: after.move.to,
    entities: [...entities.values()],
    doings: [...before.move.doings, ...after.move.doings],
  })
}
