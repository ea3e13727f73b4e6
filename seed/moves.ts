import type { Handover } from '../lib/record/entities/things.ts'
import { all } from '../lib/record/table.ts'
import type { Car } from './car.ts'
import type { Scene, Yard } from './yard.ts'

/** Things on their way from one party to another. A party that nobody signs in for is told by telephone. */
export interface Move {
  readonly from: string
  readonly to: string
  /** Left out where a stage has prepared it by its sign-off: then `stage` names that one. */
  readonly assemblies?: readonly string[]
  readonly stage?: string
  readonly released: string
  /** Left out where it is still to come. */
  readonly received?: string
  readonly condition: string
  readonly care?: string
  readonly outcome?: 'accepted' | 'accepted with remarks' | 'refused'
  readonly remarks?: string
}

/** Who speaks for each party, by its key; missing where only the telephone does. */
export type Speakers = { readonly [party: string]: string }

/** A handover is released, and received or refused. */
export function moveScenes(yard: Yard, car: Car, speakers: Speakers, move: Move): Scene[] {
  const at = yard.calendar.at(move.released)
  const made: { handover?: Handover } = {}
  const speaker = (party: string) => ({
    who: speakers[party] ?? car.spec.manager,
    told: speakers[party] === undefined ? { told: car.party(party) } : {},
  })
  const release: Scene = {
    at,
    async play(yard) {
      const { who, told } = speaker(move.from)
      const handover =
        move.assemblies === undefined
          ? prepared(yard, car, move.stage ?? '')
          : await prepare(yard, car, move.assemblies, { ...move, who, told, at })
      const released = await car.press(yard, {
        at,
        who,
        name: 'handover.release',
        input: {
          handover: handover.id,
          condition: move.condition,
          care: move.care ?? '',
          ...told,
        },
      })
      made.handover = released.find((entity) => entity.kind === 'handover') ?? handover
    },
  }
  if (move.received === undefined) return [release]
  const receivedAt = yard.calendar.at(move.received)
  const receive: Scene = {
    at: receivedAt,
    async play(yard) {
      const { handover } = made
      if (handover === undefined) throw new Error('nothing was released')
      const { who, told } = speaker(move.to)
      await car.press(yard, {
        at: receivedAt,
        who,
        name: 'handover.receive',
        input: {
          handover: handover.id,
          outcome: move.outcome ?? 'accepted',
          ...(move.remarks !== undefined && { remarks: move.remarks }),
          ...(handover.pieces !== null && { pieces: handover.pieces }),
          ...told,
        },
      })
    },
  }
  return [release, receive]
}

async function prepare(
  yard: Yard,
  car: Car,
  assemblies: readonly string[],
  { to, who, told, at, stage }: Move & { who: string; told: { told?: string }; at: Scene['at'] },
): Promise<Handover> {
  const made = await car.press(yard, {
    at,
    who,
    name: 'handover.prepare',
    input: {
      assemblies: assemblies.map(car.assembly),
      to: car.party(to),
      ...(stage !== undefined && { stage: car.stage(stage) }),
      ...(told.told !== undefined && { told: told.told }),
    },
  })
  const handover = made.find((entity) => entity.kind === 'handover')
  if (handover === undefined) throw new Error('no handover was prepared')
  return handover
}

function prepared(yard: Yard, car: Car, stage: string): Handover {
  const found = all(car.record(yard).handovers).find(
    (handover) => handover.stage === car.stage(stage) && handover.state === 'prepared',
  )
  if (found === undefined) throw new Error(`${stage} prepared no handover`)
  return found
}
