import type { Assembly, Handover } from '../../lib/record/entities/things.ts'
import { all } from '../../lib/record/table.ts'
import {
  aName,
  aParty,
  aShopParty,
  type Input,
  type Inputs,
  oneOf,
  perhaps,
  type Scene,
  toldFor,
} from './scene.ts'
import { arrivedFiles, hoursFrom } from './world.ts'

const reason = { reason: 'it was so' }

const anAssembly = (scene: Scene, suits: (assembly: Assembly) => boolean = () => true) =>
  oneOf(scene, scene.record.assemblies, suits)

const aHandover = (scene: Scene, ...states: Handover['state'][]) =>
  oneOf(scene, scene.record.handovers, ({ state }) => states.some((one) => one === state))

/** Some hours in which something may be wanted: now, soon, or in the days to come. */
function aSpan({ dice, now }: Scene): { readonly from: string; readonly to: string } {
  const hour = `${now.slice(0, 13)}:00:00.000Z`
  const offset = dice.chance(50) ? -1 : dice.below(200) - 20
  const from = new Date(Date.parse(hour) + offset * 3_600_000).toISOString()
  const hours = dice.chance(3) ? -2 : 4 + dice.below(90)
  return { from, to: new Date(Date.parse(from) + hours * 3_600_000).toISOString() }
}

/** A bay, mostly of a shop that takes part. */
function aBay({ world, dice }: Scene, ofShop: string | null) {
  const books = [...world.books.values()]
  const own = books.filter(({ id }) => id === ofShop)
  const book = own.length > 0 && dice.chance(92) ? own[0] : dice.of(books)
  const bay = book && dice.of(all(book.bays))
  return book && bay && { shop: book.id, bay: bay.id }
}

function slotClaim(scene: Scene): Input | undefined {
  const { record, dice } = scene
  const window = dice.chance(40)
    ? dice.of(all(record.openWindows).filter(({ closedAt }) => closedAt === null))
    : undefined
  const waiting = all(record.stages).filter((one) => one.needsBay && one.removedAt === null)
  const stage = record.stages.rows.size === 1 || dice.chance(60) ? dice.of(waiting) : undefined
  const assembly = stage?.assemblies[0] ?? window?.assembly ?? anAssembly(scene)?.id
  const party = record.parties.rows.get(stage?.party ?? '') ?? aShopParty(scene)
  const place = aBay(scene, party?.shop ?? null)
  if (assembly === undefined || place === undefined) return undefined
  return {
    assembly,
    ...place,
    ...(window !== undefined && window.bay !== null && { bay: window.bay, shop: leadShop(scene) }),
    ...aSpan(scene),
    ...(stage !== undefined && { stage: stage.id }),
    ...(party !== undefined && party.shop === null && { told: party.id }),
  }
}

const leadShop = ({ record }: Scene): string =>
  all(record.parties).find(({ lead }) => lead)?.shop ?? ''

function receipt({ dice }: Scene, handover: Handover): Input {
  const outcome = dice.of(['accepted', 'accepted', 'accepted with remarks', 'refused']) ?? ''
  return {
    outcome,
    ...(outcome !== 'accepted' && { remarks: 'One is pitted.' }),
    ...(handover.pieces !== null && {
      pieces: dice.chance(80) ? handover.pieces : dice.below(20),
    }),
  }
}

/** Inputs of what moves things: assemblies, handovers, parts, slots. */
export const thingInputs: Inputs<
  | 'assembly.add'
  | 'assembly.describe'
  | 'assembly.fit'
  | 'assembly.takeOff'
  | 'handover.prepare'
  | 'handover.release'
  | 'handover.takeBack'
  | 'handover.receive'
  | 'part.want'
  | 'part.order'
  | 'part.promise'
  | 'part.arrive'
  | 'part.inspect'
  | 'part.withdraw'
  | 'window.open'
  | 'window.close'
  | 'slot.claim'
  | 'slot.agree'
  | 'slot.release'
> = {
  'assembly.add': (scene) => {
    // Most of the car stands at the lead's.
    const leading = all(scene.record.parties).find(({ lead }) => lead)
    const custodian = scene.dice.chance(60) ? leading : aShopParty(scene)
    return (
      custodian && {
        name: aName(scene, 'Assembly'),
        custodian: custodian.id,
        ...perhaps(scene, 25, { pieces: 14 }),
      }
    )
  },
  'assembly.describe': (scene) => {
    const assembly = anAssembly(scene)
    return assembly && { assembly: assembly.id, pieces: 1 + scene.dice.below(4) }
  },
  'assembly.fit': (scene) => {
    const assembly = anAssembly(
      scene,
      ({ id, host, custodian }) =>
        host === null &&
        all(scene.record.assemblies).some((on) => on.custodian === custodian && on.id !== id),
    )
    const host = anAssembly(
      scene,
      ({ id, custodian }) => custodian === assembly?.custodian && id !== assembly.id,
    )
    return assembly && host && { assembly: assembly.id, host: host.id, ...reason }
  },
  'assembly.takeOff': (scene) => {
    const assembly = anAssembly(scene, ({ host }) => host !== null)
    return assembly && { assembly: assembly.id, ...reason }
  },
  'handover.prepare': (scene) => {
    const coming = all(scene.record.handovers)
      .filter(({ state }) => state === 'prepared' || state === 'released')
      .flatMap(({ assemblies }) => assemblies)
    const first = anAssembly(scene, ({ id, host }) => host === null && !coming.includes(id))
    const to = aParty(scene, ({ id, role }) => id !== first?.custodian && role !== 'observer')
    if (first === undefined || to === undefined) return undefined
    const more = all(scene.record.assemblies)
      .filter(({ custodian, id }) => custodian === first.custodian && id !== first.id)
      .map(({ id }) => id)
    return {
      assemblies: [first.id, ...(scene.dice.chance(30) ? scene.dice.some(more, 2) : [])],
      to: to.id,
      ...perhaps(scene, 30, { condition: 'As it came.', files: [...arrivedFiles] }),
      ...toldFor(scene, first.custodian),
    }
  },
  'handover.release': (scene) => {
    const handover = aHandover(scene, 'prepared')
    return handover && { handover: handover.id, ...toldFor(scene, handover.from) }
  },
  'handover.takeBack': (scene) => {
    const handover = aHandover(scene, 'prepared', 'released')
    return handover && { handover: handover.id, ...reason }
  },
  'handover.receive': (scene) => {
    const handover = aHandover(scene, 'released')
    if (handover === undefined) return undefined
    const guest = scene.dice.chance(15)
    return {
      handover: handover.id,
      ...receipt(scene, handover),
      ...(guest
        ? { receivedByName: 'Pat at the door', signature: 'M0 0 L5 5 L9 2 L12 7' }
        : toldFor(scene, handover.to)),
    }
  },
  'part.want': (scene) => {
    const party = aShopParty(scene)
    const supplier = aParty(scene, ({ role }) => role === 'supplier')
    const stages = all(scene.record.stages).filter(({ removedAt }) => removedAt === null)
    return (
      party && {
        party: party.id,
        name: aName(scene, 'Part'),
        ...(supplier !== undefined && perhaps(scene, 50, { supplier: supplier.id })),
        stages: scene.dice.some(stages, 2).map(({ id }) => id),
      }
    )
  },
  'part.order': (scene) => {
    const part = oneOf(scene, scene.record.parts, ({ state }) => state === 'wanted')
    return (
      part && {
        part: part.id,
        ...perhaps(scene, 50, { promised: '2026-04-01' }),
        ...perhaps(scene, 20, { price: scene.dice.below(100_000) }),
        ...toldFor(scene, part.party),
      }
    )
  },
  'part.promise': (scene) => {
    const part = oneOf(scene, scene.record.parts, ({ state }) => state === 'ordered')
    return part && { part: part.id, date: '2026-05-04', ...toldFor(scene, part.party) }
  },
  'part.arrive': (scene) => {
    const part = oneOf(scene, scene.record.parts, ({ state }) => state === 'ordered')
    return part && { part: part.id, ...toldFor(scene, part.party) }
  },
  'part.inspect': (scene) => {
    const part = oneOf(scene, scene.record.parts, ({ state }) => state === 'arrived')
    const passed = scene.dice.chance(80)
    return (
      part && {
        part: part.id,
        outcome: passed ? 'passed' : 'rejected',
        ...(!passed && { remark: 'cracked' }),
      }
    )
  },
  'part.withdraw': (scene) => {
    const part = oneOf(scene, scene.record.parts)
    return part && { part: part.id, ...reason }
  },
  'window.open': (scene) => {
    const assembly = anAssembly(scene)
    const place = aBay(scene, leadShop(scene))
    const { from } = aSpan(scene)
    return (
      assembly && {
        assembly: assembly.id,
        from,
        to: hoursFrom(scene.now, 100 + scene.dice.below(300)),
        ...(place?.shop === leadShop(scene) && perhaps(scene, 70, { bay: place.bay })),
      }
    )
  },
  'window.close': (scene) => {
    const window = oneOf(scene, scene.record.openWindows, ({ closedAt }) => closedAt === null)
    return window && { window: window.id }
  },
  'slot.claim': slotClaim,
  'slot.agree': (scene) => {
    const slot = oneOf(scene, scene.record.slots, ({ state }) => state === 'asked')
    return slot && { slot: slot.id }
  },
  'slot.release': (scene) => {
    const slot = oneOf(scene, scene.record.slots, ({ state }) => state !== 'released')
    return slot && { slot: slot.id, ...reason }
  },
}
