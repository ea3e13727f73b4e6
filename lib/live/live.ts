import { QueryClient } from '@tanstack/react-query'
import type { Socket } from 'socket.io-client'
import type { Changed, ClientEvents, ProjectView, ServerEvents, ShopView } from '../command/wire.ts'
import { Instant } from '../record/scalars.ts'
import { type Connection, openConnection } from './connection.ts'
import { getChanges, getProject, getShop, isSignedOut } from './http.ts'
import { type OutboxHandle, openOutboxHandle } from './outbox/outbox-handle.ts'
import { forgetThisPerson } from './phone/forget-person.ts'
import { meets, type ProjectState, projectStateAfter, projectStateOf } from './project-state.ts'
import { projectKey, shopKey } from './record-keys.ts'
import { type ShopState, shopStateAfter, shopStateOf } from './shop-state.ts'

/** What the screens of one tab share: the cache, the socket, the clock. */
export interface Live {
  readonly query: QueryClient
  readonly connection: Connection
  /** What was pressed and not sent. */
  readonly outbox: OutboxHandle
  readonly now: () => Instant
  /** Puts in what came with a page, unless the phone knows more already. */
  readonly seedProject: (view: ProjectView) => void
  readonly seedShop: (view: ShopView) => void
  /** Takes a change, from the socket or from an answer. */
  readonly take: (changed: Changed) => void
  /** The versions that this tab holds of those records, of those that it holds. */
  readonly versionsOf: (records: readonly string[]) => { readonly [record: string]: number }
  /** Fetches a record anew. */
  readonly refetch: (record: string) => Promise<void>
  /** Follows a record until the returned function is called. */
  readonly watch: (record: string) => () => void
  /** Which records are followed: of those all is known until `connection.knownUntilMs`. */
  readonly watched: () => readonly string[]
  /** Opens the socket; called after the first paint. */
  readonly connect: () => Promise<void>
  readonly close: () => void
}

/** How long until a socket that the server ended for no reason of ours is opened again, in ms. */
const REOPEN_MS = 4000

/** The server hung up. Whoever was signed out, here or everywhere, sees nothing more on this phone. */
async function refused(reopen: () => void): Promise<void> {
  if (!(await isSignedOut())) {
    setTimeout(reopen, REOPEN_MS)
    return
  }
  await forgetThisPerson()
  const here = `${location.pathname}${location.search}`
  location.assign(`/sign-in?next=${encodeURIComponent(here)}`)
}

/** The socket's code. Without a network it is waited for, and `away` called. */
async function socketCode(away: () => void): Promise<typeof import('socket.io-client')> {
  for (;;) {
    try {
      return await import('socket.io-client')
    } catch {
      away()
      await new Promise((again) => setTimeout(again, REOPEN_MS))
    }
  }
}

/** Answers that mean: not signed in, not for this person, not there. */
const gone = (status: number): boolean => status === 401 || status === 403 || status === 404

const isProject = (record: string): boolean => record.startsWith('prj_')

/** Begins with an empty cache and no socket. */
export function openLive(): Live {
  const query = new QueryClient({
    defaultOptions: {
      queries: {
        staleTime: Number.POSITIVE_INFINITY,
        retry: false,
        refetchOnWindowFocus: false,
        refetchOnReconnect: false,
        // Records hold maps, which structural sharing would not compare.
        structuralSharing: false,
      },
    },
  })
  const connection = openConnection()
  const now = () => Instant.parse(new Date(connection.nowMs()).toISOString())
  const watched = new Map<string, number>()
  const fetching = new Map<string, Promise<void>>()
  let socket: Socket<ServerEvents, ClientEvents> | undefined
  let closed = false
  let forget = (): void => {}

  const project = (id: string) => query.getQueryData<ProjectState>(projectKey(id))
  const shop = (id: string) => query.getQueryData<ShopState>(shopKey(id))
  function held(record: string): { readonly version: number; readonly epoch: number } | undefined {
    const there = project(record)
    if (there !== undefined) return { version: there.record.version, epoch: there.epoch }
    const book = shop(record)
    return book === undefined ? undefined : { version: book.book.version, epoch: book.epoch }
  }
  const older = (record: string, view: { readonly version: number; readonly epoch: number }) => {
    const known = held(record)
    return known !== undefined && known.epoch === view.epoch && known.version >= view.version
  }

  function seedProject(view: ProjectView): void {
    connection.seedClock(view.now)
    if (!older(view.record, view)) query.setQueryData(projectKey(view.record), projectStateOf(view))
  }
  function seedShop(view: ShopView): void {
    connection.seedClock(view.now)
    if (!older(view.record, view)) query.setQueryData(shopKey(view.record), shopStateOf(view))
  }

  function put(changed: Changed): void {
    const state = project(changed.record)
    if (state !== undefined) {
      query.setQueryData(projectKey(changed.record), projectStateAfter(state, changed, now()))
    }
    const book = shop(changed.record)
    if (book !== undefined) {
      query.setQueryData(shopKey(changed.record), shopStateAfter(book, changed, now()))
    }
  }

  function take(changed: Changed): void {
    const known = held(changed.record)
    if (known === undefined) return
    const how = meets(known, changed)
    if (how === 'follows') put(changed)
    if (how === 'gap') void catchUp(changed.record)
  }

  /** One fetch at a time for a record: what comes meanwhile is caught by the next version. */
  function once(record: string, work: () => Promise<void>): Promise<void> {
    const running = fetching.get(record)
    if (running !== undefined) return running
    const run = work().finally(() => fetching.delete(record))
    fetching.set(record, run)
    return run
  }

  async function whole(record: string): Promise<void> {
    if (isProject(record)) {
      const got = await getProject(record)
      if (got.ok) {
        connection.setClock(got.data.now)
        query.setQueryData(projectKey(record), projectStateOf(got.data))
      } else if (gone(got.status)) query.setQueryData(projectKey(record), null)
      return
    }
    const got = await getShop(record)
    if (got.ok) query.setQueryData(shopKey(record), shopStateOf(got.data))
    else if (gone(got.status)) query.setQueryData(shopKey(record), null)
  }

  /** The whole record as it is from now on: what is being fetched may be of before a change of access. */
  const anew = (record: string): Promise<void> => {
    const running = fetching.get(record)
    const fetched = () => once(record, () => whole(record))
    return running === undefined ? fetched() : running.then(fetched, fetched)
  }

  const catchUp = (record: string): Promise<void> =>
    once(record, async () => {
      const known = held(record)
      if (known === undefined) return
      const got = await getChanges(record, known.version, known.epoch)
      if (!got.ok) {
        if (got.status !== 0) await whole(record)
        return
      }
      if (meets(known, got.data) === 'gap') await whole(record)
      else if (got.data.to > known.version) put(got.data)
    })

  const follow = (record: string): void => {
    socket?.emit('watch', record, (version) => {
      const known = held(record)
      if (version === null || known === undefined) void once(record, () => whole(record))
      else if (version > known.version) void catchUp(record)
    })
  }

  const live: Live = {
    query,
    connection,
    outbox: openOutboxHandle(() => live),
    now,
    seedProject,
    seedShop,
    take,
    versionsOf: (records) =>
      Object.fromEntries(
        records.flatMap((record) => {
          const known = held(record)
          return known === undefined ? [] : [[record, known.version]]
        }),
      ),
    refetch: (record) => once(record, () => whole(record)),
    watch(record) {
      const count = watched.get(record) ?? 0
      watched.set(record, count + 1)
      if (count === 0 && socket?.connected) follow(record)
      return () => {
        const left = (watched.get(record) ?? 1) - 1
        if (left > 0) watched.set(record, left)
        else {
          watched.delete(record)
          socket?.emit('unwatch', record)
        }
      }
    },
    watched: () => [...watched.keys()],
    async connect() {
      closed = false
      const { io } = await socketCode(() => connection.say('away'))
      if (closed || socket !== undefined) return
      const opened: Socket<ServerEvents, ClientEvents> = io({
        transports: ['websocket'],
        reconnectionDelay: 500,
        reconnectionDelayMax: 4000,
      })
      socket = opened
      const reopen = () => {
        if (socket === opened) opened.connect()
      }
      // Where nothing is followed nobody need be signed in.
      const hungUp = () => {
        if (watched.size > 0) void refused(reopen)
      }
      opened.on('connect', () => {
        connection.say('live')
        for (const record of watched.keys()) follow(record)
      })
      opened.on('disconnect', (reason) => {
        connection.say('away')
        if (reason === 'io server disconnect') hungUp()
      })
      opened.on('connect_error', () => {
        connection.say('away')
        // Not active: the server has answered, with a no.
        if (!opened.active) hungUp()
      })
      opened.on('changed', take)
      opened.on('version', ({ record, version }) => {
        const known = held(record)
        if (known !== undefined && version > known.version) void catchUp(record)
      })
      opened.on('access', ({ record }) => {
        void anew(record)
        void query.invalidateQueries({ queryKey: ['me'] })
      })
      // The socket's own retries may wait for seconds; the phone knows at once.
      const online = () => opened.disconnect().connect()
      const offline = () => connection.say('away')
      addEventListener('online', online)
      addEventListener('offline', offline)
      forget = () => {
        removeEventListener('online', online)
        removeEventListener('offline', offline)
      }
    },
    close() {
      closed = true
      forget()
      live.outbox.close()
      socket?.close()
      socket = undefined
    },
  }
  return live
}
