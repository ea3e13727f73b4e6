'use client'
import { useState } from 'react'
import { PressFoot } from '@/app/_ui/form/press-foot.tsx'
import { TextField } from '@/app/_ui/form/text-field.tsx'
import { usePress } from '@/app/_ui/form/use-press.ts'
import { useRefusedInput } from '@/app/_ui/press/use-refused-input.ts'
import { linesOf } from '@/lib/money/totals.ts'
import type { ChangeOrder } from '@/lib/record/entities/money.ts'
import { label } from '@/lib/words/labels.ts'
import { partyName } from '@/lib/words/names.ts'
import { useMoneyView } from '../use-money-view.ts'

/** A draft of one's own: revise it, or send it to who pays. */
export function DraftFoot({
  order,
  onRevise,
}: {
  readonly order: ChangeOrder
  readonly onRevise: () => void
}) {
  const { record, standingOf } = useMoneyView()
  const { payer } = standingOf(order)
  const send = usePress('changeOrder.send', 'Sent.')
  const empty = linesOf(record, order.id).length === 0
  return (
    <>
      <form
        className="sheet-foot stack tight"
        onSubmit={(event) => {
          event.preventDefault()
          void send.send({ changeOrder: order.id })
        }}
      >
        <PressFoot
          press={send}
          label={label('changeOrder.send', { number: order.number })}
          disabled={empty}
          note={
            empty
              ? 'It has no line yet: revise it first.'
              : `${partyName(payer, record)} is asked for the yes. From then on the leaf stands as it is.`
          }
        />
        <button type="button" className="btn btn-line btn-wide" onClick={onRevise}>
          Revise it
        </button>
      </form>
      <WithdrawFoot order={order} />
    </>
  )
}

/** Takes back what nobody has answered yet. */
export function WithdrawFoot({ order }: { readonly order: ChangeOrder }) {
  const press = usePress('changeOrder.withdraw', 'Withdrawn.')
  const [text, setText] = useState('')
  useRefusedInput(press.command, (input) => setText(input.text('text')))
  return (
    <details className="sheet no-print">
      <summary>Withdraw it</summary>
      <form
        className="stack"
        onSubmit={(event) => {
          event.preventDefault()
          const why = text.trim()
          void press.send({ changeOrder: order.id, ...(why === '' ? {} : { text: why }) })
        }}
      >
        <TextField label="Why, for those who read it later" value={text} onChange={setText} />
        <PressFoot press={press} lined label={label('changeOrder.withdraw')} />
      </form>
    </details>
  )
}
