import { Instant } from '../../record/scalars.ts'
import type { Live } from '../live.ts'
import type { ProjectState } from '../project-state.ts'
import { daySheetKey, projectKey, shopKey } from '../record-keys.ts'
import type { ShopState } from '../shop-state.ts'
import { forgetViews, keepViews } from './kept-views.ts'
import { type KeptView, openPhoneStore, type PhoneStore } from './phone-store.ts'
import { viewOfProject, viewOfShop } from './view-of-state.ts'
import { phonePerson } from './whose-phone.ts'

/** What was just opened is kept after so many ms: a glance must be enough. */
const SOON_MS = 200
/** Changes that come closer together than this, in ms, are written at once. */
const TOGETHER_MS = 2000

/**
 * From now on every project and shop in the tab's cache is kept on this phone: soon after it came, after changes, and as the page goes
 * out of sight. Only what the server showed to this person is in there.
 */
export function keepWhatIsSeen(live: Live): void {
  const cache = live.query.getQueryCache()
  const changed = new Set<string>()
  let timer: ReturnType<typeof setTimeout> | undefined
  let store: Promise<PhoneStore> | undefined
  let written = 0

  const write = async () => {
    clearTimeout(timer)
    timer = undefined
    const records = [...changed]
    changed.clear()
    written = Date.now()
    try {
      store ??= openPhoneStore()
      const phone = await store
      for (const record of records) if (isGone(live, record)) await forgetViews(phone, record)
      await keepViews(
        phone,
        records.flatMap((record) => kept(live, record) ?? []),
      )
    } catch {
      // No room, or a window that keeps nothing: the screens work on, only not without a network.
      store = undefined
    }
  }
  const due = (record: string) => {
    changed.add(record)
    const wait = Math.max(SOON_MS, written + TOGETHER_MS - Date.now())
    timer ??= setTimeout(() => void write(), wait)
  }
  const outOfSight = () => {
    if (document.visibilityState === 'visible') return
    // Also what did not change: it is known to be true until now.
    for (const record of live.watched()) changed.add(record)
    void write()
  }

  for (const { queryKey } of cache.getAll()) recordOf(queryKey).forEach(due)
  cache.subscribe(({ type, query }) => {
    if (type === 'added' || type === 'updated') recordOf(query.queryKey).forEach(due)
  })
  live.connection.subscribe(() => {
    if (live.connection.link() === 'away') live.watched().forEach(due)
  })
  addEventListener('visibilitychange', outOfSight)
  addEventListener('pagehide', outOfSight)
}

/** The record that lies under a key of the cache, where it is one. */
function recordOf(key: readonly unknown[]): readonly string[] {
  const [kind, id] = key
  return (kind === 'project' || kind === 'shop' || kind === 'day sheet') && typeof id === 'string'
    ? [id]
    : []
}

const heldOf = ({ query }: Live, record: string) => ({
  project: query.getQueryData<ProjectState | null>(projectKey(record)),
  shop: query.getQueryData<ShopState | null>(shopKey(record)),
})

const isGone = (live: Live, record: string): boolean => {
  const { project, shop } = heldOf(live, record)
  return project === null || shop === null
}

/** A record as it is kept; nothing where it is gone, or where this phone is no longer that person's. */
function kept(live: Live, record: string): KeptView | undefined {
  const { project, shop } = heldOf(live, record)
  const state = project ?? shop
  if (state === null || state === undefined || state.person !== phonePerson()) return undefined
  const { connection } = live
  const keptAt = Instant.parse(new Date(connection.knownUntilMs()).toISOString())
  const clockAhead = connection.nowMs() - Date.now()
  const common = { record, person: state.person, keptAt, clockAhead }
  if (project !== null && project !== undefined)
    return { ...common, kind: 'project', view: viewOfProject(project, keptAt) }
  if (shop !== null && shop !== undefined) {
    const projects = live.query.getQueryData<readonly string[]>(daySheetKey(record)) ?? null
    return { ...common, kind: 'shop', view: viewOfShop(shop, keptAt), projects }
  }
  return undefined
}
