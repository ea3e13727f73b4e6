import { isPartMissing } from './part-missing.ts'
import { TAKE_PAGE } from './take-page.ts'

/** What a page hears of the program that it runs. */
export type VersionNews =
  /** A new one lies on this phone and waits to be taken. */
  | 'ready'
  /** It was taken in another tab: this page still runs the former one. */
  | 'taken elsewhere'
  /** A part of this page's version could not be fetched: the server has another one now, or there is no signal. */
  | 'part missing'

/** This tab's watch over new versions. */
export interface Watch {
  /** Takes the new version, and loads the page anew, once. */
  readonly take: () => void
  readonly end: () => void
}

/** How often a page that stays open asks for a new version, in ms. */
const ASK_EVERY_MS = 60 * 60_000
/** At most so often when it is looked at again, in ms. */
const ASK_AGAIN_MS = 10 * 60_000

/** Puts the service worker on this phone and tells of new versions. In development it takes it off instead. */
export function watchWorker(hear: (news: VersionNews) => void): Watch {
  const end = new AbortController()
  const { signal } = end
  let waiting: ServiceWorker | undefined
  const reload = () => window.location.reload()

  window.addEventListener('error', ({ error }) => isPartMissing(error) && hear('part missing'), {
    signal,
  })
  window.addEventListener(
    'unhandledrejection',
    ({ reason }) => isPartMissing(reason) && hear('part missing'),
    { signal },
  )

  if ('serviceWorker' in navigator && window.isSecureContext) {
    const { serviceWorker } = navigator
    if (process.env.NODE_ENV === 'production') {
      void install(signal, (worker) => {
        waiting = worker
        hear('ready')
      })
      let had = serviceWorker.controller !== null
      serviceWorker.addEventListener(
        'controllerchange',
        () => {
          if (waiting !== undefined && asked) reload()
          else if (had) hear('taken elsewhere')
          had = true
        },
        { signal },
      )
    } else void takeOff()
  }

  let asked = false
  return {
    take() {
      if (asked) return
      asked = true
      if (waiting?.state === 'installed') waiting.postMessage({ type: 'SKIP_WAITING' })
      else reload()
    },
    end: () => end.abort(),
  }
}

async function install(signal: AbortSignal, ready: (worker: ServiceWorker) => void): Promise<void> {
  const { serviceWorker } = navigator
  try {
    const registration = await serviceWorker.register('/sw.js', { updateViaCache: 'none' })
    if (signal.aborted) return
    void askToBeTaken(signal)
    // Without a controller it is this phone's first worker, and needn't be asked for.
    const tell = (worker: ServiceWorker | null) => {
      if (worker?.state === 'installed' && serviceWorker.controller !== null) ready(worker)
    }
    const follow = (worker: ServiceWorker | null) =>
      worker?.addEventListener('statechange', () => tell(worker), { signal })
    tell(registration.waiting)
    follow(registration.installing)
    registration.addEventListener('updatefound', () => follow(registration.installing), { signal })
    askAgain(registration, signal)
  } catch {
    // No signal, or a browser that keeps nothing: all but reading offline works without it.
  }
}

/** A worker takes the pages that are there as it begins. One that was on its way just then, or was loaded past it, asks. */
async function askToBeTaken(signal: AbortSignal): Promise<void> {
  const { active } = await navigator.serviceWorker.ready
  if (signal.aborted || navigator.serviceWorker.controller !== null) return
  active?.postMessage({ type: TAKE_PAGE })
}

function askAgain(registration: ServiceWorkerRegistration, signal: AbortSignal): void {
  let last = Date.now()
  const ask = () => {
    last = Date.now()
    void registration.update().catch(() => undefined)
  }
  const timer = setInterval(ask, ASK_EVERY_MS)
  signal.addEventListener('abort', () => clearInterval(timer))
  const seen = () =>
    document.visibilityState === 'visible' && Date.now() - last > ASK_AGAIN_MS && ask()
  document.addEventListener('visibilitychange', seen, { signal })
}

async function takeOff(): Promise<void> {
  for (const one of await navigator.serviceWorker.getRegistrations()) await one.unregister()
}
