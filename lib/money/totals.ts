import type { ChangeLine, ChangeOrder, EstimateLine } from '../record/entities/money.ts'
import type { Party } from '../record/entities/people.ts'
import type { ChangeOrderId, PartyId } from '../record/ids.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import type { Minor } from '../record/scalars.ts'
import { all, indexBy } from '../record/table.ts'
import { divideHalfAway } from '../record/tax.ts'
import { addSums, type Sum, sumOf } from './sum.ts'

const linesByOrder = indexBy<ChangeLine>((line) =>
  line.removedAt === null ? [line.changeOrder] : [],
)
const estimateByParty = indexBy<EstimateLine>((line) =>
  line.withdrawnAt === null ? [line.party] : [],
)
const ordersByParty = indexBy<ChangeOrder>((order) => [order.party])

/** The lines of a change order that stand, in their order. */
export const linesOf = (record: ProjectRecord, order: ChangeOrderId): readonly ChangeLine[] =>
  linesByOrder(record.changeLines, order).toSorted((a, b) => a.position - b.position)

/** The lines of a party's estimate that stand, in their order. */
export const estimateLinesOf = (record: ProjectRecord, party: PartyId): readonly EstimateLine[] =>
  estimateByParty(record.estimateLines, party).toSorted((a, b) => a.position - b.position)

/** All change orders of a party, by number. */
export const changeOrdersOf = (record: ProjectRecord, party: PartyId): readonly ChangeOrder[] =>
  ordersByParty(record.changeOrders, party).toSorted((a, b) => a.number - b.number)

/** What a change order comes to, whoever bears it. */
export const priceOf = (record: ProjectRecord, order: ChangeOrderId): Sum =>
  sumOf(linesOf(record, order))

/** What a change order adds to the bill: nothing where the shop, an insurer, or nobody yet bears it. */
export const billedBy = (record: ProjectRecord, order: ChangeOrder): Sum =>
  order.bears === 'owner' ? priceOf(record, order.id) : sumOf([])

/** A party's first price: its estimate without any change. */
export const firstEstimate = (record: ProjectRecord, party: PartyId): Sum =>
  sumOf(estimateLinesOf(record, party))

/** Agreed price of a party: its estimate and the approved changes that are billed. */
export function agreedPrice(record: ProjectRecord, party: PartyId): Sum {
  const approved = changeOrdersOf(record, party).filter((order) => order.state === 'approved')
  return addSums(firstEstimate(record, party), ...approved.map((order) => billedBy(record, order)))
}

/** Everyone who bills the same payer, whoever has left: their work is owed still. */
export const billersOf = (record: ProjectRecord, bills: Party['bills']): readonly Party[] =>
  all(record.parties).filter((party) => party.bills === bills && party.role === 'shop')

/** First estimates of all who bill that payer. */
export const projectFirstEstimate = (record: ProjectRecord, bills: Party['bills']): Sum =>
  addSums(...billersOf(record, bills).map((party) => firstEstimate(record, party.id)))

/** Agreed prices of all who bill that payer: the project's total as the payer sees it. */
export const projectAgreedPrice = (record: ProjectRecord, bills: Party['bills']): Sum =>
  addSums(...billersOf(record, bills).map((party) => agreedPrice(record, party.id)))

/**
 * How far a net price lies over the first one, in hundredths of a per cent of the first (7000 is +70.00 %), half away from zero.
 * Null where the first is nothing: there is nothing to compare with.
 */
export function percentOver(first: Minor, now: Minor): number | null {
  if (first === 0) return null
  return Number(divideHalfAway((BigInt(now) - BigInt(first)) * 10_000n, BigInt(first)))
}
