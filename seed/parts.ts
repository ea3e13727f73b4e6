import type { Part } from '../lib/record/entities/things.ts'
import { all } from '../lib/record/table.ts'
import type { Car } from './car.ts'
import type { Scene, Yard } from './yard.ts'

/** A part's way, as far as it has come. Dates of promises count in days from today. */
export interface Ordered {
  readonly name: string
  readonly number?: string
  readonly party: string
  readonly who: string
  readonly supplier?: string
  readonly stages: readonly string[]
  readonly wanted: string
  readonly ordered?: { readonly when: string; readonly promised: number; readonly price?: number }
  readonly promises?: readonly {
    readonly when: string
    readonly who: string
    readonly for: number
    readonly remark: string
  }[]
  readonly arrived?: string
  readonly inspected?: {
    readonly when: string
    readonly outcome: 'passed' | 'rejected'
    readonly remark?: string
  }
}

/** Wanted, ordered, promised as often as it was, arrived, inspected. */
export function partScenes(yard: Yard, car: Car, part: Ordered): Scene[] {
  const { at, date } = yard.calendar
  const now = (yard: Yard) => partNow(yard, car, part.name)
  const scene = (when: string, play: (yard: Yard, at: Scene['at']) => Promise<unknown>): Scene => ({
    at: at(when),
    play: (yard) => play(yard, at(when)),
  })
  const { who, ordered, arrived, inspected } = part
  return [
    scene(part.wanted, (yard, at) =>
      car.press(yard, {
        at,
        who,
        name: 'part.want',
        input: {
          party: car.party(part.party),
          name: part.name,
          ...(part.number !== undefined && { number: part.number }),
          ...(part.supplier !== undefined && { supplier: car.party(part.supplier) }),
          stages: part.stages.map(car.stage),
        },
      }),
    ),
    ...(ordered === undefined
      ? []
      : [
          scene(ordered.when, (yard, at) =>
            car.press(yard, {
              at,
              who,
              name: 'part.order',
              input: {
                part: now(yard).id,
                promised: date(ordered.promised),
                ...(ordered.price !== undefined && { price: ordered.price }),
              },
            }),
          ),
        ]),
    ...(part.promises ?? []).map((promise) =>
      scene(promise.when, (yard, at) =>
        car.press(yard, {
          at,
          who: promise.who,
          name: 'part.promise',
          input: { part: now(yard).id, date: date(promise.for), remark: promise.remark },
        }),
      ),
    ),
    ...(arrived === undefined
      ? []
      : [
          scene(arrived, (yard, at) =>
            car.press(yard, { at, who, name: 'part.arrive', input: { part: now(yard).id } }),
          ),
        ]),
    ...(inspected === undefined
      ? []
      : [
          scene(inspected.when, (yard, at) =>
            car.press(yard, {
              at,
              who,
              name: 'part.inspect',
              input: {
                part: now(yard).id,
                outcome: inspected.outcome,
                ...(inspected.remark !== undefined && { remark: inspected.remark }),
              },
            }),
          ),
        ]),
  ]
}

function partNow(yard: Yard, car: Car, name: string): Part {
  const found = all(car.record(yard).parts).find((part) => part.name === name)
  if (found === undefined) throw new Error(`nobody wants ${name} yet`)
  return found
}
