import { type Prepared, preparePhoto } from './prepare-photo.ts'

/** What the page asks its worker. */
export interface PhotoAsked {
  readonly id: number
  readonly file: Blob
  readonly keepPlace: boolean
}

/** What the worker answers. */
export interface PhotoAnswered {
  readonly id: number
  readonly prepared: Prepared
}

addEventListener('message', ({ data: { id, file, keepPlace } }: MessageEvent<PhotoAsked>) => {
  const answer = (prepared: Prepared) => postMessage({ id, prepared } satisfies PhotoAnswered)
  preparePhoto(file, keepPlace).then(answer, () => answer({ is: 'unreadable', why: 'damaged' }))
})
