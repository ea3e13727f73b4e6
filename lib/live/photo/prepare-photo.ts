import { drawSmaller } from './draw-smaller.ts'
import { exifBlock, type PhotoFacts } from './exif-block.ts'
import { withSaid } from './jpeg-segments.ts'
import { readFacts } from './read-facts.ts'
import { type PictureKind, pictureKind, withoutMetadata } from './without-metadata.ts'

/** Longest side of a photo that is sent, in pixels: a weld or a data plate can still be read. */
const LONGEST = 2560
const QUALITY = 0.85
/** A photo this small is sent as it is drawn, in bytes. */
const SMALL_BYTES = 1_500_000
const THUMB_LONGEST = 320
const THUMB_QUALITY = 0.7

/** A file as it will be sent, or why it can't be. */
export type Prepared =
  | { readonly is: 'ready'; readonly bytes: Blob; readonly thumb: Blob | null }
  | { readonly is: 'unreadable'; readonly why: 'heic' | 'damaged' | 'unknown' }

/**
 * Makes a photo ready to be sent: upright, no larger than needed, without what it says of who, where and with what; the time of the
 * camera's clock stays, the place only where `keepPlace` says so. A paper passes as it is.
 */
export async function preparePhoto(file: Blob, keepPlace: boolean): Promise<Prepared> {
  const bytes = new Uint8Array(await file.arrayBuffer())
  const kind = pictureKind(bytes)
  if (kind === null)
    return String.fromCharCode(...bytes.subarray(0, 4)) === '%PDF'
      ? { is: 'ready', bytes: new Blob([bytes], { type: 'application/pdf' }), thumb: null }
      : { is: 'unreadable', why: 'unknown' }
  const picture = await createImageBitmap(new Blob([bytes], { type: `image/${kind}` }), {
    imageOrientation: 'from-image',
  }).catch(() => null)
  if (picture === null) return { is: 'unreadable', why: kind === 'heic' ? 'heic' : 'damaged' }
  try {
    const read = await readFacts(bytes)
    const facts = keepPlace ? read : { ...read, place: null }
    const thumb = await drawSmaller(picture, THUMB_LONGEST, THUMB_QUALITY)
    return { is: 'ready', bytes: await best(picture, kind, bytes, facts), thumb }
  } finally {
    picture.close()
  }
}

/** The picture itself where it is small and upright; else drawn anew, unless that would be larger. */
async function best(
  picture: ImageBitmap,
  kind: PictureKind,
  bytes: Uint8Array,
  facts: PhotoFacts,
): Promise<Blob> {
  const plain = withoutMetadata(kind, bytes, exifBlock(facts))
  const isSmall = Math.max(picture.width, picture.height) <= LONGEST && bytes.length <= SMALL_BYTES
  const asItIs = plain === null ? null : new Blob([plain], { type: `image/${kind}` })
  if (asItIs !== null && isSmall && facts.orientation === 1) return asItIs
  const drawn = new Uint8Array(await (await drawSmaller(picture, LONGEST, QUALITY)).arrayBuffer())
  const upright = withSaid(drawn, exifBlock({ ...facts, orientation: 1 }))
  if (upright === null) throw new Error('The browser drew no JPEG.')
  return asItIs !== null && asItIs.size <= upright.length
    ? asItIs
    : new Blob([upright], { type: 'image/jpeg' })
}
