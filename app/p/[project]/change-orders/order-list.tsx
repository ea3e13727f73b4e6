'use client'
import Link from 'next/link'
import { EmptyState, Head } from '@/app/_ui/paper.tsx'
import { RowList } from '@/app/_ui/row-list.tsx'
import { WordMark } from '@/app/_ui/state-mark.tsx'
import { priceOf } from '@/lib/money/totals.ts'
import type { ChangeOrder } from '@/lib/record/entities/money.ts'
import { all } from '@/lib/record/table.ts'
import { day, since } from '@/lib/words/dates.ts'
import { partyName } from '@/lib/words/names.ts'
import { orderState } from './order-words.ts'
import { useMoneyView } from './use-money-view.ts'

/** Every change order that this view sees: first what waits for a yes, then drafts, then what was answered. */
export function OrderList() {
  const { record, reader, standing } = useMoneyView()
  const orders = all(record.changeOrders).toSorted((a, b) => b.number - a.number)
  const raises =
    standing.managesFor(standing.party) && record.parties.rows.get(standing.party)?.role === 'shop'
  const { role } = reader.view
  const isOutside = role === 'observer' || role === 'supplier' || role === 'guest'
  const groups = [
    { title: 'Held for a yes', orders: orders.filter(({ state }) => state === 'sent') },
    { title: 'Drafts', orders: orders.filter(({ state }) => state === 'draft') },
    {
      title: 'Answered',
      orders: orders.filter(({ state }) => state !== 'sent' && state !== 'draft'),
    },
  ].filter((group) => group.orders.length > 0)

  return (
    <div className="stack">
      {raises && (
        <p>
          <Link className="btn" href={`/p/${record.id}/change-orders/new`}>
            Raise a change order
          </Link>
        </p>
      )}
      {groups.length === 0 && isOutside && (
        <EmptyState title="Not for this view">
          Change orders are between the shops and who pays them.
        </EmptyState>
      )}
      {groups.length === 0 && !isOutside && (
        <EmptyState title="No change order yet">
          Extra work, or less of it, is written here with its price, and starts after the yes.
        </EmptyState>
      )}
      {groups.map((group) => (
        <section key={group.title} className="sheet stack">
          <Head title={group.title} note={String(group.orders.length)} />
          <RowList className="ruled">
            {group.orders.map((order) => (
              <OrderRow key={order.id} order={order} />
            ))}
          </RowList>
        </section>
      ))}
    </div>
  )
}

function OrderRow({ order }: { readonly order: ChangeOrder }) {
  const { record, reader, sum, standingOf } = useMoneyView()
  const { payer, seesLines } = standingOf(order)
  const { mark, word } = orderState(order, payer, record, reader)
  const at = order.answeredAt ?? order.sentAt ?? order.raisedAt
  return (
    <li className="rowend row-chip">
      <div>
        <h3>
          <Link href={`/p/${record.id}/change-orders/${order.id}`}>
            {order.number} · {order.title}
          </Link>
        </h3>
        <p className="small">
          {partyName(order.party, record)},{' '}
          {order.answeredAt === null ? since(at, reader) : day(at, reader)}
          {seesLines && (
            <>
              {' · '}
              <span className="money">{sum(priceOf(record, order.id).gross)}</span> tax included
            </>
          )}
        </p>
      </div>
      <WordMark mark={mark} word={word} />
    </li>
  )
}
