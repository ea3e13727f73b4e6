/** Somebody of the demonstration. All of them are invented. */
export interface Person {
  readonly name: string
  readonly email: string
}

const person = (name: string, firm: string): Person => ({
  name,
  email: `${name.toLowerCase().replaceAll(' ', '.')}@${firm}.example`,
})

/** Everybody, in the order in which the sign-in page offers them. */
export const cast: readonly Person[] = [
  person('Mara Ellwood', 'tarnlane'),
  person('Tobin Ashby', 'tarnlane'),
  person('Sil Harker', 'tarnlane'),
  person('Jory Wenlock', 'bexwater'),
  person('Wyn Pardoe', 'bexwater'),
  person('Sorrel Penn', 'thistleandwelt'),
  person('Ada Rusk', 'northgate'),
  person('Nell Osgood', 'ferrierglass'),
  person('Ivo Quill', 'quillelectrical'),
  person('Odile Marsh', 'coldbrook'),
  person('Ines Halloran', 'owner'),
  person('Piers Aldous', 'owner'),
  person('Greta Moss', 'owner'),
  person('Una Low', 'brackandlow'),
]

/** A shop of the demonstration with its book: the first person opens it and manages it, the others are its hands. */
export interface Firm {
  readonly key: string
  readonly name: string
  readonly people: readonly string[]
  readonly bays: readonly (readonly [name: string, type: string])[]
  readonly taxRegistered: boolean
}

/** The shops that keep a book here. Hob Lane Blasting has none: what it says comes by telephone. */
export const firms: readonly Firm[] = [
  {
    key: 'tarn',
    name: 'Tarn Lane Coachworks',
    people: ['Mara Ellwood', 'Tobin Ashby', 'Sil Harker'],
    bays: [
      ['Booth', 'booth'],
      ['Bay 1', 'floor'],
      ['Bay 2', 'lift'],
      ['Metal bay', 'metal bay'],
      ['Wax bay', 'wax bay'],
    ],
    taxRegistered: true,
  },
  {
    key: 'bexwater',
    name: 'Bexwater Engines',
    people: ['Jory Wenlock', 'Wyn Pardoe'],
    bays: [
      ['Run cell', 'run cell'],
      ['Bench 1', 'bench'],
      ['Bench 2', 'bench'],
    ],
    taxRegistered: true,
  },
  {
    key: 'thistle',
    name: 'Thistle & Welt',
    people: ['Sorrel Penn'],
    bays: [['Trim bay', 'trim bay']],
    taxRegistered: true,
  },
  {
    key: 'northgate',
    name: 'Northgate Plating',
    people: ['Ada Rusk'],
    bays: [['Polishing shop', 'bench']],
    taxRegistered: true,
  },
  {
    key: 'ferrier',
    name: 'Ferrier Glass',
    people: ['Nell Osgood'],
    bays: [['Fitting bay', 'floor']],
    taxRegistered: true,
  },
  {
    key: 'quill',
    name: 'Quill Electrical',
    people: ['Ivo Quill'],
    bays: [['Wiring bay', 'floor']],
    taxRegistered: true,
  },
  {
    key: 'coldbrook',
    name: 'Coldbrook Inspection',
    people: ['Odile Marsh'],
    bays: [['Inspection lane', 'lift']],
    taxRegistered: false,
  },
]
