import type { View } from '../../record/actor.ts'
import type { MembershipRole } from '../../record/entities/people.ts'
import type { ProjectId, ShopId } from '../../record/ids.ts'

/** What a socket follows of one record: a project in its view, or a shop book in its role. */
export type Watched =
  | { readonly record: ProjectId; readonly view: View }
  | { readonly record: ShopId; readonly role: MembershipRole }

/** One room for all who see the same of a record. */
export const roomOf = (watched: Watched): string =>
  'view' in watched
    ? `${watched.record}/${watched.view.party}/${watched.view.role}`
    : `${watched.record}/${watched.role}`

/** Which rooms of a record have somebody in them, on this node. */
export type Rooms = {
  readonly enter: (watched: Watched) => void
  readonly leave: (watched: Watched) => void
  readonly of: (record: string) => readonly Watched[]
  readonly records: () => Iterable<string>
}

/** No rooms yet. */
export function openRooms(): Rooms {
  const byRecord = new Map<string, Map<string, { readonly watched: Watched; count: number }>>()
  return {
    enter(watched) {
      const rooms = byRecord.get(watched.record) ?? new Map()
      byRecord.set(watched.record, rooms)
      const room = rooms.get(roomOf(watched)) ?? { watched, count: 0 }
      room.count += 1
      rooms.set(roomOf(watched), room)
    },
    leave(watched) {
      const rooms = byRecord.get(watched.record)
      const room = rooms?.get(roomOf(watched))
      if (rooms === undefined || room === undefined) return
      room.count -= 1
      if (room.count === 0) rooms.delete(roomOf(watched))
      if (rooms.size === 0) byRecord.delete(watched.record)
    },
    of: (record) => [...(byRecord.get(record)?.values() ?? [])].map(({ watched }) => watched),
    records: () => byRecord.keys(),
  }
}
