import { parse } from 'exifr/dist/lite.esm.mjs'
import * as z from 'zod/mini'
import type { PhotoFacts } from './exif-block.ts'

/** What a camera wrote, as far as it is of use here; other cameras wrote other things. */
const Written = z.object({
  DateTimeOriginal: z.optional(z.string()),
  OffsetTimeOriginal: z.optional(z.string()),
  Orientation: z.optional(z.number()),
  latitude: z.optional(z.number()),
  longitude: z.optional(z.number()),
})

const nothing: PhotoFacts = { takenAt: null, offset: null, place: null, orientation: 1 }

/** What a photo says of itself; what it doesn't say, or says in a way that can't be read, is null. */
export async function readFacts(bytes: Uint8Array): Promise<PhotoFacts> {
  const read: unknown = await parse(bytes, {
    tiff: true,
    ifd0: { pick: ['Orientation'] },
    exif: { pick: ['DateTimeOriginal', 'OffsetTimeOriginal'] },
    gps: true,
    // As written: a time of the camera's clock is no instant.
    reviveValues: false,
    translateValues: false,
  }).catch(() => undefined)
  const written = Written.safeParse(read)
  return written.success ? factsIn(written.data) : nothing
}

function factsIn(written: z.infer<typeof Written>): PhotoFacts {
  const { DateTimeOriginal: takenAt, OffsetTimeOriginal: offset, latitude, longitude } = written
  const { Orientation: orientation } = written
  const placed =
    latitude !== undefined &&
    longitude !== undefined &&
    Math.abs(latitude) <= 90 &&
    Math.abs(longitude) <= 180
  return {
    takenAt: matching(takenAt, /^\d{4}:\d\d:\d\d \d\d:\d\d:\d\d$/),
    offset: matching(offset, /^[+-]\d\d:\d\d$/),
    place: placed ? { latitude, longitude } : null,
    orientation:
      orientation !== undefined && orientation >= 1 && orientation <= 8 ? orientation : 1,
  }
}

const matching = (text: string | undefined, form: RegExp): string | null =>
  text !== undefined && form.test(text) ? text : null
