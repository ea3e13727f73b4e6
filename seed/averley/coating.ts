import { all } from '../../lib/record/table.ts'
import type { Car } from '../car.ts'
import { known, type Press, type Scene, type Yard } from '../yard.ts'

const SIL = 'Sil Harker'
const MARA = 'Mara Ellwood'
const INES = 'Ines Halloran'

const IVORY = 'Ivory'
const BATCH = 'AV-61/1'
/** A panel that was made up later and is behind its shell: primed and in colour, and past the colour's window. */
export const FLAP = 'Fuel filler flap'
export const FLAP_LACQUER = 'Lacquer on the fuel filler flap'

interface Laid {
  readonly stage: string
  readonly entered: string
  readonly ended: string
  readonly product: string
  readonly coats: number
  readonly batch?: string
  readonly ratio?: string
  readonly keyedWith?: string
  readonly colour?: boolean
}

/** What lies on the shell, from the metal outwards. */
const onShell: readonly Laid[] = [
  {
    stage: 'bl.hold',
    entered: '-31 Wed 17:20',
    ended: '-31 Wed 16:30',
    product: 'epoxy',
    coats: 1,
    batch: 'E 2204',
    ratio: '1 : 1',
  },
  {
    stage: 'ep.shell',
    entered: '-17 Mon 17:20',
    ended: '-17 Mon 16:30',
    product: 'epoxy',
    coats: 2,
    batch: 'E 2271',
    ratio: '1 : 1',
    keyedWith: '320 grit, by machine',
  },
  {
    stage: 'ep.seam',
    entered: '-17 Wed 16:20',
    ended: '-17 Wed 15:30',
    product: 'seam sealer',
    coats: 1,
  },
  {
    stage: 'fil.shell',
    entered: '-16 Tue 16:20',
    ended: '-16 Tue 14:00',
    product: 'filler',
    coats: 3,
    batch: 'F 118',
    keyedWith: '80 grit, by hand',
  },
  {
    stage: 'hb.shell',
    entered: '-16 Wed 16:20',
    ended: '-16 Wed 15:00',
    product: 'sprayed polyester',
    coats: 3,
    batch: 'P 730',
    ratio: '100 : 5',
  },
  {
    stage: 'seal.shell',
    entered: '-11 Mon 14:20',
    ended: '-11 Mon 13:30',
    product: 'isolator',
    coats: 1,
    batch: 'S 052',
    ratio: '4 : 1',
    keyedWith: '500 grit, wet',
  },
  {
    stage: 'col.shell',
    entered: '-11 Wed 12:20',
    ended: '-11 Wed 11:30',
    product: 'colour',
    coats: 3,
    batch: BATCH,
    ratio: '2 : 1',
    colour: true,
  },
  {
    stage: 'lac.shell',
    entered: '-11 Thu 10:20',
    ended: '-11 Thu 9:30',
    product: 'lacquer',
    coats: 3,
    batch: 'L 907',
    ratio: '2 : 1',
  },
]

/** The film as it grew: when, and at which panels and points of the shell, in µm. */
const films: readonly (readonly [when: string, readonly (readonly [string, string, number])[]])[] =
  [
    [
      '-30 Mon 8:20',
      [
        ['Roof', '1', 34],
        ['Roof', '2', 36],
      ],
    ],
    [
      '-17 Tue 8:20',
      [
        ['Roof', '1', 71],
        ['Roof', '2', 74],
      ],
    ],
    [
      '-12 Thu 15:30',
      [
        ['Roof', '1', 148],
        ['Roof', '2', 155],
        ['Left rear wing', '1', 231],
        ['Right rear wing', '1', 187],
      ],
    ],
    [
      '-11 Mon 15:30',
      [
        ['Roof', '1', 181],
        ['Roof', '2', 186],
        ['Left rear wing', '1', 262],
        ['Right rear wing', '1', 219],
      ],
    ],
    [
      '-11 Wed 12:45',
      [
        ['Roof', '1', 228],
        ['Roof', '2', 236],
        ['Left rear wing', '1', 311],
        ['Right rear wing', '1', 264],
      ],
    ],
    [
      '-10 Mon 8:10',
      [
        ['Roof', '1', 292],
        ['Roof', '2', 297],
        ['Left rear wing', '1', 378],
        ['Right rear wing', '1', 330],
      ],
    ],
    [
      '-8 Wed 16:30',
      [
        ['Roof', '1', 274],
        ['Roof', '2', 281],
        ['Left rear wing', '1', 361],
        ['Right rear wing', '1', 309],
      ],
    ],
  ]

/** The coating record: the colour as it was mixed, the shell's stack with its film, and a flap that is behind it. */
export function coatingScenes(yard: Yard, car: Car): Scene[] {
  const { at } = yard.calendar
  const scene = (
    when: string,
    who: string,
    name: Press['name'],
    input: (yard: Yard) => Press['input'],
  ): Scene => ({
    at: at(when),
    play: (yard) => car.press(yard, { at: at(when), who, name, input: input(yard) }),
  })
  const idOf = (rows: readonly { readonly name: string; readonly id: string }[], name: string) =>
    known(new Map(rows.map((row) => [row.name, row.id])), name)
  const ivory = (yard: Yard) => idOf(all(car.record(yard).colours), IVORY)
  const flap = (yard: Yard) => idOf(all(car.record(yard).assemblies), FLAP)
  const onFlap = (
    when: string,
    said: (yard: Yard) => { readonly [field: string]: string | number },
  ) =>
    scene(when, SIL, 'coat.record', (yard) => ({
      assembly: flap(yard),
      endedAt: at(when),
      ...said(yard),
    }))
  return [
    scene('-16 Mon 10', SIL, 'colour.add', () => ({
      name: IVORY,
      variant: 'Warmer than the tin’s standard, to the sample under the rear seat',
      gun: 'Gun 2, 1.3 mm, 2 bar at the inlet, half overlap',
      tinters: [
        { name: 'White', grams: 812.4, batch: 'W 411' },
        { name: 'Yellow oxide', grams: 9.6, batch: 'Y 087' },
        { name: 'Raw umber', grams: 2.3, batch: 'U 019' },
        { name: 'Black', grams: 0.4, batch: 'K 233' },
        { name: 'Binder', grams: 375.3, batch: 'B 760' },
      ],
    })),
    scene('-16 Wed 10', INES, 'colour.cardAgreed', (yard) => ({ colour: ivory(yard) })),
    scene('-12 Fri 11:30', SIL, 'colour.describe', (yard) => ({
      colour: ivory(yard),
      batch: BATCH,
      keepsake: '250 ml, sealed, shelf 3 of the mixing room',
    })),
    ...onShell.map(({ stage, entered, ended, colour, ...laid }) =>
      scene(entered, SIL, 'coat.record', (yard) => ({
        assembly: car.assembly('shell'),
        stage: car.stage(stage),
        endedAt: at(ended),
        ...laid,
        ...(colour === true && { colour: ivory(yard) }),
      })),
    ),
    ...films.map(([when, read]) =>
      scene(when, SIL, 'film.record', () => ({
        assembly: car.assembly('shell'),
        metal: 'steel',
        method: 'magnetic',
        gauge: 'Gauge 1',
        zeroed: true,
        readings: read.map(([panel, point, microns]) => ({ panel, point, microns })),
      })),
    ),
    scene('-5 Mon 9', MARA, 'assembly.add', () => ({
      name: FLAP,
      custodian: car.party('tarn'),
    })),
    onFlap('-4 Mon 11', () => ({ product: 'epoxy', coats: 2, batch: 'E 2271', ratio: '1 : 1' })),
    onFlap('-4 Thu 11', () => ({
      product: 'isolator',
      coats: 1,
      batch: 'S 055',
      keyedWith: '500 grit, wet',
    })),
    onFlap('-4 Fri 11', (yard) => ({
      product: 'colour',
      coats: 3,
      batch: 'AV-61/2',
      ratio: '2 : 1',
      colour: ivory(yard),
    })),
    scene('-4 Fri 11:30', MARA, 'stage.add', (yard) => ({
      name: FLAP_LACQUER,
      party: car.party('tarn'),
      assemblies: [flap(yard)],
      lays: 'lacquer',
      hazards: ['isocyanate'],
      hoursLeast: 1,
      hoursLikely: 2,
      hoursMost: 3,
    })),
  ]
}
