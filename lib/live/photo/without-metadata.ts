import { joined, withSaid } from './jpeg-segments.ts'

/** A picture's kind, by the bytes it begins with. */
export type PictureKind = 'jpeg' | 'png' | 'webp' | 'heic'

const textAt = (bytes: Uint8Array, from: number, length = 4): string =>
  String.fromCharCode(...bytes.subarray(from, from + length))

/** Brands of ISO/IEC 23008-12, annex B, as phones write them. */
const HEIC = new Set(['heic', 'heix', 'heim', 'heis', 'hevc', 'hevx', 'mif1', 'msf1'])

/** What it is, whatever it is called; null where it is none of these. */
export function pictureKind(bytes: Uint8Array): PictureKind | null {
  if (bytes[0] === 0xff && bytes[1] === 0xd8) return 'jpeg'
  if (bytes[0] === 0x89 && textAt(bytes, 1, 3) === 'PNG') return 'png'
  if (textAt(bytes, 0) === 'RIFF' && textAt(bytes, 8) === 'WEBP') return 'webp'
  if (textAt(bytes, 4) === 'ftyp' && HEIC.has(textAt(bytes, 8))) return 'heic'
  return null
}

/**
 * The picture without what it says of who, where and with what. Null where it can't be read, or where it says in what can't stay how
 * it is turned: such a one is drawn anew.
 */
export function withoutMetadata(
  kind: PictureKind,
  bytes: Uint8Array,
  said: Uint8Array,
): Uint8Array<ArrayBuffer> | null {
  switch (kind) {
    case 'jpeg':
      return withSaid(bytes, said)
    case 'png':
      return pngWithout(bytes)
    case 'webp':
      return webpWithout(bytes)
    case 'heic':
      return null
  }
}

/** Chunks of a PNG that say something beside the picture (PNG 3rd edition, 11.3). */
const PNG_SAID = new Set(['tEXt', 'zTXt', 'iTXt', 'tIME'])

function pngWithout(bytes: Uint8Array): Uint8Array<ArrayBuffer> | null {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  const parts = [bytes.subarray(0, 8)]
  for (let at = 8; at + 12 <= bytes.length; ) {
    const to = at + 12 + view.getUint32(at)
    const type = textAt(bytes, at + 4)
    if (type === 'eXIf') return null
    if (!PNG_SAID.has(type)) parts.push(bytes.subarray(at, to))
    if (type === 'IEND') return joined(parts)
    at = to
  }
  return null
}

/** The flag of `VP8X` that announces XMP (WebP container specification, extended file format). */
const WEBP_XMP_FLAG = 0x04

function webpWithout(bytes: Uint8Array): Uint8Array<ArrayBuffer> | null {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  const parts: Uint8Array[] = []
  for (let at = 12; at + 8 <= bytes.length; ) {
    const size = view.getUint32(at + 4, true)
    const to = at + 8 + size + (size % 2)
    const type = textAt(bytes, at)
    const chunk = bytes.slice(at, to)
    if (type === 'VP8X') chunk[8] = (chunk[8] ?? 0) & ~WEBP_XMP_FLAG
    if (type === 'EXIF') return null
    if (type !== 'XMP ') parts.push(chunk)
    at = to
  }
  if (parts.length === 0) return null
  const whole = joined([bytes.subarray(0, 12), ...parts])
  new DataView(whole.buffer).setUint32(4, whole.length - 8, true)
  return whole
}
