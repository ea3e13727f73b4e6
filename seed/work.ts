import { all } from '../lib/record/table.ts'
import { plus } from './calendar.ts'
import { type Car, pointsNow } from './car.ts'
import { evidence } from './evidence.ts'
import { known, type Scene, type Yard } from './yard.ts'

/** Who works and who signs for each party, by its key. */
export type Crew = { readonly [party: string]: readonly [hand: string, manager: string] }

const crewOf = (crew: Crew, party: string): readonly [string, string] => {
  const found = crew[party]
  if (found === undefined) throw new Error(`nobody works for ${party}`)
  return found
}

/** Work that was done: when it began and ended (`-31 Mon 8 > -31 Tue 17`), and readings that are worth a word. */
export interface Done {
  readonly key: string
  readonly when: string
  /** Instead of the party's usual hand. */
  readonly hand?: string
  readonly readings?: { readonly [check: string]: number }
}

/** A stage from its start to its sign-off, with the evidence that it asks for. */
export function doneScenes(yard: Yard, car: Car, crew: Crew, done: Done): Scene[] {
  const [from = '', to = ''] = done.when.split(' > ')
  const [usual, manager] = crewOf(crew, car.stageSpec(done.key).party)
  const hand = done.hand ?? usual
  const began = yard.calendar.at(from)
  const over = yard.calendar.at(to)
  const stage = () => car.stage(done.key)
  return [
    startScene(car, done.key, began, hand),
    {
      at: plus(over, -15),
      play: (yard) => recordChecks(yard, car, done, hand, plus(over, -15)),
    },
    {
      at: over,
      play: (yard) =>
        car.press(yard, { at: over, who: hand, name: 'stage.end', input: { stage: stage() } }),
    },
    {
      at: plus(over, 10),
      play: (yard) =>
        car.press(yard, {
          at: plus(over, 10),
          who: manager,
          name: 'stage.signOff',
          input: { stage: stage() },
        }),
    },
  ]
}

/** A stage begins. */
export const startScene = (car: Car, key: string, at: Scene['at'], who: string): Scene => ({
  at,
  play: (yard) =>
    car.press(yard, { at, who, name: 'stage.start', input: { stage: car.stage(key) } }),
})

/** Every check of the stage that is still missing, but for those named in `leave`. */
export async function recordChecks(
  yard: Yard,
  car: Car,
  { key, readings = {} }: Pick<Done, 'key' | 'readings'>,
  who: string,
  at: Scene['at'],
  { told, leave = [] }: { readonly told?: string; readonly leave?: readonly string[] } = {},
): Promise<void> {
  const checks = all(car.record(yard).checks).filter(
    (check) =>
      check.stage === car.stage(key) && check.state === 'missing' && !leave.includes(check.name),
  )
  for (const check of checks) {
    const found = await evidence(yard, car, key, check, who, readings[check.name])
    await car.press(yard, {
      at,
      who,
      name: 'check.record',
      input: { check: check.id, ...found, ...(told !== undefined && { told: car.party(told) }) },
    })
  }
}

/** Clears the hold or witness point after a stage. */
export function clearScene(
  yard: Yard,
  car: Car,
  key: string,
  { who, when, remark, waive = false }: Cleared,
): Scene {
  const at = yard.calendar.at(when)
  return {
    at,
    async play(yard) {
      for (const hold of pointsNow(yard, car, key)) {
        if (hold.clearedAt !== null) continue
        await car.press(yard, {
          at,
          who,
          name: waive ? 'hold.waive' : 'hold.release',
          input: { hold: hold.id, ...(remark !== undefined && { remark }) },
        })
      }
    },
  }
}

interface Cleared {
  readonly who: string
  readonly when: string
  readonly remark?: string
  readonly waive?: boolean
}

/** Invites to the point after a stage. */
export function inviteScene(
  yard: Yard,
  car: Car,
  key: string,
  who: string,
  when: string,
  visit: string,
): Scene {
  const at = yard.calendar.at(when)
  return {
    at,
    async play(yard) {
      for (const hold of pointsNow(yard, car, key)) {
        const input = { hold: hold.id, visitAt: yard.calendar.at(visit) }
        await car.press(yard, { at, who, name: 'hold.invite', input })
      }
    },
  }
}

/** How long the lead takes to agree to a slot. */
const AGREED_AFTER_MINUTES = 20

/** A slot is claimed, and agreed by the lead where that isn't so at once. */
export function slotScenes(yard: Yard, car: Car, slot: Claimed): Scene[] {
  const at = yard.calendar.at(slot.claimed)
  const agreedAt = plus(at, AGREED_AFTER_MINUTES)
  const asked: { slot?: string } = {}
  const claim: Scene = {
    at,
    async play(yard) {
      const { shop, bay } = known(yard.bays, slot.bay)
      const made = await car.press(yard, {
        at,
        who: slot.who,
        name: 'slot.claim',
        input: {
          assembly: car.assembly(slot.assembly),
          bay,
          shop,
          from: yard.calendar.at(slot.from),
          to: yard.calendar.at(slot.to),
          ...(slot.stage !== undefined && { stage: car.stage(slot.stage) }),
        },
      })
      for (const entity of made) {
        if (entity.kind === 'slot' && entity.state === 'asked') asked.slot = entity.id
      }
    },
  }
  const agree: Scene = {
    at: agreedAt,
    async play(yard) {
      if (asked.slot === undefined || slot.agree === false) return
      const press = { at: agreedAt, who: car.spec.manager, input: { slot: asked.slot } }
      await car.press(yard, { ...press, name: 'slot.agree' })
    },
  }
  return [claim, agree]
}

interface Claimed {
  readonly who: string
  readonly claimed: string
  readonly bay: string
  readonly assembly: string
  readonly from: string
  readonly to: string
  readonly stage?: string
  readonly agree?: boolean
}
