import { agreedPrice } from '../../lib/money/totals.ts'
import { canonicalJson } from '../../lib/record/canonical-json.ts'
import type { ProjectRecord } from '../../lib/record/project-record.ts'
import { sha256Hex } from '../../lib/record/sha256.ts'
import { all } from '../../lib/record/table.ts'
import { made } from './steps.ts'
import type { Played } from './world.ts'

interface Money {
  readonly net: number
  readonly tax: number
}

const nothing: Money = { net: 0, tax: 0 }
const plus = (a: Money, b: Money): Money => ({ net: a.net + b.net, tax: a.tax + b.tax })
const sum = (all: readonly Money[]): Money => all.reduce(plus, nothing)

/** Tax of one line to the penny, a half penny away from zero. All whole numbers well below 2⁵³, so it is exact. */
function taxed(line: unknown): Money {
  if (typeof line !== 'object' || line === null || !('net' in line) || !('taxRate' in line))
    return nothing
  const net = Number(line.net)
  const tax = Math.floor((Math.abs(net) * Number(line.taxRate) + 5000) / 10_000)
  return { net, tax: net < 0 ? -tax : tax }
}

const linesIn = (input: Played['press']['input']): readonly unknown[] =>
  Array.isArray(input.lines) ? input.lines : []

/**
 * Keeps the books by what was typed, press by press, and says what is wrong with the record's sums or with what was
 * approved before.
 */
export function openLedger(): (played: Played) => string[] {
  const estimates = new Map<string, { readonly party: string; readonly money: Money }>()
  const orders = new Map<string, Money>()
  const billed: { readonly party: string; readonly money: Money }[] = []
  const approved = new Map<string, string>()

  function enter(played: Played): void {
    const { press } = played
    const { input } = press
    if (press.name === 'estimate.add') {
      const typed = linesIn(input)
      made(played, 'estimateLine').forEach(({ id, party }, i) => {
        estimates.set(id, { party, money: taxed(typed[i]) })
      })
    }
    if (press.name === 'estimate.withdraw') estimates.delete(String(input.estimateLine))
    const [order] = made(played, 'changeOrder')
    if (order === undefined) return
    if (input.lines !== undefined) orders.set(order.id, sum(linesIn(input).map(taxed)))
    if (press.name === 'changeOrder.approve' && order.bears === 'owner')
      billed.push({ party: order.party, money: orders.get(order.id) ?? nothing })
  }

  function compare(record: ProjectRecord): string[] {
    return all(record.parties).flatMap(({ id, name }) => {
      const own = [...estimates.values(), ...billed].filter(({ party }) => party === id)
      const { net, tax } = sum(own.map(({ money }) => money))
      const agreed = agreedPrice(record, id)
      return agreed.net === net && agreed.tax === tax && agreed.gross === net + tax
        ? []
        : [`${name}: agreed ${JSON.stringify(agreed)}, by the books ${net} and ${tax} tax`]
    })
  }

  function unchanged(record: ProjectRecord): string[] {
    const wrong: string[] = []
    for (const order of all(record.changeOrders)) {
      const known = approved.get(order.id)
      if (known === undefined && order.state !== 'approved') continue
      const lines = all(record.changeLines).filter((line) => line.changeOrder === order.id)
      const now = canonicalJson([order, lines])
      if (known === undefined) approved.set(order.id, now)
      else if (known !== now) wrong.push(`change order ${order.number} changed after its yes`)
      if (order.shown === null || sha256Hex(order.shown) !== order.shownHash)
        wrong.push(`change order ${order.number} was approved without what was shown`)
    }
    return wrong
  }

  return (played) => {
    if (played.outcome.outcome !== 'changes') return []
    const record = played.after.projects.get(played.press.record)
    if (record === undefined) return []
    enter(played)
    return [...compare(record), ...unchanged(record)].map((what) => `${played.press.name}: ${what}`)
  }
}
