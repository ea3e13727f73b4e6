import fc from 'fast-check'
import { projectCommands } from '../lib/command/registry.ts'
import type { Actor } from '../lib/record/actor.ts'
import { entitiesOf } from '../lib/record/any-entity.ts'
import type { ProjectCommand } from '../lib/record/command.ts'
import type { Json } from '../lib/record/condition.ts'
import type { Entity } from '../lib/record/entity.ts'
import type { ShopId } from '../lib/record/ids.ts'
import {
  emptyShopRecord,
  type ProjectRecord,
  type ShopRecord,
  shopAfter,
} from '../lib/record/project-record.ts'
import { Sha256 } from '../lib/record/scalars.ts'
import { anId, aRecord, at, leadShop } from './builders.ts'
import { cast, personOf } from './see-cast.ts'
import { samples, views } from './see-samples.ts'
import { drawFrom, someInput } from './some-input.ts'

export const commands: readonly ProjectCommand[] = Object.values(projectCommands)

const shopOf: { readonly [name: string]: ShopId } = {
  lead: leadShop,
  'lead hand': leadShop,
  engines: anId('shp', 'engines'),
  'engines hand': anId('shp', 'engines'),
  trim: anId('shp', 'trim'),
}
export const actors: readonly Actor[] = Object.entries(personOf).map(([name, person]) => ({
  person,
  ...views[name === 'guest' ? 'owner' : asColumn(name)],
  shop: shopOf[name] ?? null,
  proof: 'password',
  provedAt: at(100),
}))
function asColumn(name: string): Exclude<keyof typeof views, 'guest'> {
  const column = Object.keys(personOf).find(
    (known): known is keyof typeof personOf => known === name,
  )
  return column ?? 'owner'
}

export const everything: readonly Entity[] = [...Object.values(samples), ...cast]
export const beginning = aRecord(
  everything.filter(({ kind }) => !['shop', 'membership', 'bay'].includes(kind)),
)
export const books: ReadonlyMap<ShopId, ShopRecord> = new Map(
  [leadShop, anId('shp', 'engines'), anId('shp', 'trim')].map((id) => {
    const own = everything.filter((entity) =>
      entity.kind === 'shop' ? entity.id === id : 'shop' in entity && entity.shop === id,
    )
    return [id, shopAfter(emptyShopRecord(id), { version: 1, entities: own })]
  }),
)
export const files = new Set(
  Array.from({ length: 10 }, (_, n) => Sha256.parse(String(n).repeat(64))),
)

export interface Press {
  readonly command: number
  readonly actor: number
  readonly numbers: readonly number[]
}

export const press: fc.Arbitrary<Press> = fc.record({
  command: fc.nat({ max: 10_000 }),
  actor: fc.nat({ max: 10_000 }),
  numbers: fc.array(fc.nat({ max: 10_000 }), { minLength: 4, maxLength: 24 }),
})

/** Which button somebody presses on a record, and with what in its fields. */
export function pressOn(record: ProjectRecord, { command: nth, actor: who, numbers }: Press) {
  const command = commands[nth % commands.length]
  const actor = actors[who % actors.length]
  if (command === undefined || actor?.party == null) throw new Error('Nobody presses.')
  const ids = [...everything, ...entitiesOf(record)].map(({ id }) => id)
  const drawn = [...ids, ...Object.values(personOf)]
  const input: Json = someInput(command.input, drawn, drawFrom(numbers))
  return { command, actor, party: actor.party, input }
}
