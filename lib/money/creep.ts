import type { Party } from '../record/entities/people.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import { addSums } from './sum.ts'
import { billedBy, billersOf, changeOrdersOf, percentOver, projectFirstEstimate } from './totals.ts'

/**
 * How far the bill of a payer lay over its first estimate after each yes so far, in hundredths of a per cent, net, in the
 * order in which they were given. Empty where nothing was estimated.
 */
export function creepOf(record: ProjectRecord, bills: Party['bills']): readonly number[] {
  const first = projectFirstEstimate(record, bills)
  const yeses = billersOf(record, bills)
    .flatMap(({ id }) => changeOrdersOf(record, id))
    .filter((order) => order.state === 'approved')
    .toSorted((a, b) => (a.answeredAt ?? '').localeCompare(b.answeredAt ?? ''))
  let bill = first
  return yeses.flatMap((order) => {
    bill = addSums(bill, billedBy(record, order))
    return percentOver(first.net, bill.net) ?? []
  })
}
