import type { CommandName } from '../../lib/record/command-names.ts'
import type { Json } from '../../lib/record/condition.ts'
import type { Party } from '../../lib/record/entities/people.ts'
import type { ProjectRecord, ShopRecord } from '../../lib/record/project-record.ts'
import type { Instant } from '../../lib/record/scalars.ts'
import { all, type Table } from '../../lib/record/table.ts'
import type { Dice } from './dice.ts'
import type { World } from './world.ts'

/** What somebody stands before when they press: the records, the time, and the dice that decide what they want. */
export interface Scene {
  readonly world: World
  readonly record: ProjectRecord
  readonly book: ShopRecord
  readonly dice: Dice
  readonly now: Instant
  readonly happenedAt: Instant
}

export type Input = { readonly [field: string]: Json }
/** A plausible input of a command, or undefined where there is nothing to press it on. */
export type InputOf = (scene: Scene) => Input | undefined
export type Inputs<Name extends CommandName = CommandName> = { readonly [N in Name]: InputOf }

/** What somebody wants to press; who they are is chosen afterwards. */
export interface Wish {
  readonly name: CommandName
  readonly input: Input
}

/** One row of a table: mostly one that suits, or none where none does; now and then any. */
export function oneOf<T>(
  { dice }: Scene,
  table: Table<T>,
  suits: (row: T) => boolean = () => true,
): T | undefined {
  const rows = all(table)
  const suiting = rows.filter(suits)
  return dice.chance(6) ? dice.of(rows) : dice.of(suiting)
}

export const aParty = (scene: Scene, suits: (party: Party) => boolean): Party | undefined =>
  oneOf(scene, scene.record.parties, (party) => party.leftAt === null && suits(party))

/** A shop, mostly one whose people press for themselves. */
export const aShopParty = (scene: Scene): Party | undefined =>
  aParty(scene, ({ role, shop }) => role === 'shop' && (shop !== null || scene.dice.chance(20)))

/** A name that is mostly new. */
export const aName = ({ dice }: Scene, what: string): string => `${what} ${dice.below(5000)}`

/** Said now and then. */
export const perhaps = (scene: Scene, percent: number, said: Input): Input =>
  scene.dice.chance(percent) ? said : {}

/** Where nobody of a party can press for themselves, the lead says what they told by phone. */
export function toldFor(scene: Scene, party: string): Input {
  const known = scene.record.parties.rows.get(party)
  const silent = known !== undefined && known.role === 'shop' && known.shop === null
  return scene.dice.chance(silent ? 90 : 3) ? { told: party } : {}
}
