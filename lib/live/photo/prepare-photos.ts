import type { PhotoAsked } from './photo-worker.ts'
import type { Prepared } from './prepare-photo.ts'

/** Makes photos ready one after another, beside the page where the browser can: a page that stands still loses presses. */
export interface PhotoBench {
  readonly prepare: (asked: PhotoAsked) => Promise<Prepared>
  readonly close: () => void
}

/** Opens one; close it when the last photo is ready, or to stop in the middle: what was asked then never answers. */
export function openPhotoBench(): PhotoBench {
  if (typeof Worker === 'undefined' || typeof OffscreenCanvas === 'undefined') return onThePage
  const worker = new Worker(new URL('./photo-worker.ts', import.meta.url), { type: 'module' })
  return {
    prepare: (asked) =>
      new Promise((done) => {
        worker.onmessage = ({ data }: MessageEvent<Prepared>) => done(data)
        // It couldn't be loaded, as without a network and a cache.
        worker.onerror = () => done(onThePage.prepare(asked))
        worker.postMessage(asked)
      }),
    close: () => worker.terminate(),
  }
}

const onThePage: PhotoBench = {
  async prepare({ file, keepPlace }) {
    const { preparePhoto } = await import('./prepare-photo.ts')
    return preparePhoto(file, keepPlace)
  },
  close: () => undefined,
}
