import { preparePhoto } from './prepare-photo.ts'

/** What the page asks its worker. */
export interface PhotoAsked {
  readonly file: Blob
  readonly keepPlace: boolean
}

// One at a time: each decoded photo takes some 50 MB.
addEventListener('message', ({ data }: MessageEvent<PhotoAsked>) => {
  preparePhoto(data.file, data.keepPlace).then(
    (prepared) => postMessage(prepared),
    () => postMessage({ is: 'unreadable', why: 'damaged' }),
  )
})
