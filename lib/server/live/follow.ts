import type { DeviceId, PersonId } from '../../record/ids.ts'
import type { Looker } from '../lane/actor.ts'
import type { Queryable } from '../load.ts'
import type { Devices } from '../people/devices.ts'
import { lookerOf } from '../people/looker.ts'
import type { Sessions } from '../people/session.ts'
import {
  readPhoneStandings,
  readStandings,
  recordsThatDiffer,
  type Standing,
} from '../people/standing.ts'
import { type Rooms, roomOf, type Watched } from './rooms.ts'
import type { Io, IoSocket, SocketData } from './sockets.ts'

/** Every 15 s each socket hears the version of what it follows, so that a lost message is noticed. */
const HEARTBEAT_MS = 15_000
/** Every second the sessions behind the sockets are looked at again: a removed person is gone within two. */
const SWEEP_MS = 1000
/** A phone follows a handful of records; more is a mistake or an attack. */
const RECORDS_MOST = 50

/** How the sockets reach the records. */
export type Following = {
  /** What this person, or this shop's phone, sees of a record; null where they may not. */
  readonly look: (who: Looker, record: string) => Promise<Watched | null>
  /** Forgets where that person works: it has changed. */
  readonly forget: (person: PersonId) => void
  /** The version that a record has come to. */
  readonly version: (record: string) => Promise<number | null>
}

/** What tells who a socket is, and whether they still are. */
type Keepers = { readonly sessions: Sessions; readonly devices: Devices }

/** Moves sockets where a change of access wants them. */
export type Follow = {
  /** Grants of these persons in `record` changed: their sockets are put into the rooms of what they may see now. */
  readonly regrant: (persons: Iterable<PersonId>, record: string) => Promise<void>
  /** The same for all who follow a record: a party of it changed. */
  readonly regrantRecord: (record: string) => Promise<void>
  readonly close: () => void
}

/** Signs sockets in by their cookie, puts them into rooms, and ends those whose session ended. */
export function openFollow(
  io: Io,
  rooms: Rooms,
  doors: Keepers,
  db: Queryable,
  following: Following,
): Follow {
  const local = new Set<IoSocket>()

  io.use((socket, next) => {
    signIn(socket).then((may) => next(may ? undefined : new Error('Sign in first.')), next)
  })

  async function signIn(socket: IoSocket): Promise<boolean> {
    const session = await lookerOf(socket.request.headers.cookie, doors)
    if (session === null) return false
    const standing = (await standingsOf([session]))(session)
    socket.data = { session, watching: new Map(), grants: standing?.grants ?? [] }
    return standing !== undefined
  }

  io.on('connection', (socket) => {
    local.add(socket)
    socket.on('watch', (record, answer) => {
      if (typeof answer !== 'function') return
      watch(socket, record).then(answer, (error: unknown) => {
        console.error('fettleyard: a record could not be followed:', error)
        answer(null)
      })
    })
    socket.on('unwatch', (record) => leave(socket, record))
    socket.on('disconnect', () => {
      local.delete(socket)
      for (const record of [...socket.data.watching.keys()]) leave(socket, record)
    })
  })

  const isGood = (session: SocketData['session']): Promise<boolean> =>
    'phone' in session ? doors.devices.isGood(session.phone) : doors.sessions.isGood(session)

  /** Where those stand who are still let in. */
  async function standingsOf(sessions: readonly SocketData['session'][]) {
    const persons = new Set<PersonId>()
    const phones = new Set<DeviceId>()
    for (const session of sessions) {
      if ('phone' in session) phones.add(session.phone.id)
      else persons.add(session.person)
    }
    const [ofPersons, ofPhones] = await Promise.all([
      persons.size === 0 ? undefined : readStandings(db, persons),
      phones.size === 0 ? undefined : readPhoneStandings(db, phones),
    ])
    return (session: SocketData['session']): Pick<Standing, 'grants'> | undefined => {
      if ('phone' in session) return ofPhones?.get(session.phone.id)
      const standing = ofPersons?.get(session.person)
      const isEnded = Date.parse(session.issuedAt) <= (standing?.endedMs ?? 0)
      return isEnded ? undefined : standing
    }
  }

  async function watch(socket: IoSocket, record: unknown): Promise<number | null> {
    if (typeof record !== 'string' || socket.data.watching.size >= RECORDS_MOST) return null
    if (!(await isGood(socket.data.session))) {
      socket.disconnect(true)
      return null
    }
    const seen = await following.look(socket.data.session, record)
    // A phone may be gone by now; a room that it entered then would never be left.
    if (!socket.connected) return null
    leave(socket, record)
    if (seen === null) return null
    enter(socket, seen)
    // Read after the room was entered: what is committed from now on comes by itself.
    return following.version(record)
  }

  function enter(socket: IoSocket, watched: Watched): void {
    socket.data.watching.set(watched.record, watched)
    rooms.enter(watched)
    void socket.join(roomOf(watched))
  }

  function leave(socket: IoSocket, record: unknown): void {
    if (typeof record !== 'string') return
    const watched = socket.data.watching.get(record)
    if (watched === undefined) return
    socket.data.watching.delete(record)
    rooms.leave(watched)
    void socket.leave(roomOf(watched))
  }

  async function regrantSocket(socket: IoSocket, records: readonly string[]): Promise<void> {
    for (const record of records) {
      const seen = await following.look(socket.data.session, record)
      const before = socket.data.watching.get(record)
      if (before === undefined || !socket.connected) continue
      if (seen !== null && roomOf(seen) === roomOf(before)) continue
      leave(socket, record)
      if (seen !== null) enter(socket, seen)
      socket.emit('access', { record })
    }
  }

  /** Whatever node a grant, a removal or a sign-out was made on, and whether or not this one holds the record. */
  async function look(): Promise<void> {
    const standingOf = await standingsOf([...local].map(({ data }) => data.session))
    for (const socket of local) {
      const standing = standingOf(socket.data.session)
      if (standing === undefined) {
        socket.disconnect(true)
        continue
      }
      const changed = recordsThatDiffer(socket.data.grants, standing.grants)
      if (changed.length === 0) continue
      following.forget(socket.data.session.person)
      await regrantSocket(socket, [...socket.data.watching.keys()])
      // Only now: where the database went away meanwhile, the next look finds the change again.
      socket.data.grants = standing.grants
      for (const record of changed) socket.emit('access', { record })
    }
  }
  let looking = false
  const sweep = setInterval(() => {
    // A slow database is not asked twice.
    if (looking) return
    looking = true
    look()
      .catch((error: unknown) =>
        console.error('fettleyard: the sessions of open pages could not be looked at:', error),
      )
      .finally(() => {
        looking = false
      })
  }, SWEEP_MS)
  const heartbeat = setInterval(() => {
    for (const record of rooms.records()) void beat(record)
  }, HEARTBEAT_MS)

  async function beat(record: string): Promise<void> {
    const version = await following.version(record).catch(() => null)
    if (version === null) return
    for (const watched of rooms.of(record)) {
      io.local.to(roomOf(watched)).emit('version', { record, version })
    }
  }

  return {
    async regrant(persons, record) {
      const changed = new Set<string>(persons)
      for (const socket of local) {
        if (!changed.has(socket.data.session.person)) continue
        await regrantSocket(socket, [...socket.data.watching.keys()])
        // They may have got something that they don't follow yet.
        socket.emit('access', { record })
      }
    },
    async regrantRecord(record) {
      for (const socket of local) {
        if (socket.data.watching.has(record)) await regrantSocket(socket, [record])
      }
    },
    close() {
      clearInterval(sweep)
      clearInterval(heartbeat)
    },
  }
}
