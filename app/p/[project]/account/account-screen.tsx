'use client'
import Link from 'next/link'
import type { ReactNode } from 'react'
import { EmptyState, Head } from '@/app/_ui/paper.tsx'
import { useDesk } from '@/app/_ui/use-desk.ts'
import { addSums, type Sum } from '@/lib/money/sum.ts'
import {
  agreedPrice,
  billedBy,
  billersOf,
  changeOrdersOf,
  estimateLinesOf,
  firstEstimate,
  percentOver,
} from '@/lib/money/totals.ts'
import type { EstimateLine } from '@/lib/record/entities/money.ts'
import type { Party } from '@/lib/record/entities/people.ts'
import { taxOf } from '@/lib/record/tax.ts'
import { money, perCent, taxRate } from '@/lib/words/money.ts'
import { ConsentForm } from './consent-form.tsx'
import { EstimateForm, WithdrawLine } from './estimate-form.tsx'

/** Whose prices this view sees: who bills the reader, and the reader's own shop. */
function seen(
  desk: ReturnType<typeof useDesk>,
): readonly { readonly title: string; readonly parties: readonly Party[] }[] {
  const { record, standing } = desk
  const own = record.parties.rows.get(standing.party)
  if (!standing.seesMoney || own === undefined) return []
  if (standing.isOwner) return [{ title: 'Who bills you', parties: billersOf(record, 'owner') }]
  const behind = standing.managesLead ? billersOf(record, 'lead') : []
  return [
    ...(own.role === 'shop' ? [{ title: 'Our own price', parties: [own] }] : []),
    ...(behind.length > 0 ? [{ title: 'Who bills us', parties: behind }] : []),
  ]
}

/** The money of the project as this view may see it: first estimates, agreed changes, totals with tax. */
export function AccountScreen() {
  const desk = useDesk()
  const groups = seen(desk)
  if (groups.length === 0) {
    return (
      <EmptyState title="No money in this view">
        Sums are between each shop’s manager and who pays it.
      </EmptyState>
    )
  }
  return (
    <>
      {groups.map((group) => (
        <Group key={group.title} {...group} />
      ))}
      {desk.standing.isOwner && <ConsentForm />}
    </>
  )
}

function Group({ title, parties }: { readonly title: string; readonly parties: readonly Party[] }) {
  return (
    <div className="stack">
      <Head title={title} />
      {parties.length === 0 && <EmptyState title="No shop has a price here yet" />}
      {parties.length > 1 && <Together parties={parties} />}
      <div className="cols cols-2">
        {parties.map((party) => (
          <PartyAccount key={party.id} party={party} />
        ))}
      </div>
    </div>
  )
}

function useSum() {
  const { reader } = useDesk()
  return (minor: number) => money(minor, reader.currency, reader.locale)
}

function SumRow({
  what,
  sum,
  strong,
}: {
  readonly what: ReactNode
  readonly sum: Sum
  readonly strong?: boolean
}) {
  const say = useSum()
  return (
    <tr className={strong === true ? 'sum' : ''}>
      <td>
        {what}
        <span className="small soft block">
          {say(sum.net)} and {say(sum.tax)} tax
        </span>
      </td>
      <td className="r">{say(sum.gross)}</td>
    </tr>
  )
}

const SumHead = () => (
  <thead>
    <tr>
      <th>What</th>
      <th className="r">Tax included</th>
    </tr>
  </thead>
)

function Together({ parties }: { readonly parties: readonly Party[] }) {
  const { record, reader } = useDesk()
  const first = addSums(...parties.map(({ id }) => firstEstimate(record, id)))
  const agreed = addSums(...parties.map(({ id }) => agreedPrice(record, id)))
  const over = percentOver(first.net, agreed.net)
  return (
    <section className="sheet stack">
      <Head title="All together" />
      <table className="table">
        <SumHead />
        <tbody>
          <SumRow what="First estimates" sum={first} />
          <SumRow what="Agreed so far" sum={agreed} strong />
        </tbody>
      </table>
      {over !== null && (
        <p>
          <b>
            {perCent(Math.abs(over) / 10_000, reader.locale)} {over < 0 ? 'under' : 'over'} the
            first estimates
          </b>
          , before tax.
        </p>
      )}
    </section>
  )
}

function PartyAccount({ party }: { readonly party: Party }) {
  const { record, standing } = useDesk()
  const lines = estimateLinesOf(record, party.id)
  const approved = changeOrdersOf(record, party.id).filter(({ state }) => state === 'approved')
  const sent = changeOrdersOf(record, party.id).filter(({ state }) => state === 'sent')
  const own = standing.managesFor(party.id)
  const fixed = approved.length > 0
  return (
    <section className="sheet stack">
      <Head title={party.name} />
      {lines.length === 0 && <p className="soft">No estimate yet.</p>}
      {lines.length > 0 && (
        <ul className="ruled">
          {lines.map((line) => (
            <EstimateRow key={line.id} line={line} takesBack={own && !fixed} />
          ))}
        </ul>
      )}
      {(lines.length > 0 || approved.length > 0) && (
        <table className="table">
          <SumHead />
          <tbody>
            {lines.length > 0 && (
              <SumRow what="First estimate" sum={firstEstimate(record, party.id)} />
            )}
            {approved.map((order) => (
              <SumRow
                key={order.id}
                what={
                  <Link className="row-link" href={`/p/${record.id}/change-orders/${order.id}`}>
                    Change {order.number} · {order.title}
                  </Link>
                }
                sum={billedBy(record, order)}
              />
            ))}
            {approved.length > 0 && (
              <SumRow
                what="Agreed changes"
                sum={addSums(...approved.map((order) => billedBy(record, order)))}
              />
            )}
            <SumRow what="Agreed price" sum={agreedPrice(record, party.id)} strong />
          </tbody>
        </table>
      )}
      {sent.length > 0 && (
        <p className="small">
          Not in it:{' '}
          {sent.length === 1 ? 'a change order waits' : `${sent.length} change orders wait`} for a
          yes.{' '}
          <Link href={`/p/${record.id}/change-orders`}>
            See {sent.length === 1 ? 'it' : 'them'}
          </Link>
        </p>
      )}
      {own && !fixed && <EstimateForm party={party} />}
      {own && fixed && (
        <p className="small soft">
          The estimate stands: a yes was given on it. More or less is a{' '}
          <Link href={`/p/${record.id}/change-orders/new`}>change order</Link>.
        </p>
      )}
    </section>
  )
}

function EstimateRow({
  line,
  takesBack,
}: {
  readonly line: EstimateLine
  readonly takesBack: boolean
}) {
  const { reader } = useDesk()
  const say = useSum()
  return (
    <li className="rowend">
      <span>
        {line.text}
        <span className="small soft block">
          {line.type === 'allowance' ? 'allowance · ' : ''}tax{' '}
          {taxRate(line.taxRate, reader.locale)}: {say(taxOf(line.net, line.taxRate))}
        </span>
      </span>
      <span className="stack tight">
        <span className="money">{say(line.net)}</span>
        {takesBack && <WithdrawLine line={line} />}
      </span>
    </li>
  )
}
