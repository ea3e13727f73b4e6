import { shopCommands } from '../../lib/command/set-up-commands.ts'
import type { Actor } from '../../lib/record/actor.ts'
import type { Instant } from '../../lib/record/scalars.ts'
import { actorsIn, actorsInBook, guestFor } from './cast.ts'
import { type Dice, diceOf } from './dice.ts'
import { founded } from './founding.ts'
import { hashShown } from './inputs-money.ts'
import type { Scene, Wish } from './scene.ts'
import { anyWish, nextWish } from './wishes.ts'
import { hoursFrom, mayPress, type Played, type Press, play, type World } from './world.ts'

/** Presses with which a run sets its build order up, before the work begins. */
const SET_UP = 36
const TRIES = 6

/** Plays a run from the founding on, one press for each seed, and looks at each. */
export function playRun(seeds: readonly number[], look: (played: Played) => void): World {
  return seeds.reduce((world, seed, i) => {
    const played = pressOnce(world, diceOf(seed), i < SET_UP ? 'setUp' : 'work')
    if (played === undefined) return world
    look(played)
    return played.after
  }, founded)
}

function pressOnce(world: World, dice: Dice, phase: 'setUp' | 'work'): Played | undefined {
  const scene = sceneOf(world, dice, phase)
  if (scene === undefined) return undefined
  for (let i = 0; i < TRIES; i++) {
    const wish = phase === 'work' && dice.chance(55) ? nextWish(scene) : anyWish(scene, phase)
    const press = wish && pressOf(scene, wish)
    if (press !== undefined) return play(world, press)
  }
  return undefined
}

/** Time goes on by minutes, hours or days; now and then a phone sends late. */
function sceneOf(world: World, dice: Dice, phase: 'setUp' | 'work'): Scene | undefined {
  const hours = phase === 'setUp' ? 0.1 : (dice.of([0.1, 0.5, 1, 2, 5, 9, 20, 50]) ?? 1)
  const now = hoursFrom(world.now, hours)
  const happenedAt = dice.chance(15) ? hoursFrom(now, -dice.below(300) / 60) : now
  const projects = [...world.projects.values()]
  const record = dice.chance(88) ? projects[0] : dice.of(projects)
  const book = dice.of([...world.books.values()])
  return record && book && { world, record, book, dice, now, happenedAt }
}

const isShopCommand = (name: string): boolean => name in shopCommands

function pressOf(scene: Scene, wish: Wish): Press | undefined {
  const { world, record, book, dice, now, happenedAt } = scene
  const makes = wish.name === 'project.create' || wish.name === 'shop.create'
  const inBook = isShopCommand(wish.name) || makes
  const home = makes ? '' : inBook ? book.id : record.id
  const actors = inBook ? actorsInBook(book) : actorsIn(world, record)
  const press = (actor: Actor): Press => {
    const proved: Actor = { ...actor, provedAt: proof(dice, now) }
    return { record: home, ...withHash(scene, wish, proved), actor: proved, now, happenedAt }
  }
  const guest = wish.input.receivedByName !== undefined
  if (guest) {
    const handover = record.handovers.rows.get(String(wish.input.handover))
    return handover && press(guestFor(handover.to))
  }
  const shuffled = dice.shuffled(actors)
  const able = dice.chance(10) ? undefined : shuffled.find((actor) => mayPress(world, press(actor)))
  const actor = able ?? shuffled[0]
  return actor && press(actor)
}

const proof = (dice: Dice, now: Instant): Instant | null =>
  dice.chance(90) ? hoursFrom(now, -0.1) : dice.chance(50) ? hoursFrom(now, -1) : null

/** A yes carries the hash of what its giver saw; now and then of what has changed since. */
function withHash(scene: Scene, { name, input }: Wish, actor: Actor): Wish {
  if (name !== 'changeOrder.approve' || scene.dice.chance(5)) return { name, input }
  const order = scene.record.changeOrders.rows.get(String(input.changeOrder))
  if (order === undefined) return { name, input }
  return { name, input: { ...input, shownHash: hashShown(scene, order, actor) } }
}
