'use client'
import { QueryClientProvider } from '@tanstack/react-query'
import {
  createContext,
  type ReactNode,
  use,
  useEffect,
  useState,
  useSyncExternalStore,
} from 'react'
import { Instant } from '../record/scalars.ts'
import type { Link } from './connection.ts'
import { type Live, openLive } from './live.ts'

/** How the reader writes, and what time it was on the server when the page was made. */
export interface Setting {
  readonly locale: string
  readonly now: string
}

const LiveContext = createContext<Live | null>(null)
const SettingContext = createContext<Setting | null>(null)

/** How long a tab may stand between two screens that are live before it hangs up, in ms. */
const LETS_GO_MS = 2000

let kept: Live | undefined
let holders = 0
let isKeeping = false

/** One for the tab, whichever screen it shows; one for each page on the server. */
export function liveOfTab(): Live {
  if (typeof window === 'undefined') return openLive()
  kept ??= openLive()
  return kept
}

/** From now on what is seen is kept on this phone. */
async function keep(live: Live): Promise<void> {
  isKeeping = true
  try {
    const { keepWhatIsSeen } = await import('./phone/keep-what-is-seen.ts')
    keepWhatIsSeen(live)
  } catch {
    // No network for that piece of the program: the next page keeps what it shows.
    isKeeping = false
  }
}

/** Keeps the socket open until the returned function is called, and a little longer: the next screen may want it. */
function hold(live: Live): () => void {
  holders += 1
  if (holders === 1) {
    void live.connect()
    void live.outbox.load()
  }
  if (!isKeeping) void keep(live)
  return () => {
    setTimeout(() => {
      holders -= 1
      if (holders === 0) live.close()
    }, LETS_GO_MS)
  }
}

/** Around the screens of a project or a shop: cache, socket, queue and clock of this tab. Comes after the first paint. */
export function LiveProvider({
  locale,
  now,
  children,
}: Setting & { readonly children: ReactNode }) {
  const [live] = useState(liveOfTab)
  useEffect(() => hold(live), [live])
  return (
    <LiveContext value={live}>
      <SettingContext value={{ locale, now }}>
        <QueryClientProvider client={live.query}>{children}</QueryClientProvider>
      </SettingContext>
    </LiveContext>
  )
}

/** The tab's cache, socket and clock. */
export function useLive(): Live {
  const live = use(LiveContext)
  if (live === null) throw new Error('A screen stands outside LiveProvider.')
  return live
}

/** The reader's locale. */
export function useLocale(): string {
  const setting = use(SettingContext)
  if (setting === null) throw new Error('A screen stands outside LiveProvider.')
  return setting.locale
}

/** How often a screen's *now* moves on, in ms: it says minutes, never seconds. */
const TICK_MS = 20_000

/** The server's clock. First the time that the page was made, so that server and phone paint the same. */
export function useNow(): Instant {
  const live = useLive()
  const setting = use(SettingContext)
  const [now, setNow] = useState(() =>
    setting !== null && live.connection.link() === 'starting'
      ? Instant.parse(setting.now)
      : live.now(),
  )
  useEffect(() => {
    const tick = () => setNow(live.now())
    tick()
    const timer = setInterval(tick, TICK_MS)
    return () => clearInterval(timer)
  }, [live])
  return now
}

/** Whether changes arrive by themselves, and until when all is known. */
export function useConnection(): { readonly link: Link; readonly knownUntil: Instant } {
  const { connection } = useLive()
  const link = useSyncExternalStore<Link>(connection.subscribe, connection.link, () => 'starting')
  return { link, knownUntil: Instant.parse(new Date(connection.knownUntilMs()).toISOString()) }
}
