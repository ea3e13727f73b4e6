import type { Actor } from '../../lib/record/actor.ts'
import type { CommandName } from '../../lib/record/command-names.ts'
import type { Json } from '../../lib/record/condition.ts'
import { ShopId } from '../../lib/record/ids.ts'
import { at } from '../builders.ts'
import { actorsIn, person, stranger } from './cast.ts'
import { emptyWorld, play, type World } from './world.ts'

type Input = { readonly [field: string]: Json }

/** Three shops, one of them of one hand, and two projects that two of them lead; all by commands. */
function found(): World {
  let world = emptyWorld(at(0))

  function press(record: string, actor: Actor, name: CommandName, input: Input): string {
    const { now } = world
    const played = play(world, { record, name, input, actor, now, happenedAt: now })
    const [first] = played.entities
    if (first === undefined) throw new Error(`${name}: ${JSON.stringify(played.outcome)}`)
    world = played.after
    return first.id
  }

  function shop(name: string, manager: string, hands: string[], bays: string[]): string {
    const who = { ...stranger, person: person(manager) }
    const id = press('', who, 'shop.create', {
      name,
      currency: 'GBP',
      timeZone: 'Europe/London',
      taxRegistered: true,
      taxRate: 2000,
    })
    const inBook = { ...who, shop: ShopId.parse(id) }
    for (const hand of hands)
      press(id, inBook, 'membership.add', { person: person(hand), role: 'hand' })
    for (const bay of bays) press(id, inBook, 'bay.add', { name: bay, type: 'floor' })
    return id
  }

  function project(name: string, owner: string, lead: string, manager: string): string {
    const who = { ...stranger, person: person(manager), shop: ShopId.parse(lead) }
    return press('', who, 'project.create', { shop: lead, name, owner })
  }

  /** By the manager who leads that project. */
  function led(record: string, manager: string, name: CommandName, input: Input): string {
    const project = world.projects.get(record)
    const actor = project && actorsIn(world, project).find((one) => one.person === person(manager))
    if (actor === undefined) throw new Error(`${manager} has no part in ${record}.`)
    return press(record, actor, name, input)
  }

  const body = shop('Tarn Lane Coachworks', 'mara', ['tobin', 'sil'], ['Booth', 'Bay 2'])
  const engines = shop('Bexwater Engines', 'jory', ['wyn'], ['Bench 1'])
  const trim = shop('Thistle & Welt', 'sorrel', [], ['Trim bay'])

  const averley = project('Averley', 'Ines Halloran', body, 'mara')
  const party = (name: string, role: string, over: Input = {}) =>
    led(averley, 'mara', 'party.add', { name, role, ...over })
  party('Bexwater Engines', 'shop', { shop: engines })
  party('Thistle & Welt', 'shop', { shop: trim, bills: 'lead' })
  party('Hob Lane Blasting', 'shop')
  const glass = party('Ferrier Glass', 'supplier')
  const insurer = party('Brack & Low', 'observer')
  const owner = [...(world.projects.get(averley)?.parties.rows.values() ?? [])].find(
    ({ role }) => role === 'owner',
  )
  const joins = { ines: owner?.id ?? '', nell: glass, una: insurer }
  for (const [name, id] of Object.entries(joins))
    led(averley, 'mara', 'participant.add', { party: id, person: person(name) })

  // Another car of the same shops, so that they have to share their bays.
  const corrie = project('Corrie', 'Greta Moss', engines, 'jory')
  const other = led(corrie, 'jory', 'party.add', { name: 'Tarn Lane', role: 'shop', shop: body })
  led(corrie, 'jory', 'assembly.add', { name: 'Van', custodian: other })
  return world
}

/** Where every run begins. */
export const founded: World = found()
