import { crc32, deflateSync } from 'node:zlib'

const WIDTH = 480
const HEIGHT = 320

type Colour = readonly [red: number, green: number, blue: number]
/** Something that covers a point or doesn't, in the picture's own colour. */
interface Shape {
  readonly colour: Colour
  readonly covers: (x: number, y: number) => boolean
}

const box = (colour: Colour, x: number, y: number, wide: number, high: number): Shape => ({
  colour,
  covers: (px, py) => px >= x && px < x + wide && py >= y && py < y + high,
})
const disc = (colour: Colour, x: number, y: number, radius: number): Shape => ({
  colour,
  covers: (px, py) => (px - x) ** 2 + (py - y) ** 2 < radius ** 2,
})

const FLOOR: Colour = [92, 94, 92]
const WALL: Colour = [176, 174, 166]
const STEEL: Colour = [138, 142, 146]
const RUST: Colour = [122, 72, 48]
const IVORY: Colour = [231, 222, 196]
const EPOXY: Colour = [104, 112, 108]
const OXBLOOD: Colour = [96, 30, 32]
const BLACK: Colour = [34, 34, 36]
const CHROME: Colour = [206, 212, 216]
const GREEN: Colour = [62, 88, 74]

/** A saloon from the side. */
const body = (colour: Colour, wheels: boolean): Shape[] => [
  box(colour, 60, 170, 360, 66),
  box(colour, 150, 108, 180, 70),
  box(WALL, 166, 122, 70, 44),
  box(WALL, 246, 122, 70, 44),
  ...(wheels ? [disc(BLACK, 130, 240, 36), disc(BLACK, 350, 240, 36)] : []),
  ...(wheels ? [disc(CHROME, 130, 240, 16), disc(CHROME, 350, 240, 16)] : []),
]

const engine: Shape[] = [
  box(GREEN, 120, 130, 220, 110),
  box(STEEL, 120, 104, 220, 28),
  ...[0, 1, 2, 3, 4, 5].map((i) => disc(BLACK, 142 + i * 35, 118, 8)),
  disc(STEEL, 108, 190, 34),
  box(STEEL, 340, 140, 60, 90),
]
const gauge: Shape[] = [
  disc(CHROME, 240, 160, 112),
  disc([244, 242, 234], 240, 160, 100),
  ...[0, 1, 2, 3, 4, 5, 6].map((i) =>
    disc(BLACK, 240 - 82 * Math.cos((i * Math.PI) / 6), 170 - 82 * Math.sin((i * Math.PI) / 6), 5),
  ),
  {
    colour: RUST,
    covers: (x, y) => Math.abs((x - 240) * 1.1 + (y - 160)) < 5 && x > 236 && y < 164,
  },
  disc(BLACK, 240, 160, 12),
]
const hide: Shape[] = [0, 1, 2, 3, 4, 5, 6].map((i) => box(OXBLOOD, 70 + i * 50, 60, 44, 210))
const pieces: Shape[] = [
  box(CHROME, 60, 90, 360, 22),
  box(CHROME, 60, 140, 260, 12),
  ...[0, 1, 2, 3, 4].map((i) => disc(CHROME, 96 + i * 72, 220, 28)),
  ...[0, 1, 2, 3, 4].map((i) => disc(WALL, 96 + i * 72, 220, 18)),
]
const welds: Shape[] = [
  box(STEEL, 40, 60, 400, 200),
  box(RUST, 40, 180, 120, 80),
  ...Array.from({ length: 18 }, (_, i) => disc(BLACK, 60 + i * 21, 160, 6)),
]

/** What a drawing shows, by the group of the stage. */
const shown: { readonly [group: string]: readonly Shape[] } = {
  arrival: body(RUST, true),
  strip: body(RUST, false),
  blast: body(STEEL, false),
  metal: welds,
  epoxy: body(EPOXY, false),
  highbuild: body(WALL, false),
  colour: body(IVORY, false),
  lacquer: body(IVORY, false),
  engine,
  gearbox: engine,
  axle: gauge,
  plating: pieces,
  trim_bench: hide,
}
const painted = new Map<string, Uint8Array>()

/** A small drawing in place of a photo, drawn in code: the demonstration photographs nothing that doesn't exist. */
export function picture(group: string): Uint8Array {
  const shapes = shown[group] ?? body(IVORY, true)
  const before = painted.get(group)
  if (before !== undefined) return before
  const png = paint([box(WALL, 0, 0, WIDTH, 250), ...shapes])
  painted.set(group, png)
  return png
}

/** A PNG of eight-bit colour (RFC 2083): later shapes lie over earlier ones. */
function paint(shapes: readonly Shape[]): Uint8Array {
  const above = shapes.toReversed()
  const rows = Buffer.alloc(HEIGHT * (WIDTH * 3 + 1))
  for (let y = 0; y < HEIGHT; y++) {
    for (let x = 0; x < WIDTH; x++) {
      const colour = above.find(({ covers }) => covers(x, y))?.colour ?? FLOOR
      rows.set(colour, y * (WIDTH * 3 + 1) + 1 + x * 3)
    }
  }
  const head = Buffer.alloc(13)
  head.writeUInt32BE(WIDTH, 0)
  head.writeUInt32BE(HEIGHT, 4)
  head.set([8, 2, 0, 0, 0], 8)
  return Buffer.concat([
    Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a),
    chunk('IHDR', head),
    chunk('IDAT', deflateSync(rows, { level: 9 })),
    chunk('IEND', Buffer.alloc(0)),
  ])
}

function chunk(type: string, data: Uint8Array): Buffer {
  const named = Buffer.concat([Buffer.from(type, 'latin1'), data])
  const length = Buffer.alloc(4)
  length.writeUInt32BE(data.length)
  const check = Buffer.alloc(4)
  check.writeUInt32BE(crc32(named))
  return Buffer.concat([length, named, check])
}
