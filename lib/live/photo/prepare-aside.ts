import type { PhotoAnswered, PhotoAsked } from './photo-worker.ts'
import type { Prepared } from './prepare-photo.ts'

interface Waiting {
  readonly file: Blob
  readonly keepPlace: boolean
  readonly done: (prepared: Prepared) => void
}

const waiting = new Map<number, Waiting>()
let asked = 0
/** Null where there can be none: an older browser, or it couldn't be loaded. */
let worker: Worker | null | undefined

/** Starts the worker ahead of the first photo, so that it is there when the signal is not. */
export function openPhotoBench(): void {
  if (worker !== undefined) return
  if (typeof Worker === 'undefined' || typeof OffscreenCanvas === 'undefined') {
    worker = null
    return
  }
  worker = new Worker(new URL('./photo-worker.ts', import.meta.url), { type: 'module' })
  worker.onmessage = ({ data: { id, prepared } }: MessageEvent<PhotoAnswered>) => {
    waiting.get(id)?.done(prepared)
    waiting.delete(id)
  }
  worker.onerror = () => {
    worker = null
    for (const [id, one] of waiting) {
      waiting.delete(id)
      void onThePage(one).then(one.done)
    }
  }
}

/** Makes a photo ready to be sent, beside the page where the browser can: a page that stands still loses presses. */
export function prepareAside(file: Blob, keepPlace: boolean): Promise<Prepared> {
  openPhotoBench()
  return new Promise((done) => {
    const one: Waiting = { file, keepPlace, done }
    if (worker == null) return void onThePage(one).then(done)
    asked += 1
    waiting.set(asked, one)
    worker.postMessage({ id: asked, file, keepPlace } satisfies PhotoAsked)
  })
}

async function onThePage({ file, keepPlace }: Waiting): Promise<Prepared> {
  try {
    const { preparePhoto } = await import('./prepare-photo.ts')
    return await preparePhoto(file, keepPlace)
  } catch {
    return { is: 'unreadable', why: 'damaged' }
  }
}
