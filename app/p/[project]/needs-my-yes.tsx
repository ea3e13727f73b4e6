'use client'
import Link from 'next/link'
import { EmptyState, Head, Slip } from '@/app/_ui/paper.tsx'
import { projectPath } from '@/app/_ui/paths.ts'
import { useProject } from '@/lib/live/project-provider.tsx'
import { payerOf } from '@/lib/money/approval.ts'
import { billedBy } from '@/lib/money/totals.ts'
import type { ProjectRecord } from '@/lib/record/project-record.ts'
import { day, since } from '@/lib/words/dates.ts'
import { money } from '@/lib/words/money.ts'
import { partyName } from '@/lib/words/names.ts'
import type { Reader } from '@/lib/words/reader.ts'

/** Change orders that this reader pays for and has not answered. */
export const ordersFor = (record: ProjectRecord, reader: Reader) =>
  [...record.changeOrders.rows.values()].filter((order) => {
    const party = record.parties.rows.get(order.party)
    return (
      order.state === 'sent' &&
      party !== undefined &&
      payerOf(record, party)?.id === reader.view.party
    )
  })

/** Decisions that this reader has to make. */
export const decisionsFor = (record: ProjectRecord, reader: Reader) =>
  [...record.decisions.rows.values()].filter(
    (decision) => decision.state === 'asked' && decision.chooser === reader.view.party,
  )

/** What waits for this reader's answer: change orders with their sum, and decisions. */
export function NeedsMyYes() {
  const { record, reader } = useProject()
  const orders = ordersFor(record, reader)
  const decisions = decisionsFor(record, reader)
  const count = orders.length + decisions.length
  if (count === 0 && reader.view.role !== 'owner') return null
  return (
    <section className="stack tight">
      <Head title="Needs my yes" note={count} />
      {count === 0 && (
        <EmptyState title="Nothing waits on you">
          <p>Extra work and choices come here before they start.</p>
        </EmptyState>
      )}
      {orders.map((order) => (
        <Slip key={order.id}>
          <div className="row spread">
            <h3>Change order {order.number}</h3>
            <span className="n small">
              {order.sentAt === null ? '' : since(order.sentAt, reader)}
            </span>
          </div>
          <p>{order.title}</p>
          <p className="small soft">from {partyName(order.party, record)}</p>
          <div className="row spread">
            <span>
              <b className="big money">
                {money(billedBy(record, order).gross, reader.currency, reader.locale)}
              </b>{' '}
              <span className="small">VAT included</span>
            </span>
            <Link className="btn" href={projectPath(record.id, `change-orders/${order.id}`)}>
              Look and answer
            </Link>
          </div>
        </Slip>
      ))}
      {decisions.map((decision) => (
        <article key={decision.id} className="sheet stack tight">
          <div className="row spread">
            <h3>Decision: {decision.question}</h3>
            {decision.decideBy !== null && <b className="n">by {day(decision.decideBy, reader)}</b>}
          </div>
          <div className="row spread">
            <span className="small soft">asked by {partyName(decision.party, record)}</span>
            <Link
              className="btn btn-line"
              href={projectPath(record.id, `decisions/${decision.id}`)}
            >
              Choose
            </Link>
          </div>
        </article>
      ))}
    </section>
  )
}
