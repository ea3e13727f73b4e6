/** Degrees, north and east positive. */
export interface Place {
  readonly latitude: number
  readonly longitude: number
}

/** What a photo of ours may say of itself. Null is not said. */
export interface PhotoFacts {
  /** By the camera's clock, as EXIF writes it: `2026:11:25 08:17:22`. */
  readonly takenAt: string | null
  /** The camera's offset from UTC, `+01:00`. */
  readonly offset: string | null
  readonly place: Place | null
  /** 1 to 8 (CIPA DC-008, 4.6.5.1.6): how the picture is to be turned; 1 where it lies upright. */
  readonly orientation: number
}

// Field types of TIFF 6.0, section 2.
const BYTE = 1
const ASCII = 2
const SHORT = 3
const LONG = 4
const RATIONAL = 5
const UNDEFINED = 7
const SIZE = { 1: 1, 2: 1, 3: 2, 4: 4, 5: 8, 7: 1 } as const

interface Entry {
  readonly tag: number
  readonly type: keyof typeof SIZE
  readonly bytes: readonly number[]
}

const short = (value: number): readonly number[] => [(value >> 8) & 0xff, value & 0xff]
const long = (value: number): readonly number[] => [
  ...short(Math.floor(value / 0x1_0000)),
  ...short(value % 0x1_0000),
]
const ascii = (text: string): readonly number[] => [
  ...Array.from(text, (letter) => letter.charCodeAt(0)),
  0,
]

/**
 * The APP1 segment of a JPEG that says this and nothing else (CIPA DC-008 “Exif 2.32”, 4.5 to 4.6.6; TIFF 6.0, section 2);
 * empty where nothing is to be said.
 */
export function exifBlock({ takenAt, offset, place, orientation }: PhotoFacts): Uint8Array {
  const exif: Entry[] =
    takenAt === null
      ? []
      : [
          { tag: 0x9000, type: UNDEFINED, bytes: ascii('0232').slice(0, 4) },
          { tag: 0x9003, type: ASCII, bytes: ascii(takenAt) },
          ...(offset === null ? [] : [{ tag: 0x9011, type: ASCII, bytes: ascii(offset) } as const]),
        ]
  const gps = place === null ? [] : gpsEntries(place)
  const turned: Entry[] =
    orientation === 1 ? [] : [{ tag: 0x0112, type: SHORT, bytes: short(orientation) }]
  if (exif.length + gps.length + turned.length === 0) return new Uint8Array()
  return app1(tiff(turned, exif, gps))
}

function gpsEntries({ latitude, longitude }: Place): readonly Entry[] {
  return [
    { tag: 0x0000, type: BYTE, bytes: [2, 3, 0, 0] },
    { tag: 0x0001, type: ASCII, bytes: ascii(latitude < 0 ? 'S' : 'N') },
    { tag: 0x0002, type: RATIONAL, bytes: degrees(latitude) },
    { tag: 0x0003, type: ASCII, bytes: ascii(longitude < 0 ? 'W' : 'E') },
    { tag: 0x0004, type: RATIONAL, bytes: degrees(longitude) },
  ]
}

/** Ten-thousandths of an arc second, some three millimetres. */
const FINE = 10_000

/** Degrees, minutes and seconds, each a fraction. */
function degrees(value: number): readonly number[] {
  const all = Math.round(Math.abs(value) * 3600 * FINE)
  const whole = Math.floor(all / (3600 * FINE))
  const minutes = Math.floor(all / (60 * FINE)) % 60
  const seconds = all % (60 * FINE)
  return [whole, 1, minutes, 1, seconds, FINE].flatMap((part) => [...long(part)])
}

/** Its header and directories: the first points to the two others by their places. */
function tiff(
  first: readonly Entry[],
  exif: readonly Entry[],
  gps: readonly Entry[],
): readonly number[] {
  const pointers = (exif.length > 0 ? 1 : 0) + (gps.length > 0 ? 1 : 0)
  const start = 8
  // A pointer's value lies in its entry: it adds twelve bytes.
  const exifAt = start + directory(first, start).length + 12 * pointers
  const gpsAt = exifAt + (exif.length > 0 ? directory(exif, exifAt).length : 0)
  const all: readonly Entry[] = [
    ...first,
    ...(exif.length > 0 ? [{ tag: 0x8769, type: LONG, bytes: long(exifAt) } as const] : []),
    ...(gps.length > 0 ? [{ tag: 0x8825, type: LONG, bytes: long(gpsAt) } as const] : []),
  ]
  return [
    ...[0x4d, 0x4d, 0, 42, 0, 0, 0, start],
    ...directory(all, start),
    ...(exif.length > 0 ? directory(exif, exifAt) : []),
    ...(gps.length > 0 ? directory(gps, gpsAt) : []),
  ]
}

/** A directory that begins at `at`: entries in the order of their tags, then what is longer than four bytes, at even places. */
function directory(entries: readonly Entry[], at: number): readonly number[] {
  const heads: number[] = [...short(entries.length)]
  const bodies: number[] = []
  const bodiesAt = at + 2 + 12 * entries.length + 4
  for (const { tag, type, bytes } of entries) {
    heads.push(...short(tag), ...short(type), ...long(bytes.length / SIZE[type]))
    if (bytes.length <= 4) heads.push(...bytes, ...Array<number>(4 - bytes.length).fill(0))
    else {
      heads.push(...long(bodiesAt + bodies.length))
      bodies.push(...bytes)
      if (bodies.length % 2 === 1) bodies.push(0)
    }
  }
  return [...heads, ...long(0), ...bodies]
}

/** Marker, length, and `Exif`. */
function app1(block: readonly number[]): Uint8Array {
  const inside = [...ascii('Exif'), 0, ...block]
  return Uint8Array.from([0xff, 0xe1, ...short(inside.length + 2), ...inside])
}
