import { shownForApproval, shownText } from '../lib/money/approval.ts'
import type { ChangeOrder } from '../lib/record/entities/money.ts'
import { all } from '../lib/record/table.ts'
import type { Car } from './car.ts'
import type { Scene, Yard } from './yard.ts'

/** A line as a shop writes it: so many of a unit at a price, or a sum. In pence. */
export type OrderLine =
  | { readonly text: string; readonly net: number }
  | {
      readonly text: string
      readonly quantity: number
      readonly unit: string
      readonly unitPrice: number
    }

/** A change order's life, as far as it has come. */
export interface Order {
  readonly party: string
  readonly who: string
  readonly title: string
  readonly text: string
  readonly reason: ChangeOrder['reason']
  readonly days?: number
  readonly lines: readonly OrderLine[]
  readonly raised: string
  readonly sent?: string
  readonly answered?: {
    readonly who: string
    readonly when: string
    readonly yes: boolean
    readonly text?: string
  }
}

const TAX_RATE = 2000

const typed = (line: OrderLine) =>
  'net' in line
    ? { ...line, taxRate: TAX_RATE }
    : { ...line, net: Math.round(line.quantity * line.unitPrice), taxRate: TAX_RATE }

/** The order of that title as it stands. */
export function orderNow(yard: Yard, car: Car, title: string): ChangeOrder {
  const found = all(car.record(yard).changeOrders).find((order) => order.title === title)
  if (found === undefined) throw new Error(`nobody has raised ${title} yet`)
  return found
}

/** Raised, sent and answered. A yes keeps what was shown, as on a phone. */
export function orderScenes(yard: Yard, car: Car, order: Order): Scene[] {
  const { calendar } = yard
  const raised = calendar.at(order.raised)
  const scenes: Scene[] = [
    {
      at: raised,
      play: (yard) =>
        car.press(yard, {
          at: raised,
          who: order.who,
          name: 'changeOrder.raise',
          input: {
            party: car.party(order.party),
            title: order.title,
            text: order.text,
            reason: order.reason,
            bears: 'owner',
            ...(order.days !== undefined && { days: order.days }),
            lines: order.lines.map(typed),
          },
        }),
    },
  ]
  if (order.sent !== undefined) {
    const at = calendar.at(order.sent)
    scenes.push({
      at,
      play: (yard) =>
        car.press(yard, {
          at,
          who: order.who,
          name: 'changeOrder.send',
          input: { changeOrder: orderNow(yard, car, order.title).id },
        }),
    })
  }
  const { answered } = order
  if (answered !== undefined) {
    const at = calendar.at(answered.when)
    scenes.push({ at, play: (yard) => answer(yard, car, order.title, answered, at) })
  }
  return scenes
}

function answer(
  yard: Yard,
  car: Car,
  title: string,
  { who, yes, text }: NonNullable<Order['answered']>,
  at: Scene['at'],
) {
  const { id } = orderNow(yard, car, title)
  const said = text === undefined ? {} : { text }
  if (!yes)
    return car.press(yard, {
      at,
      who,
      name: 'changeOrder.decline',
      input: { changeOrder: id, ...said },
    })
  const authority = who === car.spec.manager ? 'standing consent' : 'payer'
  const { hash } = shownText(shownForApproval(car.record(yard), id, authority))
  return car.press(yard, {
    at,
    who,
    name: 'changeOrder.approve',
    input: { changeOrder: id, shownHash: hash, ...said },
  })
}
