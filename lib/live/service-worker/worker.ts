/// <reference lib="webworker" />
import {
  CacheFirst,
  type PrecacheEntry,
  Serwist,
  type SerwistPlugin,
  setCacheNameDetails,
} from 'serwist'
import { flushOutbox } from '../outbox/flush-outbox.ts'
import { SYNC_TAG } from '../outbox/sync-tag.ts'
import { openPhoneStore } from '../phone/phone-store.ts'
import { answerPage, answerScreenData } from './answer-page.ts'
import { listsKept, recordOfPath } from './record-of-path.ts'
import { TAKE_PAGE } from './take-page.ts'

declare const self: ServiceWorkerGlobalScope
/** Put in by lib/bin/finish-build.ts: what a phone needs to show what it kept. */
declare const PRECACHE: PrecacheEntry[]
/** Put in likewise. */
declare const BUILD: string

/** What answers any address without a network. */
const SHELL = '/shell'
/** So long may the network think where the phone could answer, in ms. */
const PATIENCE_MS = 4_000
/** And so long once it has just been too slow. */
const SLOW_PATIENCE_MS = 800
/** For how long it counts as slow, in ms. */
const SLOW_FOR_MS = 20_000
/** Scripts and faces that only some screens load: their names hold their hash, so they never grow stale. */
const LOADED = 'fettleyard-loaded-'

/** The script of a worker reads its settings at the end of its address (`#…`), which an answer with an address of its own would hide. */
const underItsAddress: SerwistPlugin = {
  handlerWillRespond: async ({ request, response }) =>
    request.destination === 'worker' ? new Response(response.body, response) : response,
}

let slowUntil = 0

setCacheNameDetails({ prefix: 'fettleyard' })
const serwist = new Serwist({
  precacheEntries: PRECACHE,
  precacheOptions: { cleanURLs: false, directoryIndex: null, plugins: [underItsAddress] },
  navigationPreload: true,
  // The first worker of a phone takes the pages that are there; later ones wait until the person takes them.
  clientsClaim: true,
  skipWaiting: false,
  disableDevLogs: true,
})

serwist.registerCapture(
  ({ url, sameOrigin, request }) =>
    sameOrigin && request.mode === 'navigate' && !url.pathname.startsWith('/api/'),
  ({ url, request, event }) =>
    answerPage({
      network: async () => (await preloaded(event)) ?? fetch(request),
      shell: () => serwist.matchPrecache(SHELL),
      kept: () => keeps(url),
      patience,
      late,
    }),
)

serwist.registerCapture(
  ({ sameOrigin, request }) =>
    sameOrigin &&
    request.headers.get('rsc') === '1' &&
    !request.headers.has('next-router-prefetch'),
  ({ url, request }) =>
    answerScreenData({ network: () => fetch(request), kept: () => keeps(url), patience, late }),
)

serwist.registerCapture(
  ({ url, sameOrigin }) => sameOrigin && url.pathname.startsWith('/_next/static/'),
  new CacheFirst({ cacheName: `${LOADED}${BUILD}`, plugins: [underItsAddress] }),
)

self.addEventListener('activate', (event) => event.waitUntil(forgetFormerBuilds()))

self.addEventListener('message', (event) => {
  if (event.data?.type === TAKE_PAGE) event.waitUntil(self.clients.claim())
})

self.addEventListener('sync', (event) => {
  if (event.tag === SYNC_TAG) event.waitUntil(sendWhatWaits())
})

serwist.addEventListeners()

async function preloaded(event: ExtendableEvent): Promise<Response | undefined> {
  return event instanceof FetchEvent ? await event.preloadResponse : undefined
}

function patience(): Promise<void> {
  const slow = Date.now() < slowUntil
  return new Promise((resolve) => setTimeout(resolve, slow ? SLOW_PATIENCE_MS : PATIENCE_MS))
}

function late(): void {
  slowUntil = Date.now() + SLOW_FOR_MS
}

async function keeps({ pathname }: URL): Promise<boolean> {
  const record = recordOfPath(pathname)
  if (record === undefined && !listsKept(pathname)) return false
  try {
    const phone = await openPhoneStore()
    const kept = await phone.count('views', record)
    phone.close()
    return kept > 0
  } catch {
    return false
  }
}

async function forgetFormerBuilds(): Promise<void> {
  for (const name of await caches.keys()) {
    if (name.startsWith(LOADED) && name !== `${LOADED}${BUILD}`) await caches.delete(name)
  }
}

/** The browser calls again later where something is left. */
async function sendWhatWaits(): Promise<void> {
  const { left } = await flushOutbox()
  if (left > 0) throw new Error(`${left} still wait.`)
}
