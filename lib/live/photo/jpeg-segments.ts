const SOI = 0xd8
const EOI = 0xd9
const SOS = 0xda
const COM = 0xfe

/** Where a segment lies, its marker's byte included; of a scan, all up to the next marker. */
interface Segment {
  readonly marker: number
  readonly from: number
  readonly to: number
}

/** What a JPEG is made of, up to its end (ITU-T T.81, annex B); null where it can't be read. */
function segmentsOf(bytes: Uint8Array): readonly Segment[] | null {
  if (bytes[0] !== 0xff || bytes[1] !== SOI) return null
  const segments: Segment[] = []
  let at = 2
  while (at + 1 < bytes.length) {
    const marker = bytes[at + 1]
    if (bytes[at] !== 0xff || marker === undefined) return null
    if (marker === 0xff) {
      at++
      continue
    }
    if (marker === EOI) return [...segments, { marker, from: at, to: at + 2 }]
    const length = ((bytes[at + 2] ?? 0) << 8) | (bytes[at + 3] ?? 0)
    if (length < 2) return null
    let to = at + 2 + length
    if (marker === SOS) to = endOfScan(bytes, to)
    segments.push({ marker, from: at, to })
    at = to
  }
  // A camera that was cut off in writing: what is there can be shown.
  return segments
}

/** The next marker that isn't a stuffed byte or a restart. */
function endOfScan(bytes: Uint8Array, from: number): number {
  for (let at = from; at + 1 < bytes.length; at++) {
    const next = bytes[at + 1] ?? 0
    if (bytes[at] === 0xff && next !== 0 && next !== 0xff && (next < 0xd0 || next > 0xd7)) return at
  }
  return bytes.length
}

/** Said of the colours, and needed to show them: JFIF, a colour profile, Adobe's transform. All else is said of who, where and with what. */
function isOfColour({ marker, from }: Segment, bytes: Uint8Array): boolean {
  if (marker === 0xe0 || marker === 0xee) return true
  const name = String.fromCharCode(...bytes.subarray(from + 4, from + 15))
  return marker === 0xe2 && name === 'ICC_PROFILE'
}

const isSaid = ({ marker }: Segment): boolean =>
  marker === COM || (marker >= 0xe0 && marker <= 0xef)

/**
 * The JPEG without what it says of itself, also without the pictures that cameras hang on its end, and with `said` in place of it.
 * @returns null where it is no JPEG that can be read
 */
export function withSaid(bytes: Uint8Array, said: Uint8Array): Uint8Array<ArrayBuffer> | null {
  const segments = segmentsOf(bytes)
  if (segments === null) return null
  const kept = segments.filter((segment) => !isSaid(segment) || isOfColour(segment, bytes))
  const parts = kept.map(({ from, to }) => bytes.subarray(from, to))
  // JFIF, where there is one, must stand first; EXIF comes after it.
  const after = kept[0]?.marker === 0xe0 ? 1 : 0
  return joined([bytes.subarray(0, 2), ...parts.slice(0, after), said, ...parts.slice(after)])
}

/** Parts in a row. */
export function joined(parts: readonly Uint8Array[]): Uint8Array<ArrayBuffer> {
  const all = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0))
  let at = 0
  for (const part of parts) {
    all.set(part, at)
    at += part.length
  }
  return all
}
