import { parse } from 'exifr'
import { describe, expect, it } from 'vitest'
import { exifBlock, type PhotoFacts } from './exif-block.ts'
import { joined, withSaid } from './jpeg-segments.ts'
import { readFacts } from './read-facts.ts'

const nothing: PhotoFacts = { takenAt: null, offset: null, place: null, orientation: 1 }

/** A JPEG as far as its segments go: JFIF, one scan with a stuffed byte and a restart in it, the end. */
const JFIF = [0xff, 0xe0, 0, 7, 0x4a, 0x46, 0x49, 0x46, 0]
const SCAN = [0xff, 0xda, 0, 3, 1, 0x12, 0xff, 0x00, 0x34, 0xff, 0xd0, 0x56]
const aJpeg = (...segments: readonly number[][]) =>
  Uint8Array.from([0xff, 0xd8, ...JFIF, ...segments.flat(), ...SCAN, 0xff, 0xd9])
const segment = (marker: number, text: string) => [
  0xff,
  marker,
  0,
  text.length + 2,
  ...Array.from(text, (letter) => letter.charCodeAt(0)),
]
const saying = (facts: Partial<PhotoFacts>) =>
  withSaid(aJpeg(), exifBlock({ ...nothing, ...facts })) ?? new Uint8Array()

describe('what a photo of ours says of itself', () => {
  it.each([
    [54.56831, -3.01472],
    [-33.85678, 151.21529],
    [0.00001, -0.00001],
    [59.9999999999, 179.9999999999],
    [-90, 180],
  ])('its place %d, %d, as another program reads it', async (latitude, longitude) => {
    const read = await parse(saying({ place: { latitude, longitude } }), { gps: true })
    expect(read.latitude).toBeCloseTo(latitude, 6)
    expect(read.longitude).toBeCloseTo(longitude, 6)
    expect(read.GPSLatitude[1]).toBeLessThan(60)
    expect(read.GPSLatitude[2]).toBeLessThan(60)
  })

  it('when it was taken, by the camera’s clock, with its offset', async () => {
    const photo = saying({ takenAt: '2026:11:25 08:17:22', offset: '+01:00' })
    const read = await parse(photo, { reviveValues: false })
    expect(read).toMatchObject({
      DateTimeOriginal: '2026:11:25 08:17:22',
      OffsetTimeOriginal: '+01:00',
    })
    expect(read.latitude).toBeUndefined()
  })

  it.each([2, 3, 4, 5, 6, 7, 8])('that it is turned, way %d', async (orientation) => {
    const read = await parse(saying({ orientation }), { translateValues: false })
    expect(read).toEqual({ Orientation: orientation })
  })

  it('all of it, and our own reader reads the same', async () => {
    const facts = {
      takenAt: '2026:11:25 08:17:22',
      offset: '-05:30',
      place: { latitude: 54.5, longitude: -3.25 },
      orientation: 6,
    }
    expect(await readFacts(saying(facts))).toEqual(facts)
  })

  it('nothing, where there is nothing to say', async () => {
    expect(exifBlock(nothing)).toHaveLength(0)
    expect(await readFacts(saying({}))).toEqual(nothing)
    expect(await parse(saying({}))).toBeUndefined()
  })
})

describe('a photo from a camera', () => {
  const camera = exifBlock({ ...nothing, place: { latitude: 54.5, longitude: -3.25 } })

  it('loses its place, its comments and what the camera hung on its end, and keeps its colours', async () => {
    const photo = aJpeg(
      [...camera],
      segment(0xe1, 'http://ns.adobe.com/xap/1.0/\0<x:xmpmeta/>'),
      segment(0xe2, 'ICC_PROFILE\0\x01\x01p3'),
      segment(0xe2, 'MPF\0second picture'),
      segment(0xed, 'Photoshop 3.0\0'),
      segment(0xee, 'Adobe\0'),
      segment(0xfe, 'taken by A. Carter'),
    )
    expect((await parse(photo))?.latitude).toBeCloseTo(54.5)
    const clean = withSaid(joined([photo, aJpeg([...camera])]), new Uint8Array())
    expect(clean).toEqual(aJpeg(segment(0xe2, 'ICC_PROFILE\0\x01\x01p3'), segment(0xee, 'Adobe\0')))
  })

  it('that was cut off in writing keeps what is there', () => {
    expect(withSaid(aJpeg([...camera]).subarray(0, -4), new Uint8Array())).toEqual(
      aJpeg().subarray(0, -4),
    )
  })

  it('that is none is not taken for one', () => {
    expect(withSaid(Uint8Array.from([0xff, 0xd8, 0x00, 0x01]), new Uint8Array())).toBeNull()
    expect(withSaid(new TextEncoder().encode('%PDF-1.7'), new Uint8Array())).toBeNull()
  })
})
