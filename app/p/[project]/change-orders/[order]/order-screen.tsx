'use client'
import Link from 'next/link'
import { useState } from 'react'
import { NotHere } from '@/app/_ui/not-here.tsx'
import { PrintButton } from '@/app/_ui/print-button.tsx'
import { UnsentMark } from '@/app/_ui/unsent-mark.tsx'
import type { ChangeOrder } from '@/lib/record/entities/money.ts'
import { partyName } from '@/lib/words/names.ts'
import { OrderForm } from '../order-form.tsx'
import { useMoneyView } from '../use-money-view.ts'
import { OrderSlip } from './order-slip.tsx'
import { DraftFoot, WithdrawFoot } from './own-foot.tsx'
import { Questions } from './questions.tsx'
import { WhatYesDid } from './what-yes-did.tsx'
import { YourAnswer } from './your-answer.tsx'

/** One change order: its leaf, what a yes does to the bill, and the answer where it is this reader's. */
export function OrderScreen({ id }: { readonly id: string }) {
  const { record } = useMoneyView()
  const order = record.changeOrders.rows.get(id)
  if (order === undefined)
    return <NotHere what="change order" href={`/p/${record.id}/change-orders`} />
  return <OrderDesk order={order} />
}

function OrderDesk({ order }: { readonly order: ChangeOrder }) {
  const { record, reader, standingOf } = useMoneyView()
  const { isOwn, authority, payer } = standingOf(order)
  const [revising, setRevising] = useState(false)
  if (order.state === 'draft' && isOwn && revising) {
    return (
      <div className="stack">
        <p>
          <button type="button" className="btn btn-line" onClick={() => setRevising(false)}>
            Back to the leaf
          </button>
        </p>
        <OrderForm order={order} />
      </div>
    )
  }
  return (
    <div className="stack">
      <p className="way row spread no-print">
        <Link href={`/p/${record.id}/change-orders`}>All change orders</Link>
        {order.state === 'sent' && authority !== null && (
          <a className="btn btn-line phone" href="#answer">
            To your answer
          </a>
        )}
      </p>
      <UnsentMark entity={order.id} />
      <div className="cols cols-main">
        <OrderSlip order={order} />
        <div className="stack">
          {order.state === 'sent' && authority !== null && (
            <YourAnswer order={order} authority={authority} />
          )}
          {order.state === 'sent' && authority === null && (
            <section className="sheet">
              <p>
                The answer is {partyName(payer, record, reader)}’s. Work on it starts after the yes.
              </p>
            </section>
          )}
          {order.state === 'approved' && <WhatYesDid order={order} />}
          {order.state === 'draft' && isOwn && (
            <DraftFoot order={order} onRevise={() => setRevising(true)} />
          )}
          {order.state !== 'draft' && <Questions order={order} />}
          {order.state === 'sent' && isOwn && <WithdrawFoot order={order} />}
          <PrintButton label="Print this leaf" />
        </div>
      </div>
    </div>
  )
}
