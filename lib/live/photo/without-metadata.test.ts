import { describe, expect, it } from 'vitest'
import { pictureKind, withoutMetadata } from './without-metadata.ts'

const text = (words: string) => Array.from(words, (letter) => letter.charCodeAt(0))
const nothing = new Uint8Array()

describe('a PNG', () => {
  const chunk = (type: string, data: readonly number[]) => [
    ...[0, 0, 0, data.length],
    ...text(type),
    ...data,
    ...[1, 2, 3, 4],
  ]
  const aPng = (...chunks: readonly number[][]) =>
    Uint8Array.from([0x89, ...text('PNG\r\n'), 0x1a, 0x0a, ...chunks.flat()])
  const [head, end] = [chunk('IHDR', [1, 2, 3]), chunk('IEND', [])]

  it('loses who, when and with what', () => {
    const written = aPng(head, chunk('tEXt', text('Author\0A. Carter')), chunk('tIME', [1]), end)
    expect(pictureKind(written)).toBe('png')
    expect(withoutMetadata('png', written, nothing)).toEqual(aPng(head, end))
  })

  it('is drawn anew where it may be turned, or is cut off', () => {
    expect(withoutMetadata('png', aPng(head, chunk('eXIf', [1]), end), nothing)).toBeNull()
    expect(withoutMetadata('png', aPng(head), nothing)).toBeNull()
  })
})

describe('a WebP', () => {
  const chunk = (type: string, data: readonly number[]) => [
    ...text(type),
    ...[data.length, 0, 0, 0],
    ...data,
    ...(data.length % 2 === 1 ? [0] : []),
  ]
  const aWebp = (...chunks: readonly number[][]) => {
    const inside = [...text('WEBP'), ...chunks.flat()]
    return Uint8Array.from([...text('RIFF'), ...[inside.length, 0, 0, 0], ...inside])
  }
  const picture = chunk('VP8 ', [9, 9, 9])

  it('loses what was said of it, and says so in its head', () => {
    const written = aWebp(chunk('VP8X', [0x14, 0, 0]), picture, chunk('XMP ', text('<x/>')))
    expect(pictureKind(written)).toBe('webp')
    expect(withoutMetadata('webp', written, nothing)).toEqual(
      aWebp(chunk('VP8X', [0x10, 0, 0]), picture),
    )
  })

  it('is drawn anew where it may be turned', () => {
    expect(withoutMetadata('webp', aWebp(picture, chunk('EXIF', [1])), nothing)).toBeNull()
  })
})

describe('a phone’s HEIC', () => {
  it('is known by its brand', () => {
    const heic = Uint8Array.from([0, 0, 0, 24, ...text('ftypheic')])
    expect(pictureKind(heic)).toBe('heic')
    expect(withoutMetadata('heic', heic, nothing)).toBeNull()
    expect(pictureKind(Uint8Array.from([0, 0, 0, 24, ...text('ftypmp42')]))).toBeNull()
  })
})
