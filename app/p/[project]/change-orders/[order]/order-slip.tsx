'use client'
import { JournalMark } from '@/app/_ui/journal-mark.tsx'
import { Stamp } from '@/app/_ui/paper.tsx'
import { Photos } from '@/app/_ui/photos.tsx'
import { WordMark } from '@/app/_ui/state-mark.tsx'
import { linesOf, priceOf } from '@/lib/money/totals.ts'
import type { ChangeLine, ChangeOrder } from '@/lib/record/entities/money.ts'
import { taxOf } from '@/lib/record/tax.ts'
import { moment, stampMoment } from '@/lib/words/dates.ts'
import { figure, taxRate } from '@/lib/words/money.ts'
import { partyName, personName } from '@/lib/words/names.ts'
import { bearers, orderState, reasons } from '../order-words.ts'
import { useMoneyView } from '../use-money-view.ts'

/** The leaf of a change order: what and why, its lines with tax, what is to pay. After the answer it bears the stamp. */
export function OrderSlip({ order }: { readonly order: ChangeOrder }) {
  const { record, reader, sum, standingOf } = useMoneyView()
  const { payer, seesLines } = standingOf(order)
  const { mark, word } = orderState(order, payer, record, reader)
  const lines = seesLines ? linesOf(record, order.id) : []
  const price = priceOf(record, order.id)
  return (
    <div className="pad">
      <article className="slip stack">
        <div className="row spread slip-top">
          <div className="row slip-name">
            <span className="num num-big">{order.number}</span>
            <div>
              <p className="small">
                Change order · from <b>{partyName(order.party, record)}</b>
              </p>
              <h2 className="big title">{order.title}</h2>
            </div>
          </div>
          {order.answeredAt === null || order.state === 'withdrawn' ? (
            <WordMark mark={mark} word={word} />
          ) : (
            <Stamp
              word={word}
              no={order.state === 'declined'}
              lines={[
                personName(order.answeredBy, reader.people),
                ...(order.proof === null ? [] : [`by ${proofs[order.proof]}`]),
                stampMoment(order.answeredAt, reader),
              ]}
            />
          )}
        </div>
        {order.text !== '' && <p className="prose">{order.text}</p>}
        <Photos project={record.id} groups={[{ title: 'Photo', files: order.files }]} />
        <p className="small soft">
          {reasons[order.reason]} · raised by {personName(order.raisedBy, reader.people)},{' '}
          {moment(order.raisedAt, reader)}
          {order.days !== null &&
            ` · ${figure(order.days, reader.locale)} working days more, as ${partyName(order.party, record)} sees it`}
        </p>
        {seesLines ? (
          <>
            <table className="table">
              <thead>
                <tr>
                  <th>What</th>
                  <th className="r">Price</th>
                  <th className="r">{taxHead(lines, reader.locale)}</th>
                </tr>
              </thead>
              <tbody>
                {lines.map((line) => (
                  <LineRow key={line.id} line={line} mixed={ratesOf(lines).size > 1} />
                ))}
                <tr className="sum">
                  <td>This change order</td>
                  <td className="r">{sum(price.net)}</td>
                  <td className="r">{sum(price.tax)}</td>
                </tr>
              </tbody>
            </table>
            {order.bears !== 'owner' && (
              <p>
                <b>Borne by: {bearers[order.bears].toLowerCase()}.</b> It adds nothing to the bill.
              </p>
            )}
            <p className="total">
              <span>
                {order.bears !== 'owner'
                  ? 'Worth, tax included'
                  : price.gross < 0
                    ? 'Off the bill, tax included'
                    : 'To pay, tax included'}
              </span>
              <b className="money">{sum(price.gross)}</b>
            </p>
          </>
        ) : (
          <p>Its sums are between {partyName(order.party, record)} and who pays them.</p>
        )}
        {order.answer !== null && order.answer !== '' && (
          <div>
            <h3>{order.state === 'withdrawn' ? 'Why it was withdrawn' : 'With the answer'}</h3>
            <p className="prose">“{order.answer}”</p>
          </div>
        )}
        <hr className="perf perf-tight" />
        <p className="small soft">
          White leaf: {partyName(payer, record, reader)}. Blue leaf:{' '}
          {partyName(order.party, record)}.{' '}
          {order.state === 'approved'
            ? 'Neither can be altered.'
            : 'Once there is a yes, neither can be altered.'}
          {order.shownHash !== null && seesLines && (
            <>
              {' '}
              Check of what was shown: <span className="link-text">{order.shownHash}</span>
            </>
          )}
        </p>
        <JournalMark entity={order.id} />
      </article>
    </div>
  )
}

const proofs: { readonly [P in NonNullable<ChangeOrder['proof']>]: string } = {
  password: 'password',
  'mailed code': 'a mailed code',
  demonstration: 'the demonstration’s door',
  'standing consent': 'standing consent',
}

const ratesOf = (lines: readonly ChangeLine[]) => new Set(lines.map((line) => line.taxRate))

function taxHead(lines: readonly ChangeLine[], locale: string): string {
  const [only, ...others] = [...ratesOf(lines)]
  return only === undefined || others.length > 0 ? 'Tax' : `Tax ${taxRate(only, locale)}`
}

function LineRow({ line, mixed }: { readonly line: ChangeLine; readonly mixed: boolean }) {
  const { reader, sum } = useMoneyView()
  const { quantity, unit, unitPrice } = line
  return (
    <tr>
      <td>
        {line.net < 0 && !/^less\b/i.test(line.text) && <b>Less: </b>}
        {line.text}
        {quantity !== null && unitPrice !== null && (
          <span className="small soft block">
            {figure(quantity, reader.locale, 4)}
            {unit === null ? '' : ` ${unit}`} at {sum(unitPrice)}
          </span>
        )}
        {mixed && (
          <span className="small soft block">taxed {taxRate(line.taxRate, reader.locale)}</span>
        )}
      </td>
      <td className="r">{sum(line.net)}</td>
      <td className="r">{sum(taxOf(line.net, line.taxRate))}</td>
    </tr>
  )
}
